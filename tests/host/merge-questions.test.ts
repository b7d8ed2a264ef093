/** What two places recorded differently is asked, and the answer stands. */
import { describe, expect, test } from 'vitest'
import { open, passphrase, player, withPlayer } from './bench-app.ts'
import { apart, back, bring, laptopOf, packed } from './bench-pack.ts'

describe('home again', () => {
	test(
		'details: one-sided changes are taken, a field changed on both is asked with both values ' +
			'and the answer stands',
		async () => {
			const {
				app,
				here,
				playerId,
				away: [laptop],
			} = await apart()
			await app.ask('players.save', {
				playerId,
				player: { ...player, club: 'Harrow Rovers', phone: '555-0100' },
			})
			await laptop!.ask('players.save', {
				playerId,
				player: { ...player, club: 'Lane United', email: 'zoe@example.org' },
			})
			expect((await bring(app, await back(laptop!))).questions).toBe(1)
			expect((await app.ask('players.open', { playerId })).player).toMatchObject({
				phone: '555-0100',
				email: 'zoe@example.org',
			})
			const {
				questions: [question],
			} = await app.ask('outreach.list')
			expect(question).toMatchObject({ what: 'details', fields: [{ field: 'club' }] })
			expect(
				question.fields[0].values.map((value: { shown: string }) => value.shown).sort(),
			).toEqual(['Harrow Rovers', 'Lane United'])
			expect(
				(
					await app.refused('outreach.answer', {
						what: 'details',
						id: playerId,
						playerId,
						choices: {},
					})
				).problems?.[0]?.path,
			).toBe('choices.club')
			await app.ask('outreach.answer', {
				what: 'details',
				id: playerId,
				playerId,
				choices: {
					club: question.fields[0].values.find(
						(value: { shown: string }) => value.shown === 'Harrow Rovers',
					).record,
				},
			})
			expect((await app.ask('outreach.list')).questions).toEqual([])
			app.close()
			const later = open(here)
			await later.ask('session.unlock', { passphrase })
			expect((await later.ask('players.open', { playerId })).player).toMatchObject({
				club: 'Harrow Rovers',
				phone: '555-0100',
				email: 'zoe@example.org',
			})
			later.close()
		},
	)
	test.each([
		['home', 'laptop'],
		['laptop', 'home'],
	])(
		'consent refused on the %s and given on the %s: the refusal holds until it is answered',
		async (where) => {
			const {
				app,
				playerId,
				away: [laptop],
			} = await apart()
			const consent = {
				purpose: 'photos',
				recipient: '',
				grantor: { name: 'Rae', relation: 'parent' },
				method: 'verbal',
				given: '2027-01-20',
			}
			await (where === 'home' ? app : laptop!).ask('consents.record', {
				playerId,
				consent: { ...consent, decision: 'deny', given: '2027-01-19' },
			})
			await (where === 'home' ? laptop! : app).ask('consents.record', {
				playerId,
				consent: { ...consent, decision: 'permit' },
			})
			await bring(app, await back(laptop!))
			const check = () => app.ask('consents.check', { playerId, purpose: 'photos', recipient: '' })
			expect(await check()).toMatchObject({
				inForce: false,
				because: expect.stringContaining('stricter'),
			})
			const {
				questions: [question],
			} = await app.ask('outreach.list')
			const permit = question.fields[0].values.find(
				(value: { shown: string }) => value.shown === 'permit',
			).record
			await app.ask('outreach.answer', {
				what: 'consent',
				id: question.id,
				playerId,
				choices: { photos: permit },
			})
			expect(await check()).toMatchObject({ inForce: true })
			app.close()
		},
	)
	test('a consent withdrawn at home stays withdrawn whatever the laptop brings', async () => {
		const { app, playerId } = await withPlayer()
		const consent = {
			purpose: 'photos',
			recipient: '',
			decision: 'permit',
			grantor: { name: 'Rae', relation: 'parent' },
			method: 'verbal',
			given: '2027-01-19',
		}
		const { consentId } = await app.ask('consents.record', { playerId, consent })
		const { app: laptop } = await laptopOf(await packed(app, [playerId]))
		await app.ask('consents.withdraw', {
			playerId,
			consentId,
			withdrawn: '2027-01-20',
			withdrawnBy: 'Rae',
		})
		await laptop.ask('consents.record', { playerId, consent: { ...consent, given: '2027-01-20' } })
		await bring(app, await back(laptop))
		expect(
			await app.ask('consents.check', { playerId, purpose: 'photos', recipient: '' }),
		).toMatchObject({ inForce: false })
		app.close()
	})
})
