/** The shelf learns through the host: asked about a signed visit, answered by a person, once. */
import { expect, test } from 'vitest'
import type { DraftContent, OutputOf } from '../../shared/contract.ts'
import type { Shelf } from '../../shared/engine/visit/shelf.ts'
import { decideAll } from '../decide.ts'
import { clinic, folder, open, passphrase } from './bench-app.ts'

const size = { system: 'uk', label: 6, insideLengthMm: 258, ballWidthMm: 90 } as const
const shelf: Shelf = {
	format: 'lastwright-shelf',
	version: 1,
	models: [{ id: 'tern', name: 'Tern', sole: 'firm-ground', sizes: [size] }],
}
const day = '2027-01-20'
const footwear = [
	{
		id: 'p1',
		name: 'new boots',
		sole: 'firm-ground',
		sizeSystem: 'uk',
		size: 6,
		insideLengthMm: 254,
		onFoot: { model: 'tern', lengthBy: 'gauge', insideWidthMm: 88, left: { roomMm: 8 } },
	},
]
test('a measured pair is asked about, taken over once, and outlives a save of the form', async () => {
	const app = open(folder())
	const { ask } = app
	await ask('session.setUp', { clinic, passphrase })
	const { savedAs } = await ask('shelf.save', { shelf })
	const { playerId } = await ask('players.save', {
		player: { givenName: 'Invented', familyName: 'Player', birthDate: '1999-11-08', sex: 'female' },
	})
	const { draft } = await ask('drafts.open', { playerId, visitDate: day })
	const content = draft.content as DraftContent
	const visit = { ...content.visit, feet: { left: { heelToToeMm: 246 } }, footwear }
	await ask('drafts.save', { draftId: draft.draftId, content: { ...content, visit } })
	expect((await ask('shelf.toLearn', {})).pairs).toEqual([])
	const draftId = await decideAll(ask, playerId, day)
	const { visitId } = await ask('visits.sign', { draftId })
	const asked: OutputOf<'shelf.toLearn'> = await ask('shelf.toLearn', { visitId })
	expect(asked.pairs).toMatchObject([{ measuredMm: 254, listedMm: 258, medianMm: -4, pairs: 1 }])
	expect(JSON.stringify(asked)).not.toContain(playerId)
	expect(await ask('shelf.toLearn', {})).toEqual(asked)
	expect((await ask('shelf.get', {})).shelf).toEqual(shelf)
	const [{ of } = { of: '' }] = asked.pairs
	const old = await app.call('shelf.learn', { of, answer: 'take-over' })
	expect(old).toMatchObject({ ok: false, code: 'shelf.changed-elsewhere' })
	await ask('shelf.learn', { of, answer: 'take-over', follows: savedAs })
	expect((await ask('shelf.toLearn', {})).pairs).toEqual([])
	const learned = (await ask('shelf.get', {})) as OutputOf<'shelf.get'>
	const kept = learned.shelf?.models[0]?.sizes[0]
	expect(kept).toMatchObject({
		insideLengthMm: 254,
		ballWidthMm: 88,
		listed: { insideLengthMm: 258 },
	})
	// a form that knows nothing of it
	await ask('shelf.save', { shelf, follows: learned.savedAs })
	const after = (await ask('shelf.get', {})) as OutputOf<'shelf.get'>
	expect(after.shelf?.models[0]?.sizes[0]?.measured).toEqual(kept?.measured)
	const gone = await app.call('shelf.learn', {
		of: '0'.repeat(64),
		answer: 'count-only',
		follows: after.savedAs,
	})
	expect(gone).toMatchObject({ ok: false, code: 'shelf.nothing-to-learn' })
	await ask('visits.markInError', { visitId, reason: 'of another player' })
	await ask('shelf.save', { shelf: { ...shelf, models: [] }, follows: after.savedAs })
	expect((await ask('shelf.toLearn', {})).pairs).toEqual([])
})
