/** Growth: the stage, what is to come, and how little sure it is. */
import type { GrowthResult } from '../../findings/assessment.ts'
import type { Speak } from '../../words/speak.ts'
import { dateWords, shown } from '../../words/words.ts'
import { heading, type Section, say, small } from '../base.ts'
import { courseBlocks } from '../charts-section.ts'
import type { Block } from '../document.ts'
import type { Notes } from '../notes.ts'

/** Only where growth was judged: minors. */
export const growing: Section = (input, notes, t) => {
	const { growth } = input.assessment
	if (!growth) return []
	return [
		heading(t('player.growing')),
		say(stageWords(growth, t)),
		...courseBlocks('sizing', input, notes),
		...courseBlocks('growth', input, notes),
		...cautions(growth, notes, t),
	]
}
function stageWords({ band, measureAgainBy, footForecast }: GrowthResult, t: Speak): string {
	const stages = {
		before: t('player.stageBefore'),
		around: t('player.stageAround'),
		after: t('player.stageAfter'),
		uncertain: t('player.stageUncertain'),
	}
	const last = footForecast?.at(-1)
	const forecast = last && {
		date: dateWords(last.date),
		low: shown(last.lowMm, 0),
		high: shown(last.highMm, 0),
	}
	return [
		t('player.stage', { stage: stages[band] }),
		...(measureAgainBy ? [t('player.growAgain', { date: dateWords(measureAgainBy) })] : []),
		...(forecast ? [t('player.forecast', forecast)] : []),
	].join(' ')
}
/**
 * The cautions of every growth estimate, in the player's words; the estimate and its use stand in
 * the sentence of the stage.
 */
function cautions({ findings }: GrowthResult, notes: Notes, t: Speak): Block[] {
	const said = (id: string) => findings.find((finding) => finding.id === id)
	const bias = said('growth.bias')
	if (!bias) return []
	const girls = said('growth.girls') ? ` ${t('player.growthGirls')}` : ''
	return [small(`${t('player.growthCautions')}${girls} ${notes.mark(bias.basis)}`)]
}
