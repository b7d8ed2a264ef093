/**
 * Which paths of the visit are private, and of which topic: read from the marks in the schema, so
 * that documents, lists and roles obey one list.
 */
import { privateIn } from './field-meta.ts'
import type { PrivateTopic } from './private-topics.ts'
import { visitSchema } from './visit.ts'

interface Loose {
	def: { innerType?: Loose; element?: Loose; options?: Loose[] }
	shape?: Record<string, Loose>
	meta?: () => Record<string, unknown> | undefined
}
interface PrivatePath {
	/** Dotted; `*` stands for the place in a list. */
	path: string
	topic: PrivateTopic
}
function marked(schema: Loose, path: string): PrivatePath[] {
	const topic = privateIn(schema.meta?.()).private
	if (topic) return [{ path, topic }]
	const within = (part: Loose | undefined, name: string) => (part ? marked(part, name) : [])
	const below = (key: string) => (path === '' ? key : `${path}.${key}`)
	return [
		...within(schema.def.innerType, path),
		...within(schema.def.element, below('*')),
		...(schema.def.options ?? []).flatMap((option) => marked(option, path)),
		...Object.entries(schema.shape ?? {}).flatMap(([key, part]) => marked(part, below(key))),
	]
}
/** Every private field of the visit, in the order of the schema. */
export const privatePaths: readonly PrivatePath[] = marked(visitSchema as unknown as Loose, '')
/** A place in a list as the schema has it. */
const asInSchema = (path: string): string => path.replace(/(^|\.)\d+(?=\.|$)/g, '$1*')
/** What is private about the field at a path of the visit ('screening.pregnant'), if anything. */
export function privateTopicAt(path: string): PrivateTopic | undefined {
	const plain = asInSchema(path)
	return privatePaths.find(({ path: here }) => plain === here || plain.startsWith(`${here}.`))
		?.topic
}
