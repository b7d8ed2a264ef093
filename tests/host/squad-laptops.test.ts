import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { BoardRow } from '../../shared/desk/squad/board.ts'
import { clinic, folder, open, passphrase } from './bench-app.ts'
import { laptopOf, packed, packPassphrase, stick } from './bench-pack.ts'
import { day, enter, roster, values } from './squad-bench.ts'

test('stations on two laptops by packs come together on one board', async () => {
	const app = open(folder())
	await app.ask('session.setUp', { clinic, passphrase })
	const { squadId } = await app.ask('squad.create', {
		text: roster(4),
		team: 'Rovers',
		day,
		same: {},
	})
	const ids = ((await app.ask('squad.open', { squadId })).rows as BoardRow[]).map(
		(row) => row.playerId,
	)
	const file = await packed(app, ids)
	for (const half of [ids.slice(0, 2), ids.slice(2)]) {
		const { app: laptop } = await laptopOf(file)
		for (const [at, playerId] of half.entries()) {
			await laptop.ask('squad.mark', { squadId, playerId, presence: 'here', at: 'clinician' })
			await enter(laptop.ask, playerId, values(at), true)
		}
		const back = await laptop.ask('outreach.makeReturn', {
			folder: stick(),
			passphrase: packPassphrase,
		})
		await app.ask('outreach.merge', { file: back.file, passphrase: packPassphrase })
		laptop.close()
	}
	expect(
		((await app.ask('squad.open', { squadId })).rows as BoardRow[]).map((row) => row.state),
	).toEqual(['ready', 'ready', 'ready', 'ready'])
	app.close()
})
test(
	'one laptop measures, another one looks at ankles: the same players come together field by ' +
		'field, in either order',
	async () => {
		const app = open(folder())
		await app.ask('session.setUp', { clinic, passphrase })
		const { squadId } = await app.ask('squad.create', {
			text: roster(4),
			team: 'Rovers',
			day,
			same: {},
		})
		const ids = ((await app.ask('squad.open', { squadId })).rows as BoardRow[]).map(
			(row) => row.playerId,
		)
		// two were checked in before the packs were made: their drafts went along; the drafts of the
		// others are begun on each laptop
		for (const playerId of ids.slice(0, 2))
			await enter(app.ask, playerId, values(0).slice(0, 1), true)
		const file = await packed(app, ids)
		const backs: string[] = []
		for (const part of [
			values(0)
				.slice(0, 3)
				.concat(values(0).filter(([path]) => path.startsWith('feet.'))),
			values(0).filter(([path]) => /^(ankles|posture)\.|^footwear$/.test(path)),
		]) {
			const { app: laptop } = await laptopOf(file)
			expect(
				((await laptop.ask('squad.open', { squadId })).rows as BoardRow[]).map((row) => row.number),
			).toEqual(['1', '2', '3', '4'])
			for (const playerId of ids) await enter(laptop.ask, playerId, part, true)
			backs.push(
				(await laptop.ask('outreach.makeReturn', { folder: stick(), passphrase: packPassphrase }))
					.file,
			)
			laptop.close()
		}
		const { file: copy } = await app
			.ask('backups.make', { folder: stick() })
			.then((made) => ({ file: join(made.folder, made.file) }))
		app.close()
		const seen: unknown[] = []
		for (const order of [
			[0, 1],
			[1, 0],
		]) {
			const home = open(folder())
			await home.ask('session.moveHere', { file: copy })
			await home.ask('session.unlock', { passphrase })
			await home.ask('outreach.merge', { file: backs[order[0]!], passphrase: packPassphrase })
			const second = await home.ask('outreach.merge', {
				file: backs[order[1]!],
				passphrase: packPassphrase,
			})
			expect(second).toMatchObject({
				draftsBoth: [],
				notices: [expect.stringMatching(/4 drafts worked at in more than one place were joined/)],
			})
			expect(
				((await home.ask('squad.open', { squadId })).rows as BoardRow[]).map((row) => row.state),
			).toEqual(['ready', 'ready', 'ready', 'ready'])
			// brought in once more, nothing is taken twice and nothing comes apart
			expect(
				await home.ask('outreach.merge', { file: backs[order[0]!], passphrase: packPassphrase }),
			).toMatchObject({ again: true, draftsBoth: [] })
			seen.push(
				await Promise.all(
					ids.map(
						async (playerId) =>
							(await home.ask('drafts.open', { playerId, visitDate: day })).draft.content,
					),
				),
			)
			home.close()
		}
		expect(seen[1]).toEqual(seen[0])
	},
)
