/** Which pairs are trainers: they have limits of their own for toe room and for heel raises. */
import type { PairRole } from '../visit/terms.ts'

/** What a pair is worn for: as recorded, else by its sole. */
export interface Worn {
	sole?: string | undefined
	roles?: readonly PairRole[] | undefined
}
const offThePitch: readonly PairRole[] = ['running', 'everyday']
const hasRoadSole = ({ sole }: Worn): boolean => sole === 'road' || sole === 'trail'

/**
 * Whether a pair, planned pair or model of the shelf is a trainer and not a boot: by its sole, or
 * because it is worn for running and every day alone.
 */
export const isTrainer = ({ sole, roles = [] }: Worn): boolean =>
	hasRoadSole({ sole }) ||
	(sole === undefined && roles.length > 0 && roles.every((role) => offThePitch.includes(role)))
/**
 * The roles that a pair serves: as recorded, else those of its sole, the usual one first; a sole
 * that is not recorded is a boot's. A lugged trail trainer serves training too.
 */
export function rolesOfPair({ sole, roles = [] }: Worn): readonly PairRole[] {
	if (roles.length > 0) return roles
	if (sole === 'trail') return ['running', 'training', 'everyday']
	return hasRoadSole({ sole }) ? offThePitch : ['match', 'training']
}
/** Whether a pair serves a role. */
export const servesRole = (pair: Worn, role: PairRole): boolean => rolesOfPair(pair).includes(role)
