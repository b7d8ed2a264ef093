/** A logo that cannot be drawn; its message says what is wrong and what is allowed. */
export class BadLogo extends Error {
	override readonly name = 'BadLogo'
}
