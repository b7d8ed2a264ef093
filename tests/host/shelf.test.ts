/**
 * The shelf through the host: saved whole, never overwritten unseen, read back after closing, as
 * table in and out, matched at signing.
 */
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { createApp } from '../../electron/app.ts'
import type { DraftContent, SignedVisit } from '../../shared/contract.ts'
import { assess } from '../../shared/engine/assess.ts'
import { parseShelf, type Shelf } from '../../shared/engine/visit/shelf.ts'
import { decideAll } from '../decide.ts'

const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Invented Clinic',
	address: ['1 Example Street'],
	colour: '#1f5f5b',
	clinician: { name: 'A. Example', registration: 'X1' },
}
const passphrase = 'correct horse'
const read = parseShelf(
	JSON.parse(readFileSync(new URL('../../assets/demo/shelf.json', import.meta.url), 'utf8')),
)
if (!read.ok) throw new Error('the demo shelf cannot be read')
const demo: Shelf = read.value
const folder = () => mkdtempSync(join(tmpdir(), 'lastwright-shelf-'))

function open(dataFolder: string) {
	const app = createApp({
		dataFolder,
		scryptCost: 1024,
		now: () => new Date('2027-01-20T09:00:00.000Z'),
		renderPdf: async () => Buffer.from('%PDF-1.7 fixed bytes'),
	})
	const ask = async <T = Record<string, unknown>>(name: string, input: unknown): Promise<T> => {
		const answer = await app.call(name, input)
		if (!answer.ok) throw new Error(`${name}: ${answer.message} ${JSON.stringify(answer.problems)}`)
		return answer.value as T
	}
	const refused = async (name: string, input: unknown) => {
		const answer = await app.call(name, input)
		if (answer.ok) throw new Error(`${name} was not refused`)
		return answer
	}
	return { ...app, ask, refused }
}
async function setUp(here = folder()) {
	const app = open(here)
	await app.ask('session.setUp', { clinic, passphrase })
	return { app, here }
}

describe('saving', () => {
	test('none at first, then the whole shelf, as it was after closing', async () => {
		const { app, here } = await setUp()
		expect(await app.ask('shelf.get', {})).toEqual({})
		const { savedAs } = await app.ask<{ savedAs: string }>('shelf.save', { shelf: demo })
		const less = { ...demo, models: demo.models.slice(0, 2) }
		const second = await app.ask<{ savedAs: string }>('shelf.save', {
			shelf: less,
			follows: savedAs,
		})
		expect(second.savedAs).not.toBe(savedAs)
		app.close()
		const again = open(here)
		expect((await again.refused('shelf.get', {})).code).toBe('people.locked')
		await again.ask('session.unlock', { passphrase })
		expect(await again.ask('shelf.get', {})).toEqual({ shelf: less, savedAs: second.savedAs })
		again.close()
	})
	test('a change made from an older shelf is refused, and nothing is overwritten', async () => {
		const { app } = await setUp()
		const { savedAs } = await app.ask<{ savedAs: string }>('shelf.save', { shelf: demo })
		for (const follows of [undefined, 'another'])
			expect(
				(
					await app.refused('shelf.save', {
						shelf: { ...demo, models: [] },
						...(follows ? { follows } : {}),
					})
				).code,
			).toBe('shelf.changed-elsewhere')
		expect(await app.ask('shelf.get', {})).toEqual({ shelf: demo, savedAs })
		app.close()
	})
	test('an id used twice and a bad figure are named by their path', async () => {
		const { app } = await setUp()
		const [first] = demo.models
		expect(
			(await app.refused('shelf.save', { shelf: { ...demo, models: [first, first] } })).problems,
		).toEqual([expect.objectContaining({ path: 'shelf.models.1.id' })])
		expect(
			(await app.refused('shelf.save', { shelf: { ...demo, models: [{ ...first, massG: 5 }] } }))
				.problems,
		).toEqual([
			expect.objectContaining({
				path: 'shelf.models.0.massG',
				message: expect.stringContaining('5'),
			}),
		])
		expect(await app.ask('shelf.get', {})).toEqual({})
		app.close()
	})
	test('reception keeps the shelf, a student only reads it', async () => {
		const { app } = await setUp()
		for (const [role, secret] of [
			['reception', 'desk passphrase'],
			['student', 'student passphrase'],
		] as const)
			await app.ask('people.save', {
				name: `A ${role}`,
				registration: '',
				role,
				passphrase: secret,
			})
		await app.ask('session.lock', {})
		await app.ask('session.unlock', { passphrase: 'desk passphrase' })
		const { savedAs } = await app.ask<{ savedAs: string }>('shelf.save', { shelf: demo })
		await app.ask('session.lock', {})
		await app.ask('session.unlock', { passphrase: 'student passphrase' })
		expect((await app.refused('shelf.save', { shelf: demo, follows: savedAs })).code).toBe(
			'call.not-for-this-role',
		)
		expect(await app.ask('shelf.get', {})).toEqual({ shelf: demo, savedAs })
		app.close()
	})
})

