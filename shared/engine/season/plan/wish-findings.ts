/** Findings of what a season asks for and its rotation could not give. */
import { type Finding, findingOf } from '../../findings/finding.ts'
import { need } from '../../plain/need.ts'
import type { Because } from '../../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import { state } from '../../words/statement.ts'
import { ownRule } from '../finding.ts'
import { momentOf, pairAt, type SeasonProblem, slotAt, trainingAhead } from '../problem/problem.ts'
import type { Unmet, UnmetKind } from './unmet.ts'

interface Kind {
	level: Finding['level']
	/** the threshold that it goes by; left out where it is the order of what matters alone */
	key?: ThresholdKey
	rule: string
	/** what each of its sessions is called among the reasons */
	reading: string
}
const kinds: Record<UnmetKind, Kind> = {
	'no-pair': {
		level: 'caution',
		rule: 'a pair for each session',
		reading: 'sessionWithoutPair',
	},
	'not-dry': {
		level: 'advise',
		key: 'season.dryingDampHours',
		rule: 'boots dry before they are worn again',
		reading: 'pairNotDry',
	},
	unfamiliar: {
		level: 'note',
		key: 'season.familiarDays',
		rule: 'matches in a pair of the trainings before',
		reading: 'pairNotTrainedIn',
	},
	pin: {
		level: 'caution',
		rule: 'a pinned pair is worn',
		reading: 'pinNotWorn',
	},
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
		const { level, key, rule } = kinds[kind]
		if (list.length === 0) return []
		return [
			findingOf(state(`season.${kind}`, { sessions: list.length }), {
				id: `season.${kind}`,
				side: 'none',
				level,
				because: list.map((wish) => sessionReading(problem, wish)),
				basis: key === undefined ? ownRule(rule) : protocol.basis(rule, key),
			}),
		]
	})
/** One finding for each pair that is worn more or less of the training time than was asked. */
export function shareFindings(
	problem: SeasonProblem,
	share: readonly { pair: number; minutes: number }[],
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
			basis: ownRule('share of the training time asked for'),
		})
	})
}
