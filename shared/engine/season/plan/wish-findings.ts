/** Findings of what a season asks for and its rotation could not give. */
import { type Finding, findingOf } from '../../findings/finding.ts'
import { need } from '../../plain/need.ts'
import type { Because } from '../../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import { state } from '../../words/statement.ts'
import { momentOf, pairAt, type SeasonProblem, slotAt, trainingAhead } from '../problem/problem.ts'
import type { Unmet, UnmetKind } from './unmet.ts'

const kinds: Record<UnmetKind, { level: Finding['level']; key: ThresholdKey; reading: string }> = {
	'no-pair': { level: 'caution', key: 'season.noPairPoints', reading: 'sessionWithoutPair' },
	'not-dry': { level: 'advise', key: 'season.dryingDampHours', reading: 'pairNotDry' },
	unfamiliar: { level: 'note', key: 'season.familiarDays', reading: 'pairNotTrainedIn' },
	pin: { level: 'caution', key: 'season.pinPoints', reading: 'pinNotWorn' },
}
/** The session with its pair, or its surface where there is none. */
function sessionReading(problem: SeasonProblem, { slot, pair, kind }: Unmet): Because {
	const session = slotAt(problem, slot)
	return {
		measure: kinds[kind].reading,
		at: momentOf(session),
		value: pair === undefined ? session.surface : pairAt(problem, pair).name,
	}
}
/** One finding for each kind of wish that went unmet, with its sessions. */
export const unmetFindings = (
	problem: SeasonProblem,
	unmet: readonly Unmet[],
	protocol: Protocol,
): Finding[] =>
	(Object.keys(kinds) as UnmetKind[]).flatMap((kind) => {
		const list = unmet.filter((wish) => wish.kind === kind)
		const { level, key } = kinds[kind]
		if (list.length === 0) return []
		return [
			findingOf(state(`season.${kind}`, { sessions: list.length }), {
				id: `season.${kind}`,
				side: 'none',
				level,
				because: list.map((wish) => sessionReading(problem, wish)),
				basis: protocol.basis(`season.${kind}`, key),
			}),
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
		const { id, letter, name, shareMax, shareMin } = pairAt(problem, place)
		const over = minutes > 0
		const bound = need(over ? shareMax : shareMin, 'the share asked for')
		const percent = rounded((100 * (bound * ahead + minutes)) / ahead, 0)
		const asked = rounded(100 * bound, 0)
		const said = over
			? state('season.share-over', { letter, name, percent, mostPercent: asked })
			: state('season.share-under', { letter, name, percent, leastPercent: asked })
		return findingOf(said, {
			id: `season.share-${id}`,
			side: 'none',
			level: 'note',
			because: [
				{
					measure: over ? 'minutesAboveShare' : 'minutesBelowShare',
					value: rounded(Math.abs(minutes), 0),
					unit: 'min',
				},
			],
			basis: protocol.basis('season.share', 'season.shareBoundPoints'),
		})
	})
}
