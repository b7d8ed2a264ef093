/** Features of a shoe as a clinician names them, with what their number asks of a sentence. */
import type { Feature, Sole } from '../../visit/terms.ts'
import { article, listed, term } from './format.ts'

/** one: a firm counter is; many: short studs are; mass: cushioning is. */
interface Noun {
	name: string
	number: 'one' | 'many' | 'mass'
}
const one = (name: string): Noun => ({ name, number: 'one' })
const many = (name: string): Noun => ({ name, number: 'many' })
const mass = (name: string): Noun => ({ name, number: 'mass' })
const nouns: Record<Feature, Noun> = {
	'wide-fitting': one('wide fitting'),
	'narrow-fitting': one('narrow fitting'),
	'deep-toe-box': one('deep toe box'),
	'soft-upper': one('soft upper'),
	'smooth-forefoot-seams': many('smooth forefoot seams'),
	'firm-heel-counter': one('firm heel counter'),
	'soft-heel-counter': one('soft heel counter'),
	'low-heel-collar': one('low heel collar'),
	'raised-heel': one('raised heel'),
	'low-heel': one('low heel'),
	'full-length-cushioning': mass('full-length cushioning'),
	'wide-base': one('wide base'),
	'stiff-forefoot': one('stiff forefoot'),
	'flexible-forefoot': one('flexible forefoot'),
	'torsional-stiffness': mass('torsional stiffness'),
	'removable-liner': one('removable liner'),
	'low-mass': mass('low mass'),
	'round-studs': many('round studs'),
	'bladed-studs': many('bladed studs'),
	'many-studs': many('many studs'),
	'short-studs': many('short studs'),
	'stud-clear-of-first-joint': many('studs clear of the first joint'),
	'stud-clear-of-fifth-metatarsal': many('studs clear of the fifth metatarsal'),
	'low-rotational-grip': mass('low rotational grip'),
	'deep-instep': one('deep instep'),
	'high-heel-counter': one('high heel counter'),
	'padded-collar': one('padded collar'),
	'long-studs': many('long studs'),
	'soft-ground-sole': one('soft-ground sole'),
	'firm-ground-sole': one('firm-ground sole'),
	'artificial-ground-sole': one('artificial-ground sole'),
	'turf-sole': one('turf sole'),
	'indoor-sole': one('indoor sole'),
}
/** A feature that this version does not know may stand in an older record. */
const nounOf = (feature: Feature): Noun => nouns[feature] ?? mass(term(feature))
/** 'firm heel counter', 'short studs'. */
export const featureName = (feature: Feature): string => nounOf(feature).name
/** 'a firm heel counter', 'short studs', 'full-length cushioning'. */
export function aFeature(feature: Feature): string {
	const { name, number } = nounOf(feature)
	return number === 'one' ? article(name) : name
}
/** 'is' or 'are', as the feature asks. */
export const featureIs = (feature: Feature): string =>
	nounOf(feature).number === 'many' ? 'are' : 'is'

const soles: Record<Sole, string> = {
	'soft-ground': 'soft-ground sole',
	'firm-ground': 'firm-ground sole',
	'artificial-ground': 'artificial-ground sole',
	turf: 'turf sole',
	indoor: 'indoor sole',
	trail: 'trail sole',
	road: 'road sole',
}
/** 'firm-ground sole'. */
export const soleName = (sole: Sole): string => soles[sole] ?? `${term(sole)} sole`

/** Rules whose id is no name by itself. */
export const ruleNames: Readonly<Record<string, string>> = {
	acl: 'ACL injury',
	'ankle-support': 'ankle that needs holding',
	'anterior-ankle': 'pinch at the front of the ankle',
	artificial: 'artificial ground',
	'between-sizes': 'narrow foot with bruised nails',
	broad: 'broad foot',
	'bunionette-stud': 'bunion of the little toe',
	'calf-history': 'calf trouble before',
	'calf-lever': 'Achilles or calf',
	cavus: 'high arch',
	contest: 'contest position',
	'dry-hard-sole': 'hard natural ground',
	'first-joint': 'stiff first joint',
	'first-ray': 'plantarflexed first ray',
	'first-ray-mobile': 'mobile first ray',
	hall: 'hall floor',
	'hard-counter': 'sore tendon or growing heel',
	heavy: 'body mass',
	hypermobile: 'very mobile joints',
	junior: 'growing player',
	'kicking-support': 'kicker',
	narrow: 'narrow foot',
	pronated: 'flat foot',
	road: 'road and gym',
	sensation: 'feet at risk',
	'shin-knee': 'shin or knee pain',
	'soft-ground': 'soft natural ground',
	'speed-position': 'running position',
	syndesmosis: 'high ankle sprain',
	'third-generation': '3G turf',
}
/** A rule of the footwear room by name: 'growing heel'. */
const ruleName = (rule: string): string => ruleNames[rule] ?? term(rule)
/** Rules by name, in a row. */
export const ruleList = (rules: readonly string[]): string => listed(rules.map(ruleName))
