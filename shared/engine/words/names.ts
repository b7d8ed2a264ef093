/** A player's name as it is shown and printed: given name, then family name. */
export const fullName = ({
	givenName,
	familyName,
}: {
	givenName: string
	familyName: string
}): string => `${givenName} ${familyName}`
