/** A logo that cannot be drawn; its message names the field before what is wrong and what is allowed. */
export class BadLogo extends Error {
	override readonly name = 'BadLogo'
	/** What is wrong and what is allowed: for a person who stands at the field. */
	readonly flaw: string
	constructor(flaw: string) {
		super(`logo: ${flaw}`)
		this.flaw = flaw
	}
}
