/** The columns of a roster, by the headings that they come under. */
export type Column =
	| 'number'
	| 'givenName'
	| 'familyName'
	| 'latinGivenName'
	| 'latinFamilyName'
	| 'birthDate'
	| 'sex'
	| 'guardian'
	| 'latinGuardian'
	| 'guardianEmail'
	| 'guardianPhone'
	| 'language'
	| 'guardianLanguage'
	| 'consents'
/** Headings as they come, in lower case without spaces. */
export const headings: Record<string, Column> = {
	number: 'number',
	no: 'number',
	bib: 'number',
	shirt: 'number',
	givenname: 'givenName',
	firstname: 'givenName',
	given: 'givenName',
	familyname: 'familyName',
	lastname: 'familyName',
	surname: 'familyName',
	latingivenname: 'latinGivenName',
	givennameinlatinletters: 'latinGivenName',
	latinfamilyname: 'latinFamilyName',
	familynameinlatinletters: 'latinFamilyName',
	birthdate: 'birthDate',
	dateofbirth: 'birthDate',
	dob: 'birthDate',
	born: 'birthDate',
	sex: 'sex',
	guardian: 'guardian',
	guardianname: 'guardian',
	parent: 'guardian',
	latinguardian: 'latinGuardian',
	latinguardianname: 'latinGuardian',
	guardiannameinlatinletters: 'latinGuardian',
	guardianemail: 'guardianEmail',
	guardianmail: 'guardianEmail',
	parentemail: 'guardianEmail',
	guardianphone: 'guardianPhone',
	parentphone: 'guardianPhone',
	language: 'language',
	preferredlanguage: 'language',
	guardianlanguage: 'guardianLanguage',
	guardianpreferredlanguage: 'guardianLanguage',
	preferredlanguageoftheguardian: 'guardianLanguage',
	consents: 'consents',
	consent: 'consents',
}
export const required: readonly Column[] = ['number', 'givenName', 'familyName', 'birthDate', 'sex']
/** The column that the name at a path of the player came from. */
export const columnOf: Readonly<Record<string, Column>> = {
	'player.givenName': 'givenName',
	'player.familyName': 'familyName',
	'player.latinName.givenName': 'latinGivenName',
	'player.latinName.familyName': 'latinFamilyName',
	'player.guardian.name': 'guardian',
	'player.guardian.latinName': 'latinGuardian',
	'player.preferredLanguage': 'language',
	'player.guardian.preferredLanguage': 'guardianLanguage',
}
