import { describe, expect, test } from 'vitest'
import {
	clinic,
	draftOf,
	folder,
	measured,
	open,
	passphrase,
	player,
	saved,
	withPlayer,
} from './counting-app.ts'

describe('entries that cannot stand', () => {
	test.each([
		[
			'players.save',
			{ player: { ...player, birthDate: '2011-02-30' } },
			'player.birthDate',
			'2011-02-30',
		],
		['players.save', { player: { ...player, sex: 'x' } }, 'player.sex', 'male, female'],
		['players.save', { player: { ...player, shoe: 1 } }, 'player.shoe', 'unknown key'],
		['session.setUp', { clinic, passphrase: 'short' }, 'passphrase', 'at least 8'],
		['players.search', { query: 'a', limit: 0 }, 'limit', 'given 0'],
		['drafts.open', { playerId: 'x', visitDate: 'soon' }, 'visitDate', 'soon'],
	])('%s names the path and what was given', async (name, input, path, words) => {
		const { app } = await withPlayer()
		const { problems } = await app.refused(name, input)
		expect(problems).toMatchObject([{ path, message: expect.stringContaining(words) }])
		app.close()
	})
	test('a measure outside its limits is refused and the stored draft stays', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId, content } = await saved(app, playerId, { visit: measured })
		const { problems } = await app.refused('drafts.save', {
			draftId,
			content: { ...content, visit: { ...content.visit, ankles: { left: { lungeCm: 95 } } } },
		})
		expect(problems?.[0]).toMatchObject({
			path: 'content.visit.ankles.left.lungeCm',
			message: expect.stringContaining('given 95'),
		})
		expect((await draftOf(app, playerId)).draft.content.visit.ankles).toEqual(measured.ankles)
		app.close()
	})
	test('similar players are pointed out, saved all the same, never merged', async () => {
		const { app, playerId } = await withPlayer()
		const similar = async (changed: Partial<typeof player>) =>
			await app.ask<{ playerId: string; similar: { playerId: string }[] }>('players.save', {
				player: { ...player, ...changed },
			})
		const twin = await similar({ givenName: 'Zoe', familyName: 'Marlowe-Nguyen' })
		expect(twin.playerId).not.toBe(playerId)
		expect(twin.similar.map((card) => card.playerId)).toEqual([playerId])
		expect(
			(await similar({ givenName: 'Ines', familyName: 'Ashdown', birthDate: '2009-03-02' }))
				.similar,
		).toEqual([])
		expect((await app.ask('players.search', { query: '', limit: 10 })).total).toBe(3)
		app.close()
	})
})

describe('the passphrase', () => {
	test(
		'wrong three times slows the next try down, longer each time, and a right one ' + 'ends it',
		async () => {
			const { app } = await withPlayer()
			await app.ask('session.lock', {})
			const wrong = async () =>
				(await app.refused('session.unlock', { passphrase: 'wrong horse' })).code
			for (let tried = 0; tried < 3; tried++) expect(await wrong()).toBe('people.wrong-passphrase')
			expect((await app.refused('session.unlock', { passphrase })).code).toBe('people.wait')
			app.clock.ms += 1000
			expect(await wrong()).toBe('people.wrong-passphrase')
			app.clock.ms += 1000
			expect(await wrong()).toBe('people.wait')
			app.clock.ms += 1000
			await app.ask('session.unlock', { passphrase })
			await app.ask('session.lock', {})
			expect(await wrong()).toBe('people.wrong-passphrase')
			await app.ask('session.unlock', { passphrase })
			app.close()
		},
	)
	test('tries at the same time do not get round the wait', async () => {
		const { app } = await withPlayer()
		await app.ask('session.lock', {})
		const answers = await Promise.all(
			Array.from({ length: 20 }, () =>
				app.refused('session.unlock', { passphrase: 'wrong horse' }),
			),
		)
		expect(answers.filter(({ code }) => code === 'people.wrong-passphrase')).toHaveLength(1)
		app.close()
	})
	test(
		'set up twice at once: the one recovery key that was handed out opens the ' + 'records',
		async () => {
			const app = open(folder())
			const answers = await Promise.all([
				app.call('session.setUp', { clinic, passphrase }),
				app.call('session.setUp', { clinic, passphrase: 'other passphrase' }),
			])
			const keys = answers.flatMap((answer) =>
				answer.ok ? [(answer.value as { recoveryKey: string }).recoveryKey] : [],
			)
			expect(keys).toHaveLength(1)
			await app.ask('session.lock', {})
			await app.ask('session.unlockWithRecoveryKey', {
				recoveryKey: keys[0],
				newPassphrase: 'a new passphrase',
			})
			expect(await app.ask('clinic.get', {})).toEqual(clinic)
			expect((await app.ask('session.status', {})).warnings).toEqual([])
			app.close()
		},
	)
	test('unlocking before set-up says what to do', async () => {
		const app = open(folder())
		expect((await app.refused('session.unlock', { passphrase })).code).toBe('people.not-set-up')
		app.close()
	})
})
