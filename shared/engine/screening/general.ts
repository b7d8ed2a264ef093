/** The general questions, one yes or no each, and the conditions recorded in the history. */
import { conditionReading, recordedConditions } from '../conditions/query.ts'
import type { Action } from '../findings/assessment.ts'
import type { FindingSide } from '../findings/finding.ts'
import type { Because } from '../protocol/basis.ts'
import { bothSides } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import {
	actionFor,
	type Conclusions,
	distinctSides,
	itemOf,
	type Screened,
	screeningFinding,
	stateOf,
} from './conclusions.ts'
import type { FlagKey, FlagRow } from './flag-row.ts'
import { conditionRows, flagRows } from './flags.table.ts'

/** The questions whose sentence is filled in. */
const filled = {
	nightPain: ({ minor, protocol }: Screened) =>
		state('screening.nightPain', {
			minor,
			hours: protocol.value('screening.youngImagingHours'),
		}),
	boneStressLowRisk: ({ protocol }: Screened) =>
		state('screening.boneStressLowRisk', {
			weeks: protocol.value('screening.boneStressReviewWeeks'),
		}),
	limpUnexplained: ({ minor }: Screened) => state('screening.limpUnexplained', { minor }),
	hipPainWithLimp: ({ minor }: Screened) => state('screening.hipPainWithLimp', { minor }),
	lumpOrSwelling: ({ minor, protocol }: Screened) =>
		state('screening.lumpOrSwelling', {
			minor,
			hours: protocol.value('screening.youngImagingHours'),
			weeks: protocol.value('screening.lumpAdultWeeks'),
		}),
	activeFootUlcer: ({ protocol }: Screened) =>
		state('screening.activeFootUlcer', { days: protocol.value('screening.ulcerSeenDays') }),
} as const
type Filled = keyof typeof filled
const isFilled = (key: FlagKey): key is Filled => Object.hasOwn(filled, key)
const statementOf = (key: FlagKey, screened: Screened): Statement =>
	isFilled(key) ? filled[key](screened) : state(`screening.${key}`)

/** A question for women is asked of women; an answer that was given counts whoever gave it. */
const concerns = (row: FlagRow, { visit, answers }: Screened): boolean =>
	row.sex === undefined || row.sex === visit.player.sex || answers[row.key] !== undefined

/** Every general question in the order of its table, asked or not. */
export function generalConclusions(screened: Screened): Conclusions {
	const read = flagRows
		.filter((row) => concerns(row, screened))
		.map((row) => {
			const answer = screened.answers[row.key]
			const statement = statementOf(row.key, screened)
			const basis = {
				rule: 'general warning signs',
				source: row.source,
				strength: row.strength,
			}
			const action = answer === true ? actionOfFlag(row, screened) : 'proceed'
			const item = itemOf(statement, { side: 'none', state: stateOf(answer), action, basis })
			return { row, item, statement, basis }
		})
	return {
		items: read.map(({ item }) => item),
		findings: read.flatMap(({ row: { level }, item, statement, basis }) =>
			level && item.state === 'yes'
				? [screeningFinding(statement, { side: 'none', level, because: answeredYes, basis })]
				: [],
		),
	}
}
/** The reason of whatever rests on the answers alone. */
export const answeredYes = [{ measure: 'screeningAnswer', value: 'yes' }]
/** A midfoot on which no weight can be borne does not wait for imaging. */
function actionOfFlag(row: FlagRow, { answers, minor }: Screened): Action {
	if (row.key === 'lisfrancSuspected' && answers.injury?.unableToBearWeightNow === true)
		return 'same-day'
	return actionFor(row, minor)
}

/** The legs of a side on which no heel rise was possible when it was tested. */
const noHeelRise = ({ posture }: Visit, side: FindingSide): Because[] =>
	bothSides
		.filter((leg) => side === 'both' || side === 'none' || side === leg)
		.filter((leg) => posture?.[leg]?.heelRises === 0)
		.map((leg) => ({ measure: 'heelRises', side: leg, value: 0 }))
/** The recorded conditions that by themselves call for somebody else: one item a side. */
export function conditionConclusions({ visit }: Screened): Conclusions {
	const found = conditionRows.flatMap((row) => {
		const { condition, when, action, source, strength } = row
		const recorded = recordedConditions(visit, [condition], { when })
		return distinctSides(recorded)
			.map((side) => ({ side, tested: row.noHeelRise ? noHeelRise(visit, side) : [] }))
			.filter(({ tested }) => !row.noHeelRise || tested.length > 0)
			.map(({ side, tested }) => ({
				item: itemOf(state(`screening.condition-${condition}`), {
					side,
					state: 'yes',
					action,
					basis: { rule: 'recorded conditions', source, strength },
				}),
				because: [...recorded.filter((one) => one.side === side).map(conditionReading), ...tested],
			}))
	})
	return {
		items: found.map(({ item }) => item),
		findings: [],
		because: Object.fromEntries(found.map(({ item, because }) => [item.id, because])),
	}
}
