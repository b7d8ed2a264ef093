/** What was told of the time since the visit before: harm first, what is still open, what is old. */
import { type Finding, findingOf } from '../findings/finding.ts'
import { commonPractice } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { PairRole, Trouble } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { offeredUnchanged } from './offered.ts'
import { stillAsBefore } from './take-over.ts'
import { troublesIn } from './told.ts'
import { troubleRows } from './troubles.table.ts'

const basisOf = (rule: string) => ({ rule, ...commonPractice })
/** One for each trouble: what is proposed about it can be changed or left out line by line. */
const wornFindings = ({ since }: Visit): Finding[] =>
	(since?.worn ?? []).flatMap(({ what, side, trouble }) =>
		troublesIn(trouble).map((one) => {
			const { act } = troubleRows[one]
			return findingOf(state(`recheck.${what}-trouble`, { trouble: one, act }), {
				side,
				level: 'caution',
				of: one,
				because: [],
				basis: basisOf('trouble with what is worn inside'),
			})
		}),
	)
/** What was taken off, or never worn, is not simply proposed again. */
const offFindings = ({ since }: Visit): Finding[] =>
	(since?.worn ?? []).flatMap(({ what, side, now }) =>
		now === undefined || now === 'still-worn'
			? []
			: [
					findingOf(state(`recheck.${what}-off`, { now }), {
						side,
						level: 'advise',
						because: [],
						basis: basisOf('what is worn no more'),
					}),
				],
	)
const pairFinding = (trouble: Trouble, role: PairRole, name: string | undefined): Finding => {
	const { act } = troubleRows[trouble]
	return findingOf(
		state('recheck.pair-trouble', { trouble, act, role, ...(name !== undefined && { name }) }),
		{
			side: 'none',
			level: 'caution',
			of: `${role}-${trouble}`,
			because: [],
			basis: basisOf('trouble with a new pair'),
		},
	)
}
const pairFindings = ({ since, footwear = [] }: Visit): Finding[] =>
	(since?.bought ?? []).flatMap(({ role, pair, trouble }) => {
		const name = footwear.find(({ id }) => id === pair)?.name
		return troublesIn(trouble).map((one) => pairFinding(one, role, name))
	})
/** Nobody knows yet what the doctor found: the way there is still to be gone. */
function letterFindings({ since }: Visit): Finding[] {
	if (!since?.asksLetter || since.letter === 'answered') return []
	const came = since.letter ?? 'not-asked'
	return [
		findingOf(state('recheck.letter-open', { came, on: since.visitDate }), {
			side: 'none',
			level: 'caution',
			because: [],
			basis: basisOf('what came of a letter'),
		}),
	]
}
/** Figures of another day are never read as of today; what speaks against them is said. */
function oldFindings(visit: Visit, last: Visit | undefined, protocol: Protocol): Finding[] {
	const on = visit.since?.visitDate
	const groups = stillAsBefore(visit, last)
	if (groups.length === 0 || on === undefined) return []
	const offered = last ? offeredUnchanged(visit, last, protocol) : groups
	const again = groups.filter((group) => !offered.includes(group))
	const about = {
		side: 'none',
		because: [],
		basis: basisOf('what was not measured again'),
	} as const
	return [
		findingOf(state('recheck.not-measured-again', { groups, on }), {
			...about,
			because: [],
			level: 'note',
		}),
		...(again.length > 0
			? [
					findingOf(state('recheck.measure-again', { groups: again, on }), {
						...about,
						because: [],
						level: 'caution',
					}),
				]
			: []),
	]
}
/** A trouble that was ticked twice is one. */
const onceById = (findings: readonly Finding[]): Finding[] => [
	...new Map(findings.map((finding) => [finding.id, finding])).values(),
]
/** @param before the player's earlier visits, oldest first */
export const recheckFindings = (
	visit: Visit,
	before: readonly Visit[],
	protocol: Protocol,
): Finding[] =>
	onceById([
		...wornFindings(visit),
		...offFindings(visit),
		...pairFindings(visit),
		...letterFindings(visit),
		...oldFindings(
			visit,
			before.findLast(({ visitDate }) => visitDate === visit.since?.visitDate),
			protocol,
		),
	])
