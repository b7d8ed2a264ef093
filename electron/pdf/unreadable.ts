/** Bytes that are no PDF, or a PDF that cannot be read. */
export class UnreadablePdf extends Error {
	override readonly name = 'UnreadablePdf'
}
