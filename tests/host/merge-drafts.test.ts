/** Drafts that were worked at in two places. */
import { describe, expect, test } from 'vitest'
import { type Opened, signed, withPlayer } from './bench-app.ts'
import { apart, back, bring, laptopOf, measured, packed } from './bench-pack.ts'

describe('home again', () => {
	test(
		'a draft edited on both is kept twice; edited on one side it is that one; signed away it ' +
			'is gone',
		async () => {
			const { app, playerId } = await withPlayer()
			const edit = async (at: Opened, notes: string) => {
				const { draft } = await at.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
				await at.ask('drafts.save', {
					draftId: draft.draftId,
					content: { ...draft.content, visit: { ...draft.content.visit, notes } },
				})
				return draft.draftId as string
			}
			await edit(app, 'before')
			const file = await packed(app, [playerId])
			const [first, second, third] = [
				(await laptopOf(file)).app,
				(await laptopOf(file)).app,
				(await laptopOf(file)).app,
			]
			await edit(first, 'by one')
			await bring(app, await back(third))
			expect((await bring(app, await back(first))).draftsBoth).toEqual([])
			expect(
				(await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })).draft.content.visit
					.notes,
			).toBe('by one')
			await edit(second, 'by two')
			const { draftsBoth } = await bring(app, await back(second))
			expect(draftsBoth).toHaveLength(1)
			const { differences } = await app.ask('outreach.compareDrafts', {
				drafts: draftsBoth[0].drafts,
			})
			expect(differences).toEqual([{ path: 'notes', first: 'by one', second: 'by two' }])
			await app.ask('outreach.putDraftAway', { draftId: draftsBoth[0].drafts[0] })
			expect(
				(await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })).draft.content.visit
					.notes,
			).toBe('by two')
			expect(
				(await app.refused('outreach.putDraftAway', { draftId: draftsBoth[0].drafts[1] })).code,
			).toBe('outreach.only-draft')
			app.close()
		},
	)
	test('a draft signed on the laptop closes the one at home that nobody touched', async () => {
		const { app, playerId } = await withPlayer()
		await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
		const { app: laptop } = await laptopOf(await packed(app, [playerId]))
		await signed(laptop, playerId, measured)
		await bring(app, await back(laptop))
		expect(await app.ask('players.open', { playerId })).toMatchObject({
			drafts: [],
			visits: [{ visitDate: '2027-01-20' }],
		})
		app.close()
	})
})
test('a field that two places filled differently is chosen, all others are joined', async () => {
	const {
		app,
		playerId,
		away: [first, second],
	} = await apart(2)
	const edit = async (at: Opened, visit: object) => {
		const { draft } = await at.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
		await at.ask('drafts.save', {
			draftId: draft.draftId,
			content: { ...draft.content, visit: { ...draft.content.visit, ...visit } },
		})
	}
	await edit(first!, { notes: 'by one', body: { massKg: 50 } })
	await edit(second!, { notes: 'by two', body: { statureCm: 160 } })
	await bring(app, await back(first!))
	const {
		draftsBoth: [both],
	} = await bring(app, await back(second!))
	const { differences } = await app.ask('outreach.compareDrafts', { drafts: both.drafts })
	expect(differences.map((line: { path: string }) => line.path).sort()).toEqual([
		'body.massKg',
		'body.statureCm',
		'notes',
	])
	expect(
		(await app.refused('outreach.joinDrafts', { drafts: both.drafts, choices: {} })).problems?.[0]
			?.path,
	).toBe('visit.notes')
	const otherNotes = differences.find((line: { path: string }) => line.path === 'notes').second
	await app.ask('outreach.joinDrafts', { drafts: both.drafts, choices: { notes: both.drafts[1] } })
	const { drafts } = await app.ask('players.open', { playerId })
	expect(drafts).toHaveLength(1)
	expect(
		(await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })).draft.content.visit,
	).toMatchObject({ notes: otherNotes, body: { massKg: 50, statureCm: 160 } })
	app.close()
})
