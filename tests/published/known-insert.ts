/** Feet and conditions of known figures for the insert room: invented. */
import { assess } from '../../shared/engine/assess.ts'
import type { InsertSide } from '../../shared/engine/findings/assessment.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'

/** An adult, and what is recorded besides. */
export const visitWith = (more: Partial<Visit> = {}): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate: '2000-01-01', sex: 'male' },
		visitDate: '2027-01-20',
		...more,
	})
/** The six items of a foot posture index: highly pronated, and supinated. */
export const flat = [2, 2, 2, 1, 1, 0]
export const high = [-1, -1, -1, 0, 0, 0]
export type Conditions = NonNullable<Visit['conditions']>
export const has = (
	condition: Conditions[number]['condition'],
	side: Conditions[number]['side'] = 'left',
	status: Conditions[number]['status'] = 'current',
) => ({ condition, side, status })
/** The proposal for the left foot. */
export const leftOf = (more: Partial<Visit>): InsertSide => assess(visitWith(more)).insert.left
export const idsOf = ({ elements }: InsertSide) => elements.map(({ element }) => element)
export const amountOf = ({ elements }: InsertSide, name: string) =>
	elements.find(({ element }) => element === name)?.value
