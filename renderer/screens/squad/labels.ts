/** A field of a visit by its name on the screen, for the lines that say what is missing. Pure. */
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../../shared/engine/visit/visit.ts'

/** 'Heel to toe, left'. @param path of the visit, such as feet.left.heelToToeMm */
export function labelOf(path: string): string {
	if (path === 'footwear') return 'a pair of footwear'
	const side = /\.(left|right)\./.exec(path)?.[1]
	const { title } = fieldMeta(visitSchema, path)
	return side ? `${title}, ${side}` : title
}
