/**
 * What every kind of document shares: its input, its notes, its letterhead, its subject lines and
 * its signature.
 */
import type { Assessment } from '../findings/assessment.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Decisions } from '../visit/decisions.ts'
import { termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { strengthWords } from '../words/en.table.ts'
import { type Speak, speakFrom } from '../words/speak.ts'
import { dateWords, ruleInWords, shown } from '../words/words.ts'
import type { Clinic } from './clinic.ts'
import { textOn } from './colour.ts'
import type { Block, Letterhead, LwDocument } from './document.ts'
import type { PlanView } from './inputs.ts'

/** What a referral letter may be told beyond the record. */
export interface LetterInput {
	recipient?: string
	address?: string[]
	request?: string
	question?: string
	copyTo?: string[]
	enclosures?: string[]
	/** Who agreed, how and when. */
	consent?: string
}
export interface ReportInput {
	visit: Visit
	/** The player's earlier visits, for the charts. */
	earlier?: readonly Visit[]
	/** The protocol of the assessment, where it is not the shipped one. */
	protocol?: Protocol
	assessment: Assessment
	decisions: Decisions
	clinic: Clinic
	/** ISO date-time of signing, undefined for a draft */
	signedAt: string | undefined
	/** the day of signing where the clinic stands; where absent, the day of `signedAt` in UTC */
	signedOn?: string | undefined
	draft: boolean
	/** 1 where absent; a higher one is an amended report. */
	version?: number
	/** What an amended report changed against the version before. */
	changes?: readonly string[]
	recordNumber?: string
	letter?: LetterInput
	/** What the club was told, in words, with consent. */
	sharedWithClub?: readonly string[]
	/** What a competent minor asked not to be shown to the guardian. */
	withheld?: readonly ('growth' | 'footwear' | 'insert')[]
	/** The season's plan, for the chart. */
	plan?: PlanView
	order?: {
		number?: string
		neededBy?: string
		shipTo?: string
		fileName?: string
		sha256?: string
	}
}
export type Section = (input: ReportInput, notes: Notes, t: Speak) => Block[]

/** Numbered notes: the same source is numbered once, with every rule that rests on it. */
export class Notes {
	private readonly sources = new Map<string, { rules: Set<string>; end: string }>()
	private readonly t: Speak
	constructor(t: Speak) {
		this.t = t
	}
	mark(basis: Basis): string {
		const commonPractice = basis.strength === 'practice' && /common practice/.test(basis.source)
		const end =
			`${basis.source}.${commonPractice ? '' : ` ${this.t('page.strength', { strength: strengthWords[basis.strength] })}`}`.replaceAll(
				'..',
				'.',
			)
		// 'ankle.flagCm = 2 cm' is the program's own name; the reader is given the limit itself
		const limit = basis.threshold?.split(' = ')[1]
		const rule = `${ruleInWords(basis.rule)}${limit ? ` (${this.t('page.limit', { limit })})` : ''}`
		const known = this.sources.get(end)
		if (known) known.rules.add(rule)
		else this.sources.set(end, { rules: new Set([rule]), end })
		return `[${[...this.sources.keys()].indexOf(end) + 1}]`
	}
	get list(): string[] {
		return [...this.sources.values()].map(({ rules, end }) =>
			`${[...rules].join('; ')}. ${end.charAt(0).toUpperCase()}${end.slice(1)}`.replaceAll(
				'..',
				'.',
			),
		)
	}
}
export const heading = (text: string, more: { level?: 1 | 2; newPage?: boolean } = {}): Block => ({
	kind: 'heading',
	text,
	...more,
})
export const say = (text: string): Block => ({ kind: 'text', text })
export const small = (text: string): Block => ({ kind: 'text', tone: 'small', text })
export const speakOf = (clinic: Clinic): Speak => speakFrom(clinic.texts)

/** The clinic's letterhead; its colour darkened where text in it could not be read. */
export function letterheadOf(clinic: Clinic): Letterhead {
	return {
		clinicName: clinic.name,
		address: clinic.address,
		colour: textOn(clinic.colour),
		...(clinic.phone ? { phone: clinic.phone } : {}),
		...(clinic.email ? { email: clinic.email } : {}),
		...(clinic.logo ? { logo: clinic.logo } : {}),
	}
}
export const nameOf = ({ player }: Visit): string => `${player.givenName} ${player.familyName}`
export const playsOf = ({ play }: Visit, t: Speak): string =>
	[play?.code ? termWords(play.code) : '', play?.position ?? ''].filter(Boolean).join(', ') ||
	t('common.notStated')
export const statusOf = ({ draft, version = 1 }: ReportInput, t: Speak): string =>
	draft
		? t('status.draft')
		: version > 1
			? t('status.amended', { version })
			: t('status.signed', { version })
/** An amended report says so first and lists what changed. */
export const amended = (
	{ draft, version = 1, changes = [] }: Pick<ReportInput, 'draft' | 'version' | 'changes'>,
	t: Speak,
): Block[] =>
	draft || version <= 1
		? []
		: [
				{
					kind: 'alert',
					title: t('amended.title'),
					text: t('amended.text', {
						before: version - 1,
						changes: changes.length > 0 ? `${changes.join('; ')}.` : t('amended.none'),
					}),
				},
			]
export const signature = (
	{
		clinic,
		signedAt,
		signedOn = signedAt?.slice(0, 10),
		visit,
	}: Pick<ReportInput, 'clinic' | 'signedAt' | 'signedOn' | 'visit'>,
	t: Speak,
): Block[] => {
	if (signedOn === undefined) return [{ kind: 'text', tone: 'strong', text: t('sign.draft') }]
	const dates = { signed: dateWords(signedOn), measured: dateWords(visit.visitDate) }
	return [
		{
			kind: 'signature',
			name: clinic.clinician.name,
			registration: t('sign.registration', { registration: clinic.clinician.registration }),
			date: visit.visitDate === signedOn ? t('sign.date', dates) : t('sign.dateLate', dates),
		},
	]
}
export const clinicianOf = ({ clinician }: Clinic) => ({
	clinician: clinician.name,
	registration: clinician.registration,
})
/** The frame of a document about one visit. */
export function frame(
	input: ReportInput,
	t: Speak,
): Omit<LwDocument, 'title' | 'kind' | 'subject' | 'blocks' | 'notes'> {
	const { visit, assessment, clinic, signedAt, draft } = input
	const foot = { ...clinicianOf(clinic), date: dateWords(visit.visitDate) }
	return {
		language: 'en',
		draft,
		letterhead: letterheadOf(clinic),
		running: nameOf(visit),
		footer: `${draft ? t('page.footerDraft', foot) : t('page.footerSigned', foot)}${assessment.growth ? ` ${t('page.footerGrowth')}` : ''}`,
		createdAt: signedAt ?? `${visit.visitDate}T12:00:00.000Z`,
		paper: clinic.paper ?? 'A4',
	}
}
/** A heel raise in words: '4 mm in both shoes'; undefined where there is none. */
export function raiseInWords(
	raise: { left: number; right: number } | undefined,
	t: Speak,
): string | undefined {
	if (!raise || (raise.left === 0 && raise.right === 0)) return undefined
	return raise.left === raise.right
		? t('player.raiseBoth', { mm: shown(raise.left) })
		: t('player.raiseSides', { left: shown(raise.left), right: shown(raise.right) })
}
