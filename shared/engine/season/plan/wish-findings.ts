/** Findings of what a season asks for and its rotation could not give. */
import type { Finding } from '../../findings/finding.ts'
import { need } from '../../plain/need.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import { seasonFinding } from '../finding.ts'
import { pairAt, type SeasonProblem, slotAt, trainingAhead } from '../problem/problem.ts'
import { momentOf } from './moment.ts'
import type { Unmet, UnmetKind } from './unmet.ts'

const sessions = (count: number): string => (count === 1 ? 'session' : 'sessions')
const kinds: Record<
	UnmetKind,
	{ level: Finding['level']; key: ThresholdKey; says: (count: number) => string }
> = {
	'no-pair': {
		level: 'caution',
		key: 'season.noPairPoints',
		says: (count) =>
			`In ${count} ${sessions(count)} no pair may be worn. See what to buy, or change the session.`,
	},
	'not-dry': {
		level: 'advise',
		key: 'season.dryingDampHours',
		says: (count) => `In ${count} ${sessions(count)} the boots may not be dry yet.`,
	},
	unfamiliar: {
		level: 'note',
		key: 'season.familiarDays',
		says: (count) =>
			`${count} ${count === 1 ? 'match is' : 'matches are'} played in a pair not worn in ` +
			'training shortly before.',
	},
	pin: {
		level: 'caution',
		key: 'season.pinPoints',
		says: (count) => `${count} pinned ${sessions(count)} could not be given the pinned pair.`,
	},
}
/** One finding for each kind of wish that went unmet, with its sessions. */
export const unmetFindings = (
	problem: SeasonProblem,
	unmet: readonly Unmet[],
	protocol: Protocol,
): Finding[] =>
	(Object.keys(kinds) as UnmetKind[]).flatMap((kind) => {
		const list = unmet.filter((wish) => wish.kind === kind)
		const { level, key, says } = kinds[kind]
		if (list.length === 0) return []
		return [
			seasonFinding(
				`season.${kind}`,
				level,
				says(list.length),
				list.map((wish) => ({
					measure: momentOf(slotAt(problem, wish.slot)),
					value: wish.says,
				})),
				protocol.basis(`season.${kind}`, key),
			),
		]
	})
/** One finding for each pair that is worn more or less of the training time than was asked. */
export function shareFindings(
	problem: SeasonProblem,
	share: readonly { pair: number; minutes: number }[],
	protocol: Protocol,
): Finding[] {
	const ahead = trainingAhead(problem)
	return share.map(({ pair: place, minutes }) => {
		const pair = pairAt(problem, place)
		const over = minutes > 0
		const bound = need(over ? pair.shareMax : pair.shareMin, 'the share asked for')
		const percent = rounded((100 * (bound * ahead + minutes)) / ahead, 0)
		return seasonFinding(
			`season.share-${pair.id}`,
			'note',
			`Pair ${pair.letter} (${pair.name}) is worn in ${percent} % of the training time; ` +
				`${over ? 'at most' : 'at least'} ${rounded(100 * bound, 0)} % was asked for. Other ` +
				'rules and wishes of the plan weigh more.',
			[
				{
					measure: over ? 'minutes above the share' : 'minutes below the share',
					value: rounded(Math.abs(minutes), 0),
					unit: 'min',
				},
			],
			protocol.basis('season.share', 'season.shareBoundPoints'),
		)
	})
}
