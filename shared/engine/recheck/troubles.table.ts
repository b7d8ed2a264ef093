/**
 * What a trouble with something worn asks for. That a blister or pain stops the wearing-in and calls
 * for the clinician is common practice, no source; so is the rest. `flag` is the warning question
 * that it answers with yes, so that the gate judges it by that question's own rule. Each is a caution:
 * it is read, also where nothing is proposed any more.
 */
import type { Trouble } from '../visit/terms.ts'
import type { generalFlagShape } from '../visit/visit.ts'

type TroubleAct = 'stop' | 'heal-first' | 'adjust' | 'exchange'
interface TroubleRow {
	act: TroubleAct
	flag?: keyof typeof generalFlagShape
}
export const troubleRows: Readonly<Record<Trouble, TroubleRow>> = {
	blister: { act: 'heal-first' },
	wound: { act: 'stop', flag: 'activeFootUlcer' },
	'new-pain': { act: 'stop' },
	numbness: { act: 'stop', flag: 'reducedSensation' },
	fell: { act: 'stop' },
	'too-tight': { act: 'adjust' },
	'heel-slips': { act: 'adjust' },
	'wrong-size': { act: 'exchange' },
	'does-not-fit-boot': { act: 'adjust' },
}
/** Troubles that speak against the size: the feet are measured again. */
export const troublesOfSize: readonly Trouble[] = ['too-tight', 'wrong-size', 'does-not-fit-boot']
