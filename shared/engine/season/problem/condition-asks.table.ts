/** What recorded conditions ask of a season; a condition left out asks nothing. */
import type { Basis } from '../../protocol/basis.ts'
import type { Condition } from '../../visit/terms.ts'

/** What a condition asks of the rotation, and while it is in which state. */
export type SeasonAsk =
	/** no session is planned at all */
	| { ask: 'stop'; when: 'current'; finding: 'bone-stress' }
	/** boots with little offset are limited to so many minutes a week */
	| { ask: 'limit-low-offset'; when: 'now' }
	/** studded boots come back step by step */
	| { ask: 'limit-studs'; when: 'recovering' }
	/** the share of artificial turf is pointed out */
	| { ask: 'tell-turf-share'; when: 'ever' }

const heel: readonly SeasonAsk[] = [{ ask: 'limit-low-offset', when: 'now' }]
const bone: readonly SeasonAsk[] = [
	{ ask: 'stop', when: 'current', finding: 'bone-stress' },
	{ ask: 'limit-studs', when: 'recovering' },
]
export const conditionAsks: Partial<Record<Condition, readonly SeasonAsk[]>> = {
	'calcaneal-apophysitis': heel,
	'achilles-insertional': heel,
	'achilles-midportion': heel,
	'haglund-deformity': heel,
	'second-metatarsal-stress-fracture': bone,
	'fifth-metatarsal-stress-fracture': [...bone, { ask: 'tell-turf-share', when: 'ever' }],
	'navicular-stress-fracture': bone,
}
/** What stopped a season besides, before 0.4: today the gate says what of such a foot waits. */
export const sensationBefore: readonly Condition[] = ['neuropathy', 'previous-foot-ulcer']
/** What a stop rests on. */
export const stopBases: Record<'bone-stress' | 'sensation', Basis> = {
	'bone-stress': {
		rule: 'current bone stress injury',
		source: 'high-risk bone stress: stop impact (AAFP 2003;67:85; Ekstrand & van Dijk 2013)',
		strength: 'guideline',
	},
	sensation: {
		rule: 'neuropathy or previous ulcer blocks the rotation',
		source: 'NICE NG19 (high risk)',
		strength: 'guideline',
	},
}
