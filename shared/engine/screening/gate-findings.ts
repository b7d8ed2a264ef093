/** What the gate says beside the screening: rules of the facts, and what earlier visits left open. */
import { recordedConditions } from '../conditions/query.ts'
import { noInsertReasons } from '../facts/no-insert.ts'
import { severePain } from '../facts/severe-pain.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import type { PlayerFacts } from '../findings/player-facts.ts'
import { type Basis, type Because, commonPractice } from '../protocol/basis.ts'
import { holdRows } from '../protocol/holds.table.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { endsAnything } from './outcomes.ts'
import type { OpenSign } from './signs-of.ts'

const shortRule = (rule: string): string => rule.replace(/^screening\./, '')
const isSame = (sign: OpenSign, other: OpenSign): boolean =>
	sign.rule === other.rule && sign.side === other.side
/** The same sign was found again today: it speaks for itself. */
const foundToday = (sign: OpenSign, signs: readonly OpenSign[], today: string) =>
	signs.find((other) => isSame(sign, other) && other.since === today)
/** The id of the finding that speaks for a sign of an earlier visit. */
export const carriedId = (sign: OpenSign, signs: readonly OpenSign[], today: string): string =>
	foundToday(sign, signs, today)?.because[0] ??
	`screening.carried.${shortRule(sign.rule)}.${sign.side ?? 'none'}`

const basisOf = (rule: string): Basis => {
	const row = holdRows.find((held) => held.rule === rule)
	if (row?.source === undefined) return { rule: 'holds', ...commonPractice }
	return { rule: 'holds', source: row.source, strength: row.strength ?? 'practice' }
}
/** Why a rule of the facts holds on a limb. */
function reasonsOf(
	rule: string,
	side: Side,
	{ visit, facts, protocol }: { visit: Visit; facts: PlayerFacts; protocol: Protocol },
): Because[] {
	if (rule === 'foot-at-risk') return facts[side].footAtRisk
	if (rule === 'severe-pain') return severePain(visit, side, protocol)
	if (rule === 'no-insert-yet') return noInsertReasons(visit, facts.minor, side)
	const wanted =
		rule === 'uncleared-surgery'
			? (['foot-or-ankle-surgery'] as const)
			: ([
					'navicular-stress-fracture',
					'fifth-metatarsal-stress-fracture',
					'second-metatarsal-stress-fracture',
				] as const)
	return recordedConditions(visit, wanted, { side, when: 'ever' }).map(({ condition, status }) => ({
		measure: condition,
		side,
		value: status,
	}))
}
const factRules = [
	'foot-at-risk',
	'uncleared-surgery',
	'severe-pain',
	'bone-stress-recovering',
	'no-insert-yet',
] as const
/** An outcome of today that ends nothing is said, so that nobody relies on it. */
const idle = (asked: readonly OpenSign[], visit: Visit, protocol: Protocol): Finding[] =>
	(visit.outcomes ?? []).flatMap((outcome, index) =>
		endsAnything(outcome, asked, visit, protocol)
			? []
			: [
					findingOf(state('screening.ends-nothing', { number: index + 1 }), {
						side: outcome.side,
						level: 'caution',
						because: [{ measure: 'outcomeOn', value: outcome.on }],
						basis: { rule: 'outcomes', ...commonPractice },
						of: `${index + 1}`,
					}),
				],
	)
/**
 * Cautions of the facts, one stop for each sign that an earlier visit left open, and outcomes that
 * end nothing. @param asked what was open before today's outcomes
 */
export function gateFindings(
	{ asked, open }: { asked: readonly OpenSign[]; open: readonly OpenSign[] },
	visit: Visit,
	facts: PlayerFacts,
	protocol: Protocol,
): Finding[] {
	const today = visit.visitDate
	const known = factRules.flatMap((rule) =>
		bothSides
			.filter((side) =>
				open.some((sign) => sign.rule === rule && sign.side === side && sign.since === today),
			)
			.map((side) =>
				findingOf(state(`screening.${rule}`, { side }), {
					side,
					level: 'caution',
					because: reasonsOf(rule, side, { visit, facts, protocol }),
					basis:
						rule === 'severe-pain'
							? protocol.basis('severe pain', 'screening.severePain')
							: basisOf(rule),
				}),
			),
	)
	const left = open.filter(
		(sign, index) =>
			sign.since !== today &&
			foundToday(sign, open, today) === undefined &&
			open.findIndex((other) => other.since !== today && isSame(sign, other)) === index,
	)
	const carried = left.map((sign) =>
		findingOf(
			state('screening.carried', {
				sign: shortRule(sign.rule),
				side: sign.side ?? 'none',
				since: sign.since,
				sport: sign.holds.some(({ what }) => what === 'sport'),
			}),
			{
				side: sign.side ?? 'none',
				level: 'stop',
				// the sign may be private: reasons are printed, so they name the day alone
				because: [{ measure: 'openSince', value: sign.since }],
				basis: basisOf(sign.rule),
				id: carriedId(sign, open, today),
			},
		),
	)
	return [...known, ...carried, ...idle(asked, visit, protocol)]
}
