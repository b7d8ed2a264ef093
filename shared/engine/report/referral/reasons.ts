/** Why a player is referred: the signs, most urgent first, and the rules that could not be used. */
import { type Action, actions } from '../../findings/assessment.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Speak } from '../../words/speak.ts'
import { isOpenTo } from '../../words/statement.ts'
import { capital, shown, sideWords } from '../../words/words.ts'
import { heading, type Section, say, small } from '../base.ts'
import type { ReportInput } from '../inputs.ts'
import type { Notes } from '../notes.ts'
import { type PlanInput, planOf } from '../plan-of.ts'
import { type Reader, readerOf, toldBy } from '../reader.ts'

/** Signs that ask for nothing, named in a letter; those that ask for anything are never cut. */
const mostOthers = 5

/** The most urgent action, of today's signs and of what an earlier visit left open. */
export const actionIn = (input: PlanInput): Action => {
	const { gate } = planOf(input)
	return [gate.person, gate.left, gate.right]
		.map(({ action }) => action)
		.reduce(
			(one, other) => (actions.indexOf(one) >= actions.indexOf(other) ? one : other),
			input.assessment.screening.action,
		)
}
/**
 * Whether there is anything to refer for: a sign, something held, or what the clinician asks or did
 * about a referral.
 */
export function hasReason(input: ReportInput): boolean {
	const { assessment, decisions } = input
	const { gate } = planOf(input)
	return (
		assessment.screening.items.some(
			({ state, action }) => state === 'yes' && action !== 'proceed',
		) ||
		[gate.person, gate.left, gate.right].some((part) => part.holds.length > 0) ||
		!!decisions.letter?.question ||
		!!decisions.letter?.words ||
		!!decisions.referralDone?.trim()
	)
}
type Item = Pick<
	ReportInput['assessment']['findings'][number],
	'id' | 'side' | 'basis' | 'says' | 'code' | 'params'
>
/** What holds something and is no sign of the screening: facts, and what earlier visits left open. */
function heldBeside(input: ReportInput, signs: readonly Pick<Item, 'id'>[]): Item[] {
	const { gate } = planOf(input)
	const ids = new Set([gate.person, gate.left, gate.right].flatMap(({ because }) => because))
	return input.assessment.findings.filter(
		({ id }) => ids.has(id) && !signs.some((sign) => sign.id === id),
	)
}
/** In the doctor's words, or as the clinician reads it, so that no danger is left out. */
function reasonWords(item: Item, reader: Reader, notes: Notes): string {
	const { side, basis, params = {} } = item
	const isNamed = side === 'none' || side === 'both' || 'side' in params
	const where = isNamed ? '' : ` (${sideWords[side]})`
	return `${toldBy(reader, item) ?? item.says}${where} ${notes.mark(basis)}`
}
/** What something is held for beside the signs of the screening: a bone that heals, severe pain. */
function heldFor(input: ReportInput, reader: Reader, notes: Notes): string[] {
	const { gate } = planOf(input)
	const { findings, screening } = input.assessment
	const because = new Set(
		[gate.person, gate.left, gate.right].flatMap((part) =>
			part.holds.length > 0 ? part.because : [],
		),
	)
	const told = new Set(screening.items.map(({ id }) => id))
	return findings
		.filter(({ id, code }) => because.has(id) && !told.has(id) && heldAlone.includes(code))
		.flatMap((finding) => {
			const says = toldBy(reader, finding)
			return says === undefined ? [] : [`${says} ${notes.mark(finding.basis)}`]
		})
}
/** Rules of the facts that no question of the screening speaks for. */
const heldAlone: readonly (string | undefined)[] = [
	'screening.uncleared-surgery',
	'screening.severe-pain',
	'screening.bone-stress-recovering',
]
/** Warning signs, most urgent first: what asks for anything is never cut. */
export const reasons: Section = (input, notes, t) => {
	const { screening } = input.assessment
	const reader = readerOf('doctor', input, input.letter?.handedTo)
	const yes = screening.items
		.filter((item) => item.state === 'yes' && isOpenTo(reader.told, item))
		.toSorted((one, other) => actions.indexOf(other.action) - actions.indexOf(one.action))
	const asking = [
		...yes.filter(({ action }) => action !== 'proceed'),
		...heldBeside(input, yes).filter((finding) => isOpenTo(reader.told, finding)),
	]
	const others = yes.filter(({ action }) => action === 'proceed')
	const unnamed = others.length - mostOthers
	const items = [
		...heldFor(input, reader, notes),
		...[...asking, ...others.slice(0, mostOthers)].map((item) => reasonWords(item, reader, notes)),
		...(unnamed > 0 ? [capital(t('referral.more', { count: unnamed }))] : []),
	]
	const notAsked = screening.items.filter((item) => item.state === 'not-asked').length
	const rules = unusableRules(input, reader, t)
	return [
		heading(t('referral.reasons')),
		items.length > 0 ? { kind: 'list', items } : say(t('referral.noReasons')),
		...(rules.length > 0 ? [say(rules.join(' '))] : []),
		...(notAsked > 0 ? [small(t('referral.notAsked', { count: notAsked }))] : []),
	]
}
/** Rules that could not be used, and a score that was counted: neither clears anything. */
function unusableRules(
	{ assessment: { screening } }: ReportInput,
	reader: Reader,
	t: Speak,
): string[] {
	const { ottawa, wells } = screening
	const isSaid = (id: string) =>
		screening.items.some((item) => item.id === id && item.state === 'yes')
	const ofInjury = bothSides.flatMap((side) =>
		(['ankle', 'foot'] as const).flatMap((part) => {
			const state = ottawa[side]?.[part]
			if (state !== 'incomplete' && state !== 'not-applicable') return []
			if (isSaid(`screening.ottawa-${part}.${side}`)) return []
			return [t(`referral.ottawa.${state}`, { part, side })]
		}),
	)
	if (!wells) return ofInjury
	if (wells.score !== undefined && wells.band !== 'not-applicable')
		return [...ofInjury, t('referral.wells', { score: shown(wells.score) })]
	// why it cannot be used may be private
	return reader.told.includes('pregnancy') ? [...ofInjury, t('referral.wellsNot')] : ofInjury
}
