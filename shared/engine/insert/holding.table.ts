/**
 * Conditions that hold an insert by themselves, for whoever looks one up; what holds it on a visit
 * is the gate's to say (`protocol/holds.table.ts`).
 */
import type { Condition } from '../visit/terms.ts'

/** ever: a past one does too. */
export const holdingConditions: Readonly<Partial<Record<Condition, 'current' | 'ever'>>> = {
	neuropathy: 'ever',
	'previous-foot-ulcer': 'ever',
	'second-metatarsal-stress-fracture': 'current',
	'fifth-metatarsal-stress-fracture': 'current',
	'navicular-stress-fracture': 'current',
	'midfoot-sprain': 'current',
	'foot-or-ankle-surgery': 'current',
}
