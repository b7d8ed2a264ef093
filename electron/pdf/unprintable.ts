/**
 * A character that no font of the pages has. It stands apart from the fonts, so that whoever only
 * names it need not read them.
 */
export class UnprintableText extends Error {
	override readonly name = 'UnprintableText'
}
