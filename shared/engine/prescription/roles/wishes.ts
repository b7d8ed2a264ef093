/** What of the room's wishes is asked of a pair of one role on its grounds. */
import type { FeatureWish } from '../../findings/assessment.ts'
import { standsBefore } from '../../footwear/settle.ts'
import type { Feature, PairRole, Sole, Surface } from '../../visit/terms.ts'
import { soleFeatures, soleRows, studFeatures } from './sole.table.ts'

/** Roles that a feature is asked of; one not named is asked of each. Common practice, no source. */
const rolesOf: Partial<Record<Feature, readonly PairRole[]>> = {
	'low-mass': ['match'],
	'wide-base': ['match', 'training', 'running'],
}
/** Cushioning belongs to training; a match boot is asked for it for the sake of an injury alone. */
const isForRole = (wish: FeatureWish, role: PairRole): boolean => {
	if (wish.roles && !wish.roles.includes(role)) return false
	if (wish.feature === 'full-length-cushioning' && role === 'match')
		return standsBefore(wish, 'shape')
	return rolesOf[wish.feature]?.includes(role) ?? true
}
/** Of the pair's own grounds, or of none. */
const isForGrounds = ({ grounds }: FeatureWish, surfaces: readonly Surface[]): boolean =>
	grounds === undefined || grounds.some((ground) => surfaces.includes(ground))

/** The wishes of a role on these grounds, those about soles among them. */
export const wishesOfRole = (
	wishes: readonly FeatureWish[],
	role: PairRole,
	surfaces: readonly Surface[],
): FeatureWish[] => wishes.filter((wish) => isForRole(wish, role) && isForGrounds(wish, surfaces))
/** Those that a pair with this sole can meet; wishes about studs where it has any. */
export function wishesOfSole(
	wishes: readonly FeatureWish[],
	sole: Sole | undefined,
): FeatureWish[] {
	const studded = sole !== undefined && soleRows[sole].studded
	return wishes.filter(
		({ feature }) =>
			!soleFeatures.includes(feature) && (studded || !studFeatures.includes(feature)),
	)
}
/**
 * What is sought, without the studs that a ground asks for together with a sole of its own where
 * another sole stands: they are that sole's. @param seek those about soles among them
 */
export const withOwnSole = (seek: readonly FeatureWish[], sole: Sole | undefined): FeatureWish[] =>
	seek.filter(({ rule, feature, grounds }) => {
		if (grounds === undefined || !studFeatures.includes(feature)) return true
		const soles = seek.filter((wish) => wish.rule === rule && soleFeatures.includes(wish.feature))
		const own = sole && soleRows[sole].feature
		return soles.length === 0 || soles.some((wish) => wish.feature === own)
	})
/** Those about soles and studs that stand before grip: the choice of a sole heeds them. */
export const wishesBeforeGrip = (wishes: readonly FeatureWish[]): FeatureWish[] =>
	wishes.filter((wish) => studFeatures.includes(wish.feature) && standsBefore(wish, 'shape'))
