import { writeFileSync } from 'node:fs'
import { z } from 'zod'
import { assess } from '../../shared/engine/assess.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { ClubConsent } from '../../shared/engine/report/club.ts'
import {
	isKind,
	type KindInput,
	kindNames,
	kinds,
	unnamedClinic,
} from '../../shared/engine/report/kinds.ts'
import { planSchema } from '../../shared/engine/season/plan-file.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { renderPdf } from '../pdf/render.ts'
import { BadInput, readArgs } from './args.ts'
import { readAs, readClinic, readEarlier, readProtocol, readVisit } from './files.ts'

/**
 * The consents of a club document: one of this player, or one a player in the order of the visits.
 */
const consentSchema = z.strictObject({
	id: z.string().min(1).max(80),
	purpose: z.enum(['coach', 'squad-club']),
	decision: z.enum(['permit', 'deny']),
	given: z.iso.date(),
	until: z.iso.date().optional(),
	withdrawn: z.iso.date().optional(),
})
const consentsSchema = z.union([
	consentSchema.transform((one) => [one]),
	z.array(consentSchema).max(500),
])
function readConsents(name: string | undefined): ClubConsent[] {
	if (name === undefined) return []
	return readAs(consentsSchema, name).map(({ until, withdrawn, ...one }) => ({
		...one,
		...(until ? { until } : {}),
		...(withdrawn ? { withdrawn } : {}),
	}))
}
const papers = ['A4', 'A3'] as const
const audiences = ['clinician', 'club'] as const

/** Writes a PDF of a visit. Nothing is signed on the command line: the page says so. */
export async function reportCommand(args: string[]): Promise<void> {
	const text = { type: 'string' } as const
	const many = { type: 'string', multiple: true } as const
	const { place, option } = readArgs(
		args,
		{
			kind: text,
			out: text,
			clinic: text,
			protocol: text,
			earlier: many,
			plan: text,
			consent: text,
			member: many,
			audience: text,
			paper: text,
			on: text,
			recipient: text,
		},
		['VISIT.json'],
	)
	const given = (name: string): string | undefined => option[name] as string | undefined
	const problems: string[] = []
	const [kind, out, paper, audience] = [
		given('kind'),
		given('out'),
		given('paper'),
		given('audience'),
	]
	if (!isKind(kind))
		problems.push(
			'--kind: ' +
				`${kind === undefined ? 'missing, given nothing' : `not a kind this version can write, given "${kind}"`}, ` +
				`allowed: ${kindNames.join(', ')}`,
		)
	if (!out)
		problems.push('--out: missing, given nothing, allowed: the name of the PDF file to write')
	if (paper !== undefined && !papers.includes(paper as 'A4'))
		problems.push(
			`--paper: no such paper for the chart, given "${paper}", allowed: ${papers.join(', ')}`,
		)
	if (audience !== undefined && !audiences.includes(audience as 'club'))
		problems.push(
			`--audience: no such reader, given "${audience}", allowed: ${audiences.join(', ')}`,
		)
	if (given('on') !== undefined && !z.iso.date().safeParse(given('on')).success)
		problems.push(`--on: not a date, given "${given('on')}", allowed: YYYY-MM-DD`)
	if (problems.length > 0 || !isKind(kind)) throw new BadInput(problems)
	const visit = readVisit(place[0]!)
	const protocolFile = readProtocol(given('protocol'))
	const earlier = readEarlier(option.earlier as string[] | undefined, visit)
	const members = ((option.member as string[] | undefined) ?? []).map((name) => {
		const one = readVisit(name)
		return { visit: one, assessment: assess(one, [], protocolFile), decisions: noDecisions }
	})
	const input: KindInput = {
		visit,
		earlier,
		members,
		decisions: noDecisions,
		signedAt: undefined,
		draft: true,
		on: given('on') ?? visit.visitDate,
		protocol: openProtocol(protocolFile),
		assessment: assess(visit, earlier, protocolFile),
		clinic: readClinic(given('clinic')) ?? unnamedClinic,
		consents: readConsents(given('consent')),
		...(visit.player.club ? { team: visit.player.club } : {}),
		...(paper ? { paper: paper as 'A4' | 'A3' } : {}),
		...(audience ? { audience: audience as 'club' | 'clinician' } : {}),
		...(given('recipient') ? { letter: { recipient: given('recipient')! } } : {}),
		...(given('plan') === undefined ? {} : { plan: readAs(planSchema, given('plan')!) }),
	}
	// the solver is loaded only where a chart is asked for and no plan was given
	if (kind === 'season-chart' && !input.plan && visit.season && (visit.footwear?.length ?? 0) > 0)
		input.plan = await (await import('../solver/plan.ts')).planSeason(visit, {
			protocolFile,
			earlierVisits: earlier,
		})
	const missing = kinds[kind].problems(input)
	if (missing.length > 0) throw new BadInput(missing)
	let bytes: Uint8Array
	try {
		bytes = await renderPdf(kinds[kind].compose(input))
	} catch (error) {
		if (error instanceof Error && (error.name === 'UnprintableText' || error.name === 'BadLogo'))
			throw new BadInput([error.message])
		throw error
	}
	try {
		writeFileSync(out as string, bytes)
	} catch (error) {
		throw new BadInput([
			`--out: cannot be written (${(error as NodeJS.ErrnoException).code}), given "${out}", ` +
				'allowed: a file in a folder that exists',
		])
	}
}
