/** What a field of the visit is called within a sentence, by its key alone. */
import { catalogue } from './measures/catalogue.ts'
import { visitSchema } from './visit.ts'

interface Loose {
	def: { innerType?: Loose; element?: Loose }
	shape?: Record<string, Loose>
	meta?: () => { title?: unknown } | undefined
}
interface Field {
	key: string
	schema: Loose
}
/** 'Days of limping' as 'days of limping'; 'FPI item' and 'EU size' keep their capitals. */
const withinSentence = (title: string): string =>
	/^.[a-z ,]/.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title
/** What is one level below a field: what an optional or a list holds, or the fields of an object. */
const below = ({ key, schema: { def, shape } }: Field): Field[] => {
	const inner = def.innerType ?? def.element
	if (inner) return [{ key, schema: inner }]
	return Object.entries(shape ?? {}).map(([name, schema]) => ({ key: name, schema }))
}
/** Names by key; of two fields with one key the one that stands less deep. */
function namesOf(schema: Loose): ReadonlyMap<string, string> {
	const names = new Map(catalogue.map(({ key, measure }) => [key, measure.name]))
	let level: Field[] = [{ key: '', schema }]
	while (level.length > 0) {
		for (const field of level) {
			const title = field.schema.meta?.()?.title
			if (typeof title === 'string' && !names.has(field.key))
				names.set(field.key, withinSentence(title))
		}
		level = level.flatMap(below)
	}
	return names
}
const names = namesOf(visitSchema as unknown as Loose)
/** 'knee to wall' for `lungeCm`; undefined where the visit file has no such field. */
export const nameOfField = (key: string): string | undefined => names.get(key)
