/** The columns of a roster: what each is called here, and the headings that it comes under. */
export const columns = ['number', 'name', 'givenName', 'familyName', 'latinGivenName', 'latinFamilyName', 'birthDate', 'sex', 'language', 'guardian', 'latinGuardian', 'guardianEmail', 'guardianPhone', 'guardianLanguage', 'consents'] as const
export type Column = (typeof columns)[number]

interface ColumnWords {
	/** as the screen and a problem call it */
	says: string
	/** in lower case, without accents, signs, digits and spaces */
	headings: readonly string[]
}
/** Headings as clubs and schools write them: common practice, no source. */
export const columnWords: Record<Column, ColumnWords> = {
	number: {
		says: 'number',
		headings: [...['number', 'no', 'nr', 'num', 'bib', 'bibnumber', 'bibno', 'shirt', 'shirtnumber', 'shirtno'], ...['jersey', 'jerseynumber', 'jerseyno', 'kit', 'kitnumber', 'kitno', 'squadnumber', 'squadno'], ...['playernumber', 'playerno']],
	},
	name: {
		says: 'whole name',
		headings: ['name', 'player', 'playername', 'fullname', 'playerfullname', 'surnamefirstname'],
	},
	givenName: {
		says: 'given name',
		headings: [...['givenname', 'givennames', 'given', 'firstname', 'firstnames', 'first', 'forename'], ...['forenames', 'christianname', 'playerfirstname']],
	},
	familyName: {
		says: 'family name',
		headings: ['familyname', 'family', 'lastname', 'last', 'surname', 'playerlastname', 'playersurname'],
	},
	latinGivenName: {
		says: 'given name in Latin letters',
		headings: ['latingivenname', 'givennameinlatinletters'],
	},
	latinFamilyName: {
		says: 'family name in Latin letters',
		headings: ['latinfamilyname', 'familynameinlatinletters'],
	},
	birthDate: {
		says: 'birth date',
		headings: [...['birthdate', 'dateofbirth', 'dob', 'born', 'birthday', 'dateborn', 'birth', 'dobddmmyyyy'], ...['dobmmddyyyy', 'dateofbirthddmmyyyy', 'dateofbirthmmddyyyy', 'birthdateyyyymmdd']],
	},
	sex: { says: 'sex', headings: ['sex', 'gender', 'mf', 'sexmf', 'gendermf', 'boygirl'] },
	guardian: {
		says: 'guardian',
		headings: [...['guardian', 'guardianname', 'parent', 'parentname', 'parentguardian', 'guardianparent'], ...['parentguardianname', 'parentcarer', 'carer', 'carername', 'parentorguardian', 'parentsname']],
	},
	latinGuardian: {
		says: 'guardian in Latin letters',
		headings: ['latinguardian', 'latinguardianname', 'guardiannameinlatinletters'],
	},
	guardianEmail: {
		says: 'guardian e-mail',
		headings: [...['guardianemail', 'guardianmail', 'guardianemailaddress', 'parentemail', 'parentmail'], ...['parentemailaddress', 'parentguardianemail', 'careremail', 'parentcareremail', 'parentsemail']],
	},
	guardianPhone: {
		says: 'guardian phone',
		headings: [...['guardianphone', 'guardianmobile', 'guardiantel', 'guardiantelephone', 'parentphone'], ...['parentmobile', 'parenttel', 'parenttelephone', 'parentguardianphone', 'carerphone']],
	},
	language: {
		says: 'language',
		headings: ['language', 'preferredlanguage', 'firstlanguage', 'homelanguage', 'playerlanguage'],
	},
	guardianLanguage: {
		says: 'guardian language',
		headings: ['guardianlanguage', 'guardianpreferredlanguage', 'preferredlanguageoftheguardian', 'parentlanguage', 'carerlanguage'],
	},
	consents: { says: 'consents', headings: ['consents', 'consent', 'consentto', 'consentsgiven'] },
}
/** Words for the sex of a player, in lower case. */
export const sexWords: Readonly<Record<string, 'male' | 'female'>> = {
	...{ m: 'male', male: 'male', boy: 'male', boys: 'male', man: 'male', men: 'male' },
	...{ f: 'female', female: 'female', girl: 'female', girls: 'female', woman: 'female' },
	...{ women: 'female', w: 'female' },
}
