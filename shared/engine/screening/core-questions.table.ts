/** Questions without which nothing-found may not be said: few, and only of the players whom they concern. Common practice, no source. */
import type { Condition } from '../visit/terms.ts'

/** Whom a question concerns: `core-questions.ts` says how each is told. */
export type Concerned = 'everybody' | 'minor-in-pain' | 'acute-condition' | 'open-injury' | 'adult-calf' | 'diabetes'
export interface CoreQuestion {
	id: string
	/** Paths of the visit; one answered is enough. */
	paths: readonly [string, ...string[]]
	concerns: Concerned
	/** Which part of the gate it leaves open. */
	part: 'person' | 'limb'
}
export const coreQuestions: readonly CoreQuestion[] = [
	{ id: 'night-pain', paths: ['screening.nightPain'], concerns: 'everybody', part: 'person' },
	{ id: 'fever', paths: ['screening.fever'], concerns: 'everybody', part: 'person' },
	{ id: 'reduced-sensation', paths: ['screening.reducedSensation'], concerns: 'everybody', part: 'limb' },
	{ id: 'limp', paths: ['screening.hipPainWithLimp', 'screening.limpUnexplained', 'screening.limp.side'], concerns: 'minor-in-pain', part: 'limb' },
	{ id: 'injury', paths: ['screening.injury.side'], concerns: 'acute-condition', part: 'limb' },
	{ id: 'weight-bearing', paths: ['screening.injury.unableToBearWeightNow'], concerns: 'open-injury', part: 'limb' },
	{ id: 'calf', paths: ['screening.calfSuspicion', 'screening.wells'], concerns: 'adult-calf', part: 'limb' },
	{ id: 'diabetic-foot', paths: ['screening.diabeticFoot'], concerns: 'diabetes', part: 'limb' },
]
/** Conditions that begin with an injury. */
export const acuteConditions: readonly Condition[] = ['calf-strain', 'turf-toe', 'syndesmosis-sprain', 'midfoot-sprain', 'plantar-plate-injury']
/** Conditions at whose place a clot may hide. */
export const calfConditions: readonly Condition[] = ['calf-strain']
