/** What is sore with each step: then the shoes of every day matter. Common practice, no source. */
import type { Condition } from '../visit/terms.ts'

export const soreEveryDay: readonly Condition[] = [
	'achilles-insertional',
	'achilles-midportion',
	'calcaneal-apophysitis',
	'plantar-heel-pain',
	'sesamoid-pain',
	'first-mtp-osteoarthritis',
	'hallux-limitus',
	'turf-toe',
	'hallux-valgus',
	'bunionette',
	'interdigital-neuroma',
	'ingrown-toenail',
	'posterior-tibial-tendinopathy',
	'fifth-metatarsal-apophysitis',
]
