/** Growth: when to measure again and what may come. How far a child is grown is not a child's to read. */
import type { GrowthResult, Kept } from '../../findings/assessment.ts'
import type { Speak } from '../../words/speak.ts'
import { dateWords, shown } from '../../words/words.ts'
import { heading, type Section, say } from '../base.ts'
import { courseBlocks } from '../charts-section.ts'

/** Share of the words; the chart has the rest. */
const leftPercent = 38
const chartWidthPt = 290
/** One chart of them, of the feet before the height. Only where growth was judged: minors. */
export const growing: Section = (input, notes, t) => {
	const { growth } = input.assessment
	if (!growth) return []
	const words = whatMayCome(growth, t)
	const [chart] = (['sizing', 'growth'] as const).flatMap((topic) =>
		courseBlocks(topic, input, notes, t, chartWidthPt),
	)
	if (words.length === 0 && !chart) return []
	const isGuessed = growth.footForecast?.length || chart
	const said = [...words, ...(isGuessed ? [t('player.growthCautions')] : [])].join(' ')
	return [
		heading(t('player.growing')),
		...(chart
			? [{ kind: 'beside' as const, left: [say(said)], right: [chart], leftPercent }]
			: [say(said)]),
	]
}
function whatMayCome({ measureAgainBy, footForecast }: Kept<GrowthResult>, t: Speak): string[] {
	const last = footForecast?.at(-1)
	const forecast = last && {
		date: dateWords(last.date),
		low: shown(last.lowMm, 0),
		high: shown(last.highMm, 0),
	}
	return [
		...(measureAgainBy ? [t('player.growAgain', { date: dateWords(measureAgainBy) })] : []),
		...(forecast ? [t('player.forecast', forecast)] : []),
	]
}
