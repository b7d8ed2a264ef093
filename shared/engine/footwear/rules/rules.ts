/** The footwear rules of all groups, in the order in which findings and wishes are told. */
import { ankleRules } from './ankle.ts'
import { forefootRules } from './forefoot.ts'
import { groundRules } from './ground.ts'
import { heelAndCalfRules } from './heel-and-calf.ts'
import { legRules } from './leg.ts'
import { playerRules } from './player.ts'
import type { FootwearRule } from './rule.ts'
import { shapeRules } from './shape.ts'
import { skinAndNailRules } from './skin-and-nails.ts'

/** The order is kept from report to report; a rule not named here follows after, by its group. */
const order: readonly string[] = [
	'broad',
	'narrow',
	'first-ray',
	'restricted-ankle',
	'anterior-ankle',
	'posterior-ankle',
	'growing-heel',
	'achilles-insertional',
	'achilles-midportion',
	'calf-strain',
	'hard-counter',
	'plantar-heel',
	'sesamoid',
	'first-joint',
	'turf-toe',
	'forefoot-pain',
	'neuroma',
	'bunion',
	'fifth-metatarsal',
	'fifth-apophysis',
	'navicular',
	'cavus',
	'pronated',
	'ankle-instability',
	'syndesmosis',
	'acl',
	'toenails',
	'hammer-toe',
	'sensation',
	'shin-knee',
	'leg-length',
	'hypermobile',
	'heavy',
	'contest',
	'artificial',
	'hard-ground',
	'junior',
	'growth-spurt',
	'unequal-feet',
	'heel-collar',
	'ankle-support',
	'calf-lever',
	'calf-history',
	'inner-tendon',
	'outer-tendon',
	'heel-pad',
	'knee-wear',
	'bunionette-stud',
	'first-ray-mobile',
	'high-instep',
	'skin-at-risk',
	'soft-ground',
	'firm-ground',
	'dry-hard-sole',
	'third-generation',
	'sand-dressed',
	'hall',
	'road',
	'scrum',
	'speed-position',
	'kicking-support',
	'lighter-runner',
	'between-sizes',
]
const place = ({ id }: FootwearRule): number =>
	order.includes(id) ? order.indexOf(id) : order.length

/** Every rule once, in that order. */
export const footwearRules: readonly FootwearRule[] = [
	...shapeRules,
	...ankleRules,
	...heelAndCalfRules,
	...forefootRules,
	...skinAndNailRules,
	...legRules,
	...playerRules,
	...groundRules,
].sort((first, second) => place(first) - place(second))
