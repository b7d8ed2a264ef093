/** The clinic's protocol: what it refuses, what it changes, and that preview and signing use it. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type App, createApp } from '../../electron/app.ts'
import { withValue } from '../../renderer/parts/draft-path.ts'
import { judge } from '../../renderer/parts/judge.ts'
import { applyPaste, planPaste } from '../../renderer/parts/pasteBlock.ts'
import { History } from '../../renderer/screens/assessment/history.ts'
import { steps } from '../../renderer/screens/assessment/steps.ts'
import type { DraftContent } from '../../shared/contract.ts'
import { protocolProblems } from '../../shared/engine/protocol/check.ts'
import { rows } from '../../shared/engine/protocol/rows.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { decideAll } from '../decide.ts'

describe('the values a clinic may set', () => {
	it('accepts every shipped value', () =>
		expect(
			protocolProblems(
				Object.fromEntries(Object.entries(rows).map(([key, row]) => [key, row.value])),
			),
		).toEqual([]))
	it.each<[Record<string, number>, code: string, params: object]>([
		[{ 'ankle.nothing': 1 }, 'no-such-threshold', { given: 1 }],
		[{ 'ankle.restrictedCm': -1 }, 'below-zero', { given: -1 }],
		[
			{ 'sizing.toeRoomAdultMinMm': 30 },
			'above-other',
			{ other: 'sizing.toeRoomAdultTargetMm', given: 30, limit: 7.5 },
		],
		[{ 'ankle.restrictedCm': Number.NaN }, 'not-a-number', {}],
	])('%j is refused: %s', (values, code, params) => {
		const [key] = Object.keys(values)
		expect(protocolProblems(values)).toContainEqual(
			expect.objectContaining({ key, code, params: expect.objectContaining(params) }),
		)
	})
	it('accepts a span moved as a whole', () =>
		expect(
			protocolProblems({
				'sizing.toeRoomAdultMinMm': 11,
				'sizing.toeRoomAdultTargetMm': 12,
				'sizing.toeRoomAdultMaxMm': 13,
			}),
		).toEqual([]))
})

const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Harrow Lane Foot Clinic',
	address: [],
	colour: '#1f5f5b',
	clinician: { name: 'Imke Darrow', registration: 'DEMO-00417' },
}
let folder = ''
let app: App
let printed: LwDocument[] = []
const open = () =>
	createApp({
		dataFolder: folder,
		scryptCost: 2 ** 12,
		renderPdf: async (document) => {
			printed.push(document)
			return new TextEncoder().encode(JSON.stringify(document.title))
		},
	})
async function call<T = Record<string, unknown>>(name: string, input: object): Promise<T> {
	const answer = await app.call(name, input)
	if (!answer.ok)
		throw new Error(
			`${answer.message} ` +
				`${(answer.problems ?? []).map((problem) => `${problem.path}: ${problem.message}`).join('; ')}`,
		)
	return answer.value as T
}
beforeEach(async () => {
	folder = mkdtempSync(join(tmpdir(), 'lastwright-protocol-'))
	printed = []
	app = open()
	await call('session.setUp', { clinic, passphrase: 'seven grey herons' })
})
afterEach(() => {
	app.close()
	rmSync(folder, { recursive: true, force: true })
})

describe('the protocol of a clinic', () => {
	it('is tried on the demo visits, kept in versions, and used to preview and to sign', async () => {
		const values = { 'ankle.restrictedCm': 4, 'ankle.restrictedDeg': 20 }
		const { changes, visits } = await call<{
			visits: number
			changes: { name: string; gone: string[]; added: string[] }[]
		}>('protocol.preview', { values })
		expect(visits).toBeGreaterThan(5)
		expect(changes.some((change) => change.gone.length + change.added.length > 0)).toBe(true)
		expect(await call('protocol.get', {})).toMatchObject({ file: { id: 'shipped' } })

		const { playerId } = await call<{ playerId: string }>('players.save', {
			player: { givenName: 'Wren', familyName: 'Holloway', birthDate: '1998-03-04', sex: 'female' },
		})
		const { draft } = await call<{ draft: { draftId: string; content: DraftContent } }>(
			'drafts.open',
			{ playerId, visitDate: '2026-02-01' },
		)
		const content = {
			...draft.content,
			visit: { ...draft.content.visit, ankles: { left: { lungeCm: 7 }, right: { lungeCm: 7 } } },
			decisions: noDecisions,
		}
		await call('drafts.save', { draftId: draft.draftId, content })
		await call('drafts.preview', { draftId: draft.draftId })
		const before = JSON.stringify(printed.at(-1))
		const saved = await call<{ savedAs: string }>('protocol.save', {
			values,
			why: 'our own cut-off',
		})
		await call('drafts.preview', { draftId: draft.draftId })
		expect(JSON.stringify(printed.at(-1))).not.toBe(before)
		await decideAll(call, playerId, '2026-02-01')
		const { visitId } = await call<{ visitId: string }>('visits.sign', { draftId: draft.draftId })
		const signed = await call<{
			assessment: { ankle: { left: { band: string } } }
			protocol: { id: string; version: number }
		}>('visits.open', { visitId })
		expect([
			signed.assessment.ankle.left.band,
			signed.protocol.id,
			signed.protocol.version,
		]).toEqual(['adequate', 'clinic', 1])

		await expect(call('protocol.save', { values: {}, why: 'no version named' })).rejects.toThrow(
			'changed elsewhere',
		)
		await call('protocol.save', {
			values: {
				'ankle.restrictedCm': rows['ankle.restrictedCm'].value,
				'ankle.restrictedDeg': rows['ankle.restrictedDeg'].value,
			},
			why: 'back to shipped',
			follows: saved.savedAs,
		})
		// the values last through a lock, and a signed visit keeps what it was signed under
		app.close()
		app = open()
		await call('session.unlock', { passphrase: 'seven grey herons' })
		const { file } = await call<{ file: { revision: number; values?: object } }>('protocol.get', {})
		expect([file.revision, file.values]).toEqual([2, undefined])
		const { versions } = await call<{ versions: { why: string; by: string }[] }>(
			'protocol.versions',
			{},
		)
		expect(versions.map((version) => [version.why, version.by])).toEqual([
			['back to shipped', 'Imke Darrow'],
			['our own cut-off', 'Imke Darrow'],
		])
		expect(
			(
				await call<{ assessment: { ankle: { left: { band: string } } } }>('visits.open', {
					visitId,
				})
			).assessment.ankle.left.band,
		).toBe('adequate')
	})
	it('refuses a value that cannot stand, naming it', async () => {
		await expect(
			call('protocol.save', { values: { 'sizing.toeRoomAdultMinMm': 99 }, why: 'a slip' }),
		).rejects.toThrow('values.sizing.toeRoomAdultMinMm: above')
		expect(await call('protocol.get', {})).not.toHaveProperty('savedAs')
	})
	it('keeps the look of the PC apart from the records', async () => {
		await call('look.save', {
			colours: 'contrast',
			textPercent: 150,
			singleKeys: true,
			tourSeen: true,
		})
		app.close()
		app = open()
		expect(await call('look.get', {})).toMatchObject({ colours: 'contrast', textPercent: 150 })
	})
})

const draft: DraftContent = {
	visit: visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate: '1999-01-01', sex: 'male' },
		visitDate: '2027-01-20',
	}),
	raw: {},
	decisions: noDecisions,
}
const feet = steps
	.find((room) => room.name === 'Feet')!
	.groups.flatMap((group) => group.fields.map((row) => row.paths))
describe('a pasted block', () => {
	it('fills left and right, row by row, and leaves out what cannot be read', () => {
		const cells = planPaste('246\t249\n178\tabc\n95;97\n', feet, 'feet.left.heelToToeMm')
		expect(cells.map((cell) => [cell.name, cell.judged.error === undefined])).toEqual([
			['Heel to toe, left', true],
			['Heel to toe, right', true],
			['Heel to ball, left', true],
			['Heel to ball, right', false],
			['Ball width, left', true],
			['Ball width, right', true],
		])
		expect(applyPaste(draft, cells).visit.feet).toEqual({
			left: { heelToToeMm: 246, heelToBallMm: 178, ballWidthMm: 95 },
			right: { heelToToeMm: 249, ballWidthMm: 97 },
		})
		expect(draft.visit.feet).toBeUndefined()
	})
	it('goes down the side it was pasted into, and in the order of the walk on one line', () => {
		expect(planPaste('246\n178', feet, 'feet.right.heelToToeMm').map((cell) => cell.path)).toEqual([
			'feet.right.heelToToeMm',
			'feet.right.heelToBallMm',
		])
		expect(
			planPaste('246;247;178', feet, 'feet.left.heelToToeMm').map((cell) => cell.path),
		).toEqual(['feet.left.heelToToeMm', 'feet.right.heelToToeMm', 'feet.left.heelToBallMm'])
		expect(planPaste('1\t2\t3\n4', feet, 'feet.left.heelToToeMm').map((cell) => cell.path)).toEqual(
			['feet.left.heelToToeMm', 'feet.right.heelToToeMm', undefined, 'feet.left.heelToBallMm'],
		)
	})
})
describe('undo', () => {
	it('takes back one field at a time, whatever the number of keys', () => {
		const history = new History()
		let now = draft
		const type = (path: string, value: unknown, atMs: number) => {
			const next = withValue(now, path, value)
			history.note(now, next, atMs)
			now = next
		}
		type('feet.left.heelToToeMm', 24, 0)
		type('feet.left.heelToToeMm', 246, 100)
		type('feet.right.heelToToeMm', 249, 200)
		type('feet.right.heelToToeMm', 250, 300)
		now = history.back(now)!
		expect(now.visit.feet).toEqual({ left: { heelToToeMm: 246 } })
		now = history.back(now)!
		expect([now.visit.feet, history.back(now)]).toEqual([undefined, undefined])
		now = history.forward(now)!
		expect(history.forward(now)!.visit.feet?.right?.heelToToeMm).toBe(250)
	})
	it('moving between steps is no entry', () => {
		const history = new History()
		history.note(draft, { ...draft, step: 'Feet' }, 0)
		expect(history.back(draft)).toBeUndefined()
	})
})
describe('help and reasons', () => {
	it.each([
		['n', 'not measured'],
		['np', 'pain'],
		['NR', 'refused'],
		['pain', 'pain'],
	])('%s is a reason', (typed, words) =>
		expect(judge('feet.left.heelToToeMm', typed)).toEqual({ notMeasured: words }),
	)
})
