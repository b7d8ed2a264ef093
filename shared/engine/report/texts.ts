/** What stands in names of fields that hold no words for a reader. */
const wordless: ReadonlySet<string> = new Set(['svg', 'logo', 'base64', 'id', 'align'])

/** Every text in a value, but pictures and ids. */
export function textsIn(value: unknown, butNot: ReadonlySet<string> = wordless): string[] {
	if (typeof value === 'string') return [value]
	if (Array.isArray(value)) return value.flatMap((item) => textsIn(item, butNot))
	if (value === null || typeof value !== 'object') return []
	return Object.entries(value).flatMap(([key, field]) =>
		butNot.has(key) ? [] : textsIn(field, butNot),
	)
}
