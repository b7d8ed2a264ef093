/** What is said of a wish that gave way to another. */
import type { Feature, Sole, Surface } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { aFeature, featureIs, ruleList, soleName } from './features.ts'
import { article, capital, listed, terms } from './format.ts'
import { featureWords } from './terms.table.ts'

/** Each rank of `protocol/settling.table.ts`: whoever states one that lacks words does not compile. */
const rankWords = {
	gate: 'what danger holds back',
	length: 'length',
	ground: 'the sole that the ground allows',
	'skin-and-joints': 'skin and joints at risk',
	'injury-now': 'an injury now',
	'recurrent-injury': 'an injury that comes back',
	shape: 'the shape of the foot',
	growth: 'growth',
	grip: 'grip',
	'body-and-position': 'body and position',
	preference: 'preference',
} as const
type SettlingRank = keyof typeof rankWords
type Way = 'seek' | 'avoid'
interface SettledParams extends Readonly<Record<string, unknown>> {
	feature: Feature
	way: Way
	rules: readonly string[]
	rank: SettlingRank
	over: Feature
	overWay: Way
	overRules: readonly string[]
	overRank: SettlingRank
	by: 'rank' | 'severity' | 'strength' | 'order'
}
function why({ by, rank, overRank }: SettledParams): string {
	if (by === 'rank') return `${rankWords[overRank]} comes before ${rankWords[rank]}`
	if (by === 'severity') return 'the more painful injury comes first'
	if (by === 'strength') return 'the stronger evidence comes first'
	return 'the two weigh alike: change it if you weigh them otherwise'
}
/** Grounds as a player calls them. */
const groundWords: Record<Surface, string> = {
	'natural-soft': 'soft grass',
	'natural-firm': 'firm grass',
	'natural-hard': 'hard grass',
	hybrid: 'mixed grass',
	'artificial-3g': '3G turf',
	'artificial-sand': 'turf with sand',
	hall: 'hall floors',
	road: 'roads',
}
/** Grounds as a player calls them, in a row. */
export const groundsInWords = (surfaces: readonly Surface[]): string =>
	listed(surfaces.map((surface) => groundWords[surface]))
const plain = (feature: Feature): string => featureWords[feature] ?? aFeature(feature)
const asked = (way: Way, feature: Feature): string =>
	`${aFeature(feature)} ${featureIs(feature)} ${way === 'seek' ? 'sought' : 'avoided'}`

export const settledSentences = {
	'settled.feature': sentence<SettledParams>({
		clinician: (said) =>
			`${capital(asked(said.overWay, said.over))} (${ruleList(said.overRules)}); ` +
			`${said.way === 'seek' ? 'seeking' : 'avoiding'} ${aFeature(said.feature)} ` +
			`(${ruleList(said.rules)}) gives way: ${why(said)}.`,
		player: ({ feature, way, over, overWay }) => {
			if (feature !== over) return `Look for ${plain(over)}. It comes before ${plain(feature)}.`
			return overWay === 'seek' && way === 'avoid'
				? `One reason speaks against ${plain(feature)}. Look for it all the same.`
				: `One reason asks for ${plain(feature)}. Stay away from it all the same.`
		},
	}),
	/** One sole for grounds of which some would ask for another. */
	'settled.ground': sentence<{
		sole: Sole
		better: Sole
		surfaces: readonly Surface[]
		/** No other ground is played on. */
		alone?: boolean
	}>({
		clinician: ({ sole, better, surfaces, alone }) =>
			`${alone ? capital(article(soleName(sole))) : `One pair with ${article(soleName(sole))} for all grounds`}: ` +
			`on ${terms(surfaces)} ${article(soleName(better))} would suit better.`,
		player: ({ surfaces, alone }) =>
			alone
				? `This sole will do on ${groundsInWords(surfaces)}. It is second best there.`
				: `One pair will do for you, though it is second best on ${groundsInWords(surfaces)}.`,
	}),
	/** A wish that the sole allowed on the ground does not meet. */
	'settled.sole': sentence<{
		feature: Feature
		way: Way
		rules: readonly string[]
		sole: Sole
		surfaces: readonly Surface[]
	}>({
		clinician: ({ feature, way, rules, sole, surfaces }) =>
			`${capital(article(soleName(sole)))} is what ${terms(surfaces)} allows: ` +
			`${way === 'seek' ? 'seeking' : 'avoiding'} ${aFeature(feature)} (${ruleList(rules)}) gives ` +
			'way.',
		player: ({ feature, way, surfaces }) =>
			way === 'seek'
				? `No boots for ${groundsInWords(surfaces)} have ${plain(feature)}.`
				: `Boots for ${groundsInWords(surfaces)} have ${plain(feature)}. Wear them there only.`,
	}),
	/** A sole that the ground would ask for, left for the sake of skin, joints or an injury. */
	'settled.sole-left': sentence<{
		inPlaceOf: Sole
		sole: Sole
		feature: Feature
		way: Way
		rules: readonly string[]
		rank: SettlingRank
	}>({
		clinician: ({ inPlaceOf, sole, feature, way, rules, rank }) =>
			`${capital(article(soleName(sole)))} in place of ${article(soleName(inPlaceOf))}: ` +
			`${asked(way, feature)} (${ruleList(rules)}), and ${rankWords[rank]} comes before ` +
			`${rankWords.grip}.`,
		player: ({ feature, way }) =>
			way === 'seek'
				? `We chose a sole with ${plain(feature)}. That matters more than grip.`
				: `We chose a sole without ${plain(feature)}. That matters more than grip.`,
	}),
}
