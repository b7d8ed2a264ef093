/**
 * What the shell must do, each by name: done on its own window as a person or a hostile page would,
 * and seen in what it asked of the runtime.
 */
import { leavingChecks } from './checks-leaving.ts'
import { openingChecks } from './checks-opening.ts'
import { recordsChecks } from './checks-records.ts'
import { stayingChecks } from './checks-staying.ts'

/** A check throws where it does not hold. */
export type Checks = Readonly<Record<string, () => Promise<void>>>
/** How one went: no fault where it held. */
export interface Told {
	name: string
	fault: string
}
export const checks: Checks = {
	...openingChecks,
	...stayingChecks,
	...recordsChecks,
	...leavingChecks,
}
