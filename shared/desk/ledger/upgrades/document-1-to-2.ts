/** Version 2 keeps the document in its versioned form: what was kept as `layout` is its first. */
import { z } from 'zod'

const before = z.looseObject({ layout: z.record(z.string(), z.unknown()).optional() })

export function documentFrom1To2(value: unknown): unknown {
	const read = before.safeParse(value)
	if (!read.success) return value
	const { layout, ...rest } = read.data
	return layout === undefined ? rest : { document: { version: 1, content: layout }, ...rest }
}
