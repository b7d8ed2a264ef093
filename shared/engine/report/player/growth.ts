/** Growth: when to measure again and what may come. How far a child is grown is not a child's to read. */
import type { GrowthResult, Kept } from '../../findings/assessment.ts'
import type { Speak } from '../../words/speak.ts'
import { dateWords, shown } from '../../words/words.ts'
import { heading, type Section, say, small } from '../base.ts'
import { courseBlocks } from '../charts-section.ts'

/** Only where growth was judged: minors. */
export const growing: Section = (input, notes, t) => {
	const { growth } = input.assessment
	if (!growth) return []
	const words = whatMayCome(growth, t)
	const charts = (['sizing', 'growth'] as const).flatMap((topic) =>
		courseBlocks(topic, input, notes, t),
	)
	if (words.length + charts.length === 0) return []
	return [
		heading(t('player.growing')),
		...(words.length > 0 ? [say(words.join(' '))] : []),
		...charts,
		...(growth.footForecast?.length || charts.length > 0
			? [small(t('player.growthCautions'))]
			: []),
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
