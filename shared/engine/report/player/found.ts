/** What was found and what it means: feet, ankles, what hurts, the measures, and the size. */
import type { Kept, SizingResult } from '../../findings/assessment.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Speak } from '../../words/speak.ts'
import { dateWords } from '../../words/words.ts'
import { heading, playsOf, type Section, say, small } from '../base.ts'
import { courseBlocks } from '../charts-section.ts'
import type { BlockOf, InnerBlock } from '../document.ts'
import { feetFigure } from '../feet-figure.ts'
import type { ReportInput } from '../inputs.ts'
import { measuredNumbers } from '../measure-table.ts'
import { foundItems } from './meaning.ts'
import { moreItems } from './more.ts'
import { size } from './size.ts'

/** Share of the sentences; the rest is for drawing, measures and size. */
const leftPercent = 54
/** Who the page is about, beyond what page one is carried about with. */
function about({ visit }: ReportInput, t: Speak): string {
	const { birthDate, club } = visit.player
	const said: [string, string | undefined][] = [
		[t('subject.born'), dateWords(birthDate)],
		[t('subject.club'), club],
		[t('subject.plays'), visit.play?.code || visit.play?.position ? playsOf(visit, t) : undefined],
	]
	return said.flatMap(([label, value]) => (value ? [`${label}: ${value}.`] : [])).join(' ')
}
/** In sentences, beside the feet as a picture, the measures and the size. */
export const found: Section = (input, notes, t) => {
	const { assessment, clinic } = input
	const items = [...foundItems(input, notes, t), ...moreItems('found', input, notes)]
	const left: InnerBlock[] = [
		small(about(input, t)),
		items.length > 0
			? { kind: 'list', items: [...new Set(items)] }
			: say(t('player.nothingMeasured')),
	]
	const right = [
		...feetBlocks(assessment.sizing, clinic.colour, t),
		...measures(input, t),
		...size(input, notes, t),
	]
	return [
		heading(t('player.found'), { notOnPageOne: true }),
		...(right.length === 0 ? left : [{ kind: 'beside' as const, left, right, leftPercent }]),
	]
}
/** The ankles over several visits, as a chart. */
export const anklesOverTime: Section = (input, notes, t) => {
	const charts = courseBlocks('ankle', input, notes, t)
	return charts.length === 0 ? [] : [heading(t('player.anklesOverTime')), ...charts]
}
function feetBlocks(sizing: Kept<SizingResult>, colour: string, t: Speak): BlockOf<'figure'>[] {
	const figure = feetFigure(sizing, colour, t)
	return figure ? [{ kind: 'figure', caption: t('player.feetCaption'), ...figure }] : []
}
/**
 * The measures taken, a row each; a measure of neither side has no row, and none what the drawing of
 * both feet says.
 */
function measures({ visit, assessment }: ReportInput, t: Speak): BlockOf<'table'>[] {
	const areDrawn = bothSides.every((side) => assessment.sizing[side].lengthMm !== undefined)
	const drawn = areDrawn ? (['player.heelToToe', 'player.heelToBall', 'player.width'] as const) : []
	const rows = measuredNumbers('player', visit, t, drawn)
	if (rows.length === 0) return []
	return [
		{
			kind: 'table',
			caption: t(drawn.length > 0 ? 'player.moreMeasures' : 'player.measures'),
			head: ['', t('common.left'), t('common.right')],
			rows,
			widths: ['*', 36, 36],
			align: ['left', 'right', 'right'],
		},
	]
}
