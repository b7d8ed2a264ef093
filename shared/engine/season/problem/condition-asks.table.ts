/** What recorded conditions ask of a season; a condition left out asks nothing. */
import type { Condition } from '../../visit/terms.ts'

/** What a condition asks of the rotation, and while it is in which state. */
export type SeasonAsk =
	/** no session is planned at all: read off the gate's own table, never written here */
	| { ask: 'stop'; when: 'current' }
	/** boots with little offset are limited to so many minutes a week */
	| { ask: 'limit-low-offset'; when: 'now' }
	/** studded boots come back step by step */
	| { ask: 'limit-studs'; when: 'recovering' }
	/** the share of artificial turf is pointed out */
	| { ask: 'tell-turf-share'; when: 'ever' }

const heel: readonly SeasonAsk[] = [{ ask: 'limit-low-offset', when: 'now' }]
const bone: readonly SeasonAsk[] = [{ ask: 'limit-studs', when: 'recovering' }]
export const conditionAsks: Partial<Record<Condition, readonly SeasonAsk[]>> = {
	'calcaneal-apophysitis': heel,
	'achilles-insertional': heel,
	'achilles-midportion': heel,
	'haglund-deformity': heel,
	'second-metatarsal-stress-fracture': bone,
	'fifth-metatarsal-stress-fracture': [...bone, { ask: 'tell-turf-share', when: 'ever' }],
	'navicular-stress-fracture': bone,
}
