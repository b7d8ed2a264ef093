/**
 * A pair of the prescription that is not owned yet, as a pair of the visit: the season plans it from
 * a day on.
 */
import type { RankedModel, RolePair } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import { sizeSystems, soles } from '../visit/terms.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import { newPairNames } from '../words/en/new-pair.ts'

/** What of the prescription and of a model of the shelf a planned pair is made of. */
type OfRole = Pick<RolePair, 'id' | 'role' | 'sole' | 'insideLengthMm' | 'offsetMm'>
type OfModel = Pick<RankedModel, 'id' | 'name' | 'sole' | 'size' | 'offsetMm' | 'price'>

/** The id of the pair planned for one of the prescription: the same each time it is planned. */
const plannedId = ({ id }: Pick<RolePair, 'id'>): string => `planned-${id.replaceAll('.', '-')}`
/** One of a list of terms, where a text is one. */
const termOf = <Term extends string>(terms: readonly Term[], text: string | undefined) =>
	terms.find((term) => term === text)

/**
 * The pair planned for one of the prescription. Lengths and offset are the model's; without a model
 * the length to look for, and the least offset asked for: the careful end.
 * @param from ISO date on which its breaking in begins
 * @internal
 */
export function plannedPair(role: OfRole, model: OfModel | undefined, from: string): Pair {
	return present({
		id: plannedId(role),
		name: model?.name ?? newPairNames[role.role],
		sole: termOf(soles, model?.sole) ?? role.sole,
		sizeSystem: termOf(sizeSystems, model?.size.system),
		size: model?.size.label,
		insideLengthMm: model ? model.size.insideLengthMm : role.insideLengthMm?.target,
		heelToForefootOffsetMm: model ? model.offsetMm : role.offsetMm?.min,
		price: model?.price,
		roles: [role.role],
		minutesWorn: 0,
		newFrom: from,
		plannedAs: role.id,
		model: model?.id,
	})
}
/** The pair that is planned for one of the prescription; undefined where none is. */
export const plannedFor = (
	{ footwear = [] }: Pick<Visit, 'footwear'>,
	{ id }: Pick<RolePair, 'id'>,
): Pair | undefined => footwear.find(({ plannedAs }) => plannedAs === id)
/** The visit without the pair planned for one of the prescription; owned pairs stay. */
export function withoutPlanned(visit: Visit, role: Pick<RolePair, 'id'>): Visit {
	const planned = plannedFor(visit, role)
	return planned
		? { ...visit, footwear: (visit.footwear ?? []).filter((pair) => pair !== planned) }
		: visit
}
/** The visit with a pair planned for one of the prescription; another planned for it gives way. */
export function withPlanned(
	visit: Visit,
	role: OfRole,
	model: OfModel | undefined,
	from: string,
): Visit {
	const { footwear = [], ...rest } = withoutPlanned(visit, role)
	const pair = plannedPair(role, model, from)
	const others = footwear.filter(({ id }) => id !== pair.id)
	return { ...rest, footwear: [...others, pair] }
}
