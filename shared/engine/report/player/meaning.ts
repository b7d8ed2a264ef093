/** What was found in sentences, each with what it asks of shoes, so that both are read at once. */
import { type RecordedCondition, saidConditions } from '../../conditions/query.ts'
import type { AnkleResult, Kept, SizingResult } from '../../findings/assessment.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Speak } from '../../words/speak.ts'
import {
	ankleLimits,
	capital,
	conditionInWords,
	shown,
	sideWords,
	statusWords,
} from '../../words/words.ts'
import type { StandingLine } from '../decided.ts'
import type { ReportInput } from '../inputs.ts'
import { type Notes, withMarks } from '../notes.ts'
import { planOf } from '../plan-of.ts'
import { readerOf } from '../reader.ts'
import { waits } from '../waits.ts'
import { reasonsForPairs } from './pair-reasons.ts'
import { pairsToFind } from './pairs-alike.ts'

/** A sentence, and the readings whose reasons belong to it. */
interface Found {
	says: string
	readings: readonly string[]
}
function lengthLines(sizing: Kept<SizingResult>, t: Speak): string[] {
	const { left, right, longerFoot } = sizing
	if (left.lengthMm === undefined || right.lengthMm === undefined)
		return bothSides.flatMap((side) => {
			const { lengthMm } = sizing[side]
			return lengthMm === undefined ? [] : [t('player.oneFoot', { side, length: shown(lengthMm) })]
		})
	const gap = Math.abs(left.lengthMm - right.lengthMm)
	return longerFoot === 'left' || longerFoot === 'right'
		? [t('player.longer', { side: longerFoot, gap: shown(gap) })]
		: [t('player.sameLength', { length: shown(left.lengthMm) })]
}
/** No work for an ankle is spoken of while exercise of a limb waits. */
const isWorkHeld = (input: ReportInput): boolean => waits(planOf(input).gate, 'exercise')
/** Both ankles at once where they are alike. */
function bendWords({ left, right }: Kept<AnkleResult>, t: Speak): string[] {
	const sides =
		left.band === right.band && left.limitedBy === right.limitedBy
			? ([['both', left]] as const)
			: ([
					['left', left],
					['right', right],
				] as const)
	return sides.flatMap(([side, { band, limitedBy }]) => {
		const why = ankleLimits[limitedBy]
		if (band === 'adequate')
			return [side === 'both' ? t('player.anklesEnough') : t('player.ankleEnough', { side })]
		if (band !== 'restricted') return []
		if (side === 'both') return [why ? t('player.anklesLessWhy', { why }) : t('player.anklesLess')]
		return [why ? t('player.ankleLessWhy', { side, why }) : t('player.ankleLess', { side })]
	})
}
const ankleLines = (input: ReportInput, t: Speak): Found[] => {
	const { ankle } = input.assessment
	const differ = !isWorkHeld(input) && (ankle.asymmetry === 'flag' || ankle.asymmetry === 'act')
	return [
		{ says: bendWords(ankle, t).join(' '), readings: ['ankleBand'] },
		...(differ ? [{ says: t('player.anklesDiffer'), readings: [] }] : []),
	]
}
function conditionLine(recorded: RecordedCondition, t: Speak): string {
	const { side, status } = recorded
	const words = {
		condition: capital(conditionInWords(recorded, 'player')),
		status: statusWords[status],
	}
	if (side === 'none') return t('player.conditionNoSide', words)
	const where = {
		both: sideWords.both,
		left: t('common.leftSide'),
		right: t('common.rightSide'),
	}
	return t('player.condition', { ...words, side: where[side] })
}
const foundIn = (input: ReportInput, t: Speak): Found[] => [
	...lengthLines(input.assessment.sizing, t).map((says) => ({ says, readings: [] })),
	...ankleLines(input, t),
	...saidConditions(input.visit).map((condition) => ({
		says: conditionLine(condition, t),
		readings: [condition.condition],
	})),
]
/**
 * Each finding with what it asks of the pairs to be found, in the order of the findings; then what is
 * asked by anything else: the ground, the position.
 */
export function foundItems(input: ReportInput, notes: Notes, t: Speak): string[] {
	const pairs = pairsToFind(planOf(input))
	const open = new Set(reasonsForPairs(readerOf('player', input), input, pairs))
	const told = ({ says, finding }: StandingLine) =>
		withMarks(says, finding ? notes.mark(finding.basis) : '')
	const take = (isOf: (line: StandingLine) => boolean): string[] =>
		[...open].filter(isOf).map((line) => {
			open.delete(line)
			return told(line)
		})
	const items = foundIn(input, t).map(({ says, readings }) =>
		[
			says,
			...take(({ finding }) =>
				(finding?.because ?? []).some(({ measure }) => readings.includes(measure)),
			),
		]
			.filter(Boolean)
			.join(' '),
	)
	return [...items.filter(Boolean), ...take(() => true)]
}
