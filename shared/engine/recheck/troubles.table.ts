/**
 * What a trouble with something worn asks for. That a blister or pain stops the wearing-in and calls
 * for the clinician is common practice, no source; so is the rest. `flag` is the warning question
 * that it answers with yes, so that the gate judges it by that question's own rule.
 */
import type { Trouble } from '../visit/terms.ts'
import type { generalFlagShape } from '../visit/visit.ts'

export type TroubleAct = 'stop' | 'heal-first' | 'adjust' | 'exchange'
interface TroubleRow {
	act: TroubleAct
	level: 'caution' | 'advise'
	flag?: keyof typeof generalFlagShape
}
export const troubleRows: Readonly<Record<Trouble, TroubleRow>> = {
	blister: { act: 'heal-first', level: 'caution' },
	wound: { act: 'stop', level: 'caution', flag: 'activeFootUlcer' },
	'new-pain': { act: 'stop', level: 'caution' },
	numbness: { act: 'stop', level: 'caution', flag: 'reducedSensation' },
	fell: { act: 'stop', level: 'caution' },
	'too-tight': { act: 'adjust', level: 'caution' },
	'heel-slips': { act: 'adjust', level: 'advise' },
	'wrong-size': { act: 'exchange', level: 'caution' },
	'does-not-fit-boot': { act: 'adjust', level: 'advise' },
}
/** Troubles that speak against the size: the feet are measured again. */
export const troublesOfSize: readonly Trouble[] = ['too-tight', 'wrong-size', 'does-not-fit-boot']
