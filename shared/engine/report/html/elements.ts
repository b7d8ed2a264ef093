/** Elements of the page as text; what comes from a document is escaped. */
export const escaped = (text: string): string =>
	text
		.replaceAll('&', '&amp;')
		.replaceAll('<', '&lt;')
		.replaceAll('>', '&gt;')
		.replaceAll('"', '&quot;')
		.replaceAll("'", '&#39;')
/** An element round what is already markup. @param attributes with the space before them */
export const element = (tag: string, inner: string, attributes = ''): string =>
	`<${tag}${attributes}>${inner}</${tag}>`
/** An element with a text in it. */
export const worded = (tag: string, text: string, attributes = ''): string =>
	element(tag, escaped(text), attributes)
/** The texts as elements of a kind, side by side. */
export const listed = (tag: string, texts: readonly string[]): string =>
	texts.map((text) => worded(tag, text)).join('')
