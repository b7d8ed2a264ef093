/** Names that pages print are held where they are entered, so that no visit ends unsigned for one. */
import { expect, test } from 'vitest'
import { clinic, folder, open, passphrase } from './bench-app.ts'
import { adult, stops } from './outbox-bench.ts'

const strangeNames = ['مركز القدم', 'קליניקה', '足科診所', 'คลินิก', 'Clinic 🙂']

test('a letterhead, a person and a contact that no page can print are refused at their field', async () => {
	const app = open(folder())
	stops.push(() => app.close())
	for (const name of strangeNames) {
		const { code, problems } = await app.refused('session.setUp', {
			clinic: { ...clinic, name, clinician: { ...clinic.clinician, name } },
			passphrase,
		})
		expect({ code, at: problems?.map(({ path }) => path) }).toEqual({
			code: 'records.cannot-be-printed',
			at: ['clinic.name', 'clinic.clinician.name'],
		})
	}
	const marks = { ...clinic, name: 'Ποδολογία Đặng Ковалёва Òlu̱wa' }
	await app.ask('session.setUp', { clinic: marks, passphrase })
	const { playerId } = await app.ask('players.save', { player: adult })
	for (const name of strangeNames) {
		const save = await app.refused('clinic.save', { ...marks, address: ['12 Lane', name] })
		expect(save.problems?.map(({ path }) => path)).toEqual(['address.1'])
		const person = { name, registration: 'R-1', role: 'clinician', passphrase: 'nine quiet otters' }
		expect((await app.refused('people.save', person)).code).toBe('records.cannot-be-printed')
		const contact = { playerId, name, role: 'doctor', email: '', emailAgain: '', phone: '' }
		expect((await app.refused('outbox.addContact', { ...contact, warningsRead: false })).code).toBe(
			'records.cannot-be-printed',
		)
	}
})
