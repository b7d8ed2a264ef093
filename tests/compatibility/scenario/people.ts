/** Who works at the invented clinic of the fixtures, and by which secrets; all of it is public. */
export const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Quarry Bank Foot Clinic',
	address: ['3 Quarry Bank', 'Saltmarsh End'],
	phone: '555 0110',
	email: 'desk@quarrybank.example',
	colour: '#1f5f5b',
	clinician: { name: 'Imke Darrow', registration: 'DEMO-00417' },
}
export const secrets = {
	owner: 'lantern over nine quarries',
	clinician: 'copper kettle sings late',
	student: 'paper boats drift westward',
	reception: 'velvet hinge under snow',
	retired: 'marble owl counts seven',
	pack: 'three mild otters on ice',
	laterPack: 'seven brisk herons at dusk',
} as const
export const pins = { owner: '480713', clinician: '906152' } as const
export const staff = [
	{ key: 'clinician', name: 'Bo Varga', registration: 'DEMO-00502', role: 'clinician' },
	{ key: 'student', name: 'Cy Lindqvist', registration: '', role: 'student' },
	{ key: 'reception', name: 'Dee Okafor', registration: '', role: 'reception' },
	{ key: 'retired', name: 'Ed Penrose', registration: 'DEMO-00377', role: 'clinician' },
] as const
export const players = {
	gone: { givenName: 'Alder', familyName: 'Wexcombe', birthDate: '1990-02-11', sex: 'male' },
	adult: {
		givenName: 'Owain',
		familyName: 'Trescott',
		birthDate: '1994-03-30',
		sex: 'male',
		email: 'owain@player.example',
		club: 'Harrow Rovers',
	},
	minor: {
		givenName: 'Tui',
		familyName: 'Ashdown',
		birthDate: '2013-05-02',
		sex: 'male',
		email: 'tui@player.example',
		guardian: {
			name: 'Rae Ashdown',
			relation: 'parent',
			email: 'rae@guardian.example',
			phone: '555 0177',
		},
	},
	twice: { givenName: 'Owen', familyName: 'Trescot', birthDate: '1994-03-30', sex: 'male' },
	apart: { givenName: 'Zoë', familyName: 'Marlowe-Nguyễn', birthDate: '2011-04-17', sex: 'female' },
	season: {
		givenName: 'Ines',
		familyName: 'Calloway',
		birthDate: '2003-06-14',
		sex: 'female',
		club: 'Saltmarsh Rovers',
	},
} as const
