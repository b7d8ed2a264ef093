/**
 * Who works here and what is offered to them; the host refuses the rest by the contract's own
 * table.
 */
import type { OutputOf } from '../../shared/contract.ts'

/** Undefined while nobody unlocked. */
export type PersonRole = NonNullable<OutputOf<'session.status'>['person']>['role'] | undefined
/** Reception runs the desk, those who treat assess, clinicians and the owner answer for it. */
export const may = (role: PersonRole) => ({
	desk: role !== 'student',
	treat: role !== 'reception',
	lead: role === 'clinician' || role === 'owner',
})
