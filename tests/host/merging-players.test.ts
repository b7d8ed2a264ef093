/** Two entries of one person. */
import { expect, test } from 'vitest'
import { open, passphrase, player, signed, withPlayer } from './bench-app.ts'

test(
	'merging two players shows both as one and can be undone; twins and near spellings are ' +
		'pointed out',
	async () => {
		const { app, here, playerId } = await withPlayer()
		const save = async (change: object) =>
			app.ask('players.save', { player: { ...player, ...change } })
		const near = await save({ givenName: 'Zoe', familyName: 'Marlow-Nguyen' })
		expect(near.similar.map((card: { playerId: string }) => card.playerId)).toEqual([playerId])
		expect((await save({ givenName: 'Ines' })).similar.length).toBe(1)
		expect(
			(await save({ givenName: 'Marlowe-Nguyen', familyName: 'Zoe' })).similar.length,
		).toBeGreaterThanOrEqual(2)
		const first = await signed(app, playerId)
		const second = await signed(app, near.playerId, {}, '2027-01-21')
		const total = (await app.ask('players.search', { query: '', limit: 10 })).total
		const { mergeId } = await app.ask('players.merge', {
			from: near.playerId,
			into: playerId,
			reason: 'same person',
		})
		expect(
			(
				await app.refused('players.merge', {
					from: playerId,
					into: near.playerId,
					reason: 'reverse',
				})
			).code,
		).toBe('players.merged-before')
		app.close()
		const again = open(here)
		await again.ask('session.unlock', { passphrase })
		expect((await again.ask('players.search', { query: '', limit: 10 })).total).toBe(total - 1)
		const opened = await again.ask('players.open', { playerId })
		expect(opened.visits.map((visit: { visitId: string }) => visit.visitId)).toEqual([
			second,
			first,
		])
		expect(opened.merged).toEqual([{ mergeId, playerId: near.playerId, name: 'Zoe Marlow-Nguyen' }])
		await again.ask('players.unmerge', { mergeId, reason: 'two people after all' })
		expect(
			(await again.ask('players.open', { playerId })).visits.map(
				(visit: { visitId: string }) => visit.visitId,
			),
		).toEqual([first])
		expect(
			(await again.ask('players.open', { playerId: near.playerId })).visits.map(
				(visit: { visitId: string }) => visit.visitId,
			),
		).toEqual([second])
		again.close()
	},
)
