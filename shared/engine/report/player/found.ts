/** What was found: feet, ankles, what hurts, and the measures. */
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
import { heading, type Section, say } from '../base.ts'
import { courseBlocks } from '../charts-section.ts'
import type { Block } from '../document.ts'
import { feetFigure } from '../feet-figure.ts'
import type { ReportInput } from '../inputs.ts'
import { measuredTable } from '../measure-table.ts'
import { planOf } from '../plan-of.ts'
import { waits } from '../waits.ts'

/** Feet, ankles and conditions in sentences, the feet as a picture, the ankles as a chart. */
export const found: Section = (input, notes, t) => {
	const { visit, assessment, clinic } = input
	const items = [
		...lengthLines(assessment.sizing, t),
		...ankleLines(assessment.ankle, isWorkHeld(input), t),
		...saidConditions(visit).map((condition) => conditionLine(condition, t)),
	]
	return [
		heading(t('player.found')),
		items.length > 0 ? { kind: 'list', items } : say(t('player.nothingMeasured')),
		...feetBlocks(assessment.sizing, clinic.colour, t),
		...courseBlocks('ankle', input, notes, t),
	]
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
function ankleLines(ankle: Kept<AnkleResult>, isHeld: boolean, t: Speak): string[] {
	const differ = !isHeld && (ankle.asymmetry === 'flag' || ankle.asymmetry === 'act')
	return [
		...bothSides.flatMap((side) => {
			const { band, limitedBy } = ankle[side]
			const why = ankleLimits[limitedBy]
			if (band === 'adequate') return [t('player.ankleEnough', { side })]
			if (band !== 'restricted') return []
			return [why ? t('player.ankleLessWhy', { side, why }) : t('player.ankleLess', { side })]
		}),
		...(differ ? [t('player.anklesDiffer')] : []),
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
function feetBlocks(sizing: Kept<SizingResult>, colour: string, t: Speak): Block[] {
	const figure = feetFigure(sizing, colour, t)
	return figure ? [{ kind: 'figure', caption: t('player.feetCaption'), ...figure }] : []
}

/** The measures taken, a row each; a measure of neither side has no row. */
export const measures: Section = ({ visit }, _notes, t) => {
	const rows = measuredTable('player', visit, t)
	if (rows.length === 0) return []
	return [
		{
			kind: 'table',
			caption: t('player.measures'),
			head: ['', t('common.left'), t('common.right')],
			rows,
			widths: ['*', 110, 110],
		},
	]
}
