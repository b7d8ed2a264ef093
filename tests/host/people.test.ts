/** People and their passphrases, waiting and idling. */
import { expect, test } from 'vitest'
import { folder, open, passphrase, signed, withPlayer } from './bench-app.ts'

const passphrases = {
	clinician: 'clinician words',
	student: 'student words',
	reception: 'reception words',
}
async function withPeople(here = folder()) {
	const made = await withPlayer(here)
	const ids: Record<string, string> = {}
	for (const [role, words] of Object.entries(passphrases))
		ids[role] = (
			await made.app.ask('people.save', {
				name: `Invented ${role}`,
				registration: role === 'clinician' ? 'X2' : '',
				role,
				passphrase: words,
			})
		).personId
	return { ...made, ids }
}

test(
	'each person has a passphrase of their own, signs under their own name, and is locked out ' +
		'once taken off',
	async () => {
		const { app, here, playerId, ids } = await withPeople()
		expect(
			(
				await app.refused('people.save', {
					name: 'Again',
					registration: '',
					role: 'reception',
					passphrase,
				})
			).code,
		).toBe('people.cannot-change-secret')
		expect(
			(
				await app.refused('people.save', {
					name: 'No number',
					registration: '',
					role: 'clinician',
					passphrase: 'yet other words',
				})
			).problems?.[0]?.path,
		).toBe('registration')
		await app.ask('session.lock')
		await app.ask('session.unlock', { passphrase: passphrases.clinician })
		const visitId = await signed(app, playerId)
		expect((await app.ask('visits.open', { visitId })).signedBy).toEqual({
			name: 'Invented clinician',
			registration: 'X2',
		})
		await app.ask('session.changePassphrase', {
			old: passphrases.clinician,
			passphrase: 'changed words',
		})
		expect(
			(
				await app.refused('session.changePassphrase', {
					old: 'not these',
					passphrase: 'changed words',
				})
			).code,
		).toBe('people.wrong-passphrase')
		app.close()
		const again = open(here)
		expect(
			(await again.refused('session.unlock', { passphrase: passphrases.clinician })).code,
		).toBe('people.wrong-passphrase')
		await again.ask('session.unlock', { passphrase: 'changed words' })
		await again.ask('session.lock')
		await again.ask('session.unlock', { passphrase })
		expect((await again.ask('audit.verify')).problems, 'the change names no record').toEqual([])
		await again.ask('people.retire', { personId: ids.clinician, reason: 'left the clinic' })
		await again.ask('session.lock')
		expect((await again.refused('session.unlock', { passphrase: 'changed words' })).code).toBe(
			'people.wrong-passphrase',
		)
		again.close()
	},
)
test(
	'the wait after wrong tries outlives a restart, and a clock set back does not ' + 'lengthen it',
	async () => {
		const { app, here } = await withPlayer()
		await app.ask('session.lock')
		for (let tried = 0; tried < 3; tried++)
			await app.refused('session.unlock', { passphrase: 'wrong horse' })
		app.close()
		const again = open(here, '2027-01-20T08:00:00.000Z')
		expect((await again.refused('session.unlock', { passphrase })).code).toBe('people.wait')
		again.close()
		const later = open(here, '2027-01-20T09:00:02.000Z')
		await later.ask('session.unlock', { passphrase })
		const { rows } = await later.ask('audit.page', { limit: 10, function: 'unlock-failed' })
		expect(rows).toHaveLength(3)
		expect((await later.ask('audit.verify')).problems).toEqual([])
		later.close()
	},
)
test(
	'the records lock when nobody touched them, and automatic saves do not keep them ' + 'open',
	async () => {
		const { app, playerId } = await withPlayer()
		const { draft } = await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
		app.clock.ms += 4 * 60_000
		await app.ask('session.alive')
		app.clock.ms += 4 * 60_000
		await app.ask('drafts.save', { draftId: draft.draftId, content: draft.content })
		expect((await app.ask('session.status')).state).toBe('open')
		app.clock.ms += 60_000
		expect((await app.ask('session.status')).state).toBe('locked')
		app.close()
	},
)
