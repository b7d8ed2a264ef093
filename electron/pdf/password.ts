/** Fewest characters of a password for a copy that is sent. A choice of this program. */
const leastPassword = 8

/** @throws RangeError naming how many characters it has and how many it needs */
export function mustBeLongEnough(password: string): void {
	if (password.length < leastPassword)
		throw new RangeError(
			`The password has ${password.length} characters; a copy needs at least ${leastPassword}.`,
		)
}