describe('as a table', () => {
	test('what is written is read back the same', async () => {
		const { app } = await setUp()
		await app.ask('shelf.save', { shelf: demo })
		const { csv, models } = await app.ask<{ csv: string; models: number }>('shelf.exportCsv', {})
		expect(models).toBe(demo.models.length)
		const back = await app.ask<{ shelf: Shelf; good: number; problems: unknown[] }>(
			'shelf.previewCsv',
			{ text: csv },
		)
		expect(back.problems).toEqual([])
		expect(back.shelf.models).toEqual(demo.models)
		app.close()
	})
	test('a bad cell is named by line and column, and looking changes nothing', async () => {
		const { app } = await setUp()
		const text =
			'id,name,sole,massG,system,label,insideLengthMm,ballWidthMm\r\nwren,Wren,turf,240,uk,5,249,93\r\nowl,Owl,firm-ground,heavy,uk,5,249,93\r\n'
		expect(await app.ask('shelf.previewCsv', { text })).toMatchObject({
			good: 1,
			shelf: { models: [{ id: 'wren' }] },
			problems: [{ row: 3, column: 'massG', message: expect.stringContaining('"heavy"') }],
		})
		expect(await app.ask('shelf.get', {})).toEqual({})
		app.close()
	})
	test('with no shelf the table is its heading, and reads back as empty', async () => {
		const { app } = await setUp()
		const { csv, models } = await app.ask<{ csv: string; models: number }>('shelf.exportCsv', {})
		expect(models).toBe(0)
		expect(csv).toMatch(/^id,name,sole,/)
		expect(await app.ask('shelf.previewCsv', { text: csv })).toMatchObject({
			good: 0,
			problems: [],
		})
		app.close()
	})
})

test('a visit is signed with the match to the shelf that stood then', async () => {
	const { app } = await setUp()
	await app.ask('shelf.save', { shelf: demo })
	const { playerId } = await app.ask<{ playerId: string }>('players.save', {
		player: { givenName: 'Invented', familyName: 'Player', birthDate: '1999-11-08', sex: 'female' },
	})
	const { draft } = await app.ask<{ draft: { draftId: string; content: DraftContent } }>(
		'drafts.open',
		{ playerId, visitDate: '2027-01-20' },
	)
	const visit = {
		...draft.content.visit,
		play: { surfaces: ['natural-firm' as const] },
		feet: {
			left: { heelToToeMm: 262, ballWidthMm: 99 },
			right: { heelToToeMm: 264, ballWidthMm: 100 },
		},
	}
	await app.ask('drafts.save', {
		draftId: draft.draftId,
		content: {
			...draft.content,
			visit,
		},
	})
	await decideAll(app.ask, playerId, '2027-01-20')
	const { visitId } = await app.ask<{ visitId: string }>('visits.sign', { draftId: draft.draftId })
	const signed = await app.ask<SignedVisit>('visits.open', { visitId })
	const { ranked } = (signed.assessment as ReturnType<typeof assess>).footwear
	expect(ranked.length).toBe(demo.models.filter((model) => !model.retired).length)
	expect(ranked).toEqual(assess(signed.visit, [], undefined, demo).footwear.ranked)
	app.close()
})
