/** What the footwear room says. */
import type { Feature } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { featureInWords } from '../words.ts'
import { aFeature, featureIs, ruleList } from './features.ts'
import { ankleRuleSentences } from './footwear/ankle.ts'
import { forefootSentences } from './footwear/forefoot.ts'
import { groundSentences } from './footwear/ground.ts'
import { heelAndCalfSentences } from './footwear/heel-and-calf.ts'
import { legSentences } from './footwear/leg.ts'
import { playerRuleSentences } from './footwear/player.ts'
import { shapeSentences } from './footwear/shape.ts'
import { skinAndNailSentences } from './footwear/skin-and-nails.ts'
import { capital, count } from './format.ts'

const wishSentences = {
	/** One feature that some rules seek and others avoid; rules by id. */
	'footwear.contradiction-of-one': sentence<{
		feature: Feature
		seekRules: readonly string[]
		avoidRules: readonly string[]
	}>({
		clinician: ({ feature, seekRules, avoidRules }) =>
			`${capital(aFeature(feature))} ${featureIs(feature)} wanted (${ruleList(seekRules)}) and to ` +
			`be avoided (${ruleList(avoidRules)}): weigh the reasons and decide.`,
		player: ({ feature }) =>
			`One reason asks for ${featureInWords(feature)}. Another speaks against it. Your clinician ` +
			'weighs them.',
	}),
	/** Two features that no boot has at once, both sought. */
	'footwear.contradiction-of-two': sentence<{
		feature: Feature
		other: Feature
		featureRules: readonly string[]
		otherRules: readonly string[]
	}>({
		clinician: ({ feature, other, featureRules, otherRules }) =>
			`${capital(aFeature(feature))} (${ruleList(featureRules)}) and ${aFeature(other)} ` +
			`(${ruleList(otherRules)}) are both wanted: weigh the reasons and decide.`,
		player: ({ feature, other }) =>
			`One reason asks for ${featureInWords(feature)}. Another asks for ${featureInWords(other)}. ` +
			'Your clinician weighs them.',
	}),
}
const rotationSentences = {
	'footwear.two-roles': sentence({
		clinician: () =>
			'Two roles for footwear: training and pre-season want a cushioned, steadier pair (a trail ' +
			'trainer with lugs serves); for matches a lighter, lower one will do. Common practice, no ' +
			'source.',
		player: () => 'Train in a cushioned, steady pair. A lighter, lower pair will do for matches.',
		coach: () => 'A cushioned, steady pair for training; a lighter, lower one for matches.',
	}),
	'footwear.two-pairs': sentence<{ matchesPerWeek: number; boots: number }>({
		clinician: ({ matchesPerWeek, boots }) =>
			`${count(matchesPerWeek, 'match', 'matches')} a week: at least two pairs of boots, so that ` +
			`each can dry and the load on the foot varies. Recorded: ${boots === 0 ? 'none' : 'one'}.`,
		player: ({ matchesPerWeek }) =>
			`You play ${count(matchesPerWeek, 'match', 'matches')} a week. Own at least two pairs of ` +
			'boots, so that each can dry.',
		coach: () => 'At least two pairs of boots, so that each can dry.',
	}),
}
export const footwearSentences = {
	...shapeSentences,
	...ankleRuleSentences,
	...heelAndCalfSentences,
	...forefootSentences,
	...skinAndNailSentences,
	...legSentences,
	...playerRuleSentences,
	...groundSentences,
	...wishSentences,
	...rotationSentences,
}
/** Names of its numbers that are no measure of the visit. */
export const footwearReadings = {
	ageYears: 'age',
	ankleBand: 'ankle range',
	ankleLimitedBy: 'ankle limited by',
	fitting: 'fitting',
	footLengthDifferenceMm: 'difference in foot length',
	footPosture: 'foot posture index',
	footPostureBand: 'foot posture',
	firstMtp: 'first MTP',
	growthBand: 'growth stage',
	surfaces: 'surface',
	widthForLengthZ: 'width for length, z',
}
