/**
 * The closed lists of trade terms a visit may use; labels for the screens and reports beside them.
 */
import { conditionNames, type Registry } from '../conditions/registry.ts'
import { conditionWords } from '../words/en/conditions.table.ts'

export const surfaces = [
	'natural-soft',
	'natural-firm',
	'natural-hard',
	'hybrid',
	'artificial-3g',
	'artificial-sand',
	'hall',
	'road',
] as const
export const soles = [
	'soft-ground',
	'firm-ground',
	'artificial-ground',
	'turf',
	'indoor',
	'trail',
	'road',
] as const
export const codes = [
	'association',
	'australian',
	'rugby-union',
	'rugby-league',
	'gaelic',
	'american',
	'futsal',
	'touch',
] as const
export const sizeSystems = [
	'mondopoint',
	'jpCm',
	'eu',
	'uk',
	'usMen',
	'usWomen',
	'usChild',
	'au',
] as const
/** From the table of conditions. */
export const conditions = conditionNames
export const statuses = ['current', 'recovering', 'past'] as const
export const damages = [
	'studs-worn',
	'stud-sharp',
	'stud-missing',
	'sole-separated',
	'counter-collapsed',
	'insole-board-split',
	'upper-cracked',
	'lining-worn',
	'heel-slips',
] as const
export const endFeels = [
	'calf-stretch',
	'springy-back',
	'front-pinch',
	'hard-stop',
	'joint-pain',
	'none',
] as const
export const firstRays = ['neutral', 'plantarflexed', 'dorsiflexed', 'hypermobile'] as const
/**
 * Where bone stress is suspected; which are high risk stands in
 * shared/engine/screening/bone-sites.table.ts.
 */
export const boneSites = [
	'navicular',
	'fifth-metatarsal-proximal',
	'hallux-sesamoid',
	'medial-malleolus',
	'talus',
	'anterior-tibia',
	'second-metatarsal-base',
	'femoral-neck',
	'patella',
	'metatarsal-shaft',
	'calcaneus',
	'posteromedial-tibia',
	'fibula',
	'cuboid',
] as const
export type BoneSite = (typeof boneSites)[number]
export const forefeet = [
	'neutral',
	'varus-flexible',
	'varus-rigid',
	'valgus-flexible',
	'valgus-rigid',
] as const
export const sexes = ['male', 'female'] as const
/** What a shoe can be sought or avoided for. */
export const features = [
	'wide-fitting',
	'narrow-fitting',
	'deep-toe-box',
	'soft-upper',
	'smooth-forefoot-seams',
	'firm-heel-counter',
	'soft-heel-counter',
	'low-heel-collar',
	'raised-heel',
	'low-heel',
	'full-length-cushioning',
	'wide-base',
	'stiff-forefoot',
	'flexible-forefoot',
	'torsional-stiffness',
	'removable-liner',
	'low-mass',
	'round-studs',
	'bladed-studs',
	'many-studs',
	'short-studs',
	'stud-clear-of-first-joint',
	'stud-clear-of-fifth-metatarsal',
	'low-rotational-grip',
	'deep-instep',
	'high-heel-counter',
	'padded-collar',
	'long-studs',
	'soft-ground-sole',
	'firm-ground-sole',
	'artificial-ground-sole',
	'turf-sole',
	'indoor-sole',
] as const
export type Feature = (typeof features)[number]
/** What a pair is worn for. */
export const pairRoles = ['match', 'training', 'running', 'everyday'] as const
export type PairRole = (typeof pairRoles)[number]
/** What is to be done with a pair that the player owns. */
export const ownedVerdicts = ['keep', 'modify', 'training-only', 'replace', 'stop-wearing'] as const
/** What a plan asks to be done first, beside the way to a doctor; 'own' is the clinician's own line. */
export const toDoKinds = [
	'clear',
	'stop-wearing',
	'mend-first',
	'raise',
	'insert',
	'adjust-insert',
	'replace',
	'modify',
	'buy',
	'own',
] as const
export type ToDoKind = (typeof toDoKinds)[number]
/** What became of it. */
export const doneAnswers = ['done', 'in-part', 'not-done', 'not-wanted'] as const
/** Why it was not done, as far as it can be counted. */
export const whyNotDone = [
	'could-not-get-it',
	'cost',
	'did-not-fit',
	'it-hurt',
	'no-time',
	'forgot',
	'told-otherwise',
	'other-reason',
] as const
/** What goes wrong with what is worn. */
export const troubles = [
	'blister',
	'wound',
	'new-pain',
	'numbness',
	'fell',
	'too-tight',
	'heel-slips',
	'wrong-size',
	'does-not-fit-boot',
] as const
export type Trouble = (typeof troubles)[number]
export type PressurePlace = (typeof pressurePlaces)[number]
export type StudJoint = (typeof studJoints)[number]
/** How the inside length of a pair came to be known; what a label says was not measured. */
export const insideLengthWays = ['gauge', 'liner', 'label'] as const
/** What is seen of a pair on the foot: its width at the ball, and whether the heel stays down. */
export const widthsOnFoot = ['too-tight', 'snug', 'good', 'loose'] as const
export const heelHolds = ['holds', 'slips'] as const
/** Where a shoe presses, as seen or told. */
export const pressurePlaces = [
	'great-toe',
	'small-toes',
	'inner-side-of-ball',
	'outer-side-of-ball',
	'instep',
	'arch',
	'heel',
	'ankle-bones',
] as const
/** The joints that a stud may stand under on this foot. */
export const studJoints = ['first-joint', 'fifth-joint', 'heel-centre'] as const
/** Where a shoe bends as the foot rises on its toes. */
export const bendsOnFoot = ['at-the-ball', 'behind-the-ball', 'hardly'] as const
/** Where an insert that is worn gives trouble, so that it can be adjusted. */
export const insertPlaces = [
	'heel',
	'inner-arch',
	'outer-arch',
	'forefoot',
	'edge',
	'slips-in-shoe',
	'too-thick',
	'worn-out',
	'top-cover',
] as const
export type InsertPlace = (typeof insertPlaces)[number]
/** What whoever makes it does to it; left to them where none of the others is meant. */
export const insertActs = ['add', 'take-off', 'grind', 'widen', 'replace', 'maker-judges'] as const
export type InsertAct = (typeof insertActs)[number]
/** What can be taken as it was measured before. */
export const takenGroups = ['play', 'feet', 'ankles', 'posture', 'body'] as const
export type TakenGroup = (typeof takenGroups)[number]
/** How much may be bought. */
export const purchaseMeans = ['one-pair', 'one-at-a-time', 'free'] as const
export type Condition = keyof Registry
export type ConditionTable = Registry
export type { Exercise } from '../conditions/row.ts'
export type Code = (typeof codes)[number]
export type Surface = (typeof surfaces)[number]
export type Sole = (typeof soles)[number]

const words: Record<string, string> = {
	'artificial-3g': 'artificial (3G)',
	'artificial-sand': 'artificial (sand)',
	jpCm: 'Japan (cm)',
	eu: 'EU',
	uk: 'UK',
	usMen: 'US men',
	usWomen: 'US women',
	usChild: 'US child',
	au: 'Australia',
	'rugby-union': 'rugby union',
	australian: 'Australian',
	american: 'American',
	gaelic: 'Gaelic',
}
/** The words for a term: 'firm-ground' becomes 'firm ground'. */
export function termWords(term: string): string {
	return isCondition(term) ? conditionWords[term].name : (words[term] ?? term.replaceAll('-', ' '))
}
const isCondition = (term: string): term is Condition => Object.hasOwn(conditionWords, term)
