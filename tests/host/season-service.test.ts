/**
 * The season through the host's calls: saved, imported, planned in its worker, cancelled, planned
 * again, given out. Real files, real solver.
 */
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { createApp } from '../../electron/app.ts'
import type { Answer, DraftContent, OutputOf } from '../../shared/contract.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { keepPast } from '../../shared/engine/season/past.ts'
import { fullDay, seasonSessions } from '../../shared/engine/season/pattern.ts'
import { applyImport } from '../../shared/engine/season/preview.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { type Season, type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { decideAll } from '../decide.ts'

const pictured = visitSchema.parse(
	JSON.parse(readFileSync(new URL('../../assets/demo/season-visit.json', import.meta.url), 'utf8')),
)
/** As far as the end of May: long enough for every case here, short to solve. */
const season: Season = {
	...(pictured.season as Season),
	to: '2027-05-30',
	sessions: pictured.season!.sessions!.filter((each) => each.date <= '2027-05-30'),
}
const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Invented Clinic',
	address: ['1 Example Street'],
	colour: '#1f5f5b',
	clinician: { name: 'A. Example', registration: 'X1' },
}
const passphrase = 'correct horse'

async function opened(
	visit: Partial<Visit> = {},
	decisions: Partial<DraftContent['decisions']> = {},
) {
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-season-'))
	const clock = { ms: Date.parse('2027-01-25T09:00:00.000Z') }
	const drawn: LwDocument[] = []
	const make = () =>
		createApp({
			dataFolder: folder,
			scryptCost: 1024,
			now: () => new Date(clock.ms),
			renderPdf: async (document) => {
				drawn.push(document)
				return Buffer.from(`%PDF ${document.title}`)
			},
		})
	const app = make()
	const asking =
		(one: typeof app) =>
		async <T>(name: string, input: unknown): Promise<T> => {
			const answer: Answer<unknown> = await one.call(name, input)
			if (!answer.ok)
				throw new Error(`${name}: ${answer.message} ${JSON.stringify(answer.problems)}`)
			return answer.value as T
		}
	const refused = async (name: string, input: unknown) => {
		const answer: Answer<unknown> = await app.call(name, input)
		if (answer.ok) throw new Error(`${name} was not refused`)
		return answer
	}
	const ask = asking(app)
	await ask('session.setUp', { clinic, passphrase })
	const { playerId } = await ask<{ playerId: string }>('players.save', { player: pictured.player })
	const { draft } = await ask<OutputOf<'drafts.open'>>('drafts.open', {
		playerId,
		visitDate: pictured.visitDate,
	})
	const { season: _, ...measured } = pictured
	const content = {
		visit: { ...measured, ...visit },
		raw: {},
		decisions: { ...noDecisions, consentNoted: true, ...decisions },
	}
	const put = (change: Partial<Visit>) =>
		ask('drafts.save', {
			draftId: draft.draftId,
			content: { ...content, visit: { ...content.visit, ...change } },
		})
	await put({})
	const open = () => ask<OutputOf<'season.open'>>('season.open', { playerId })
	const save = async (next: Season) =>
		ask<OutputOf<'season.save'>>('season.save', {
			playerId,
			season: next,
			...((await open()).savedAs === undefined ? {} : { follows: (await open()).savedAs }),
		})
	const plan = (from?: string) =>
		ask<OutputOf<'season.plan'>>('season.plan', {
			playerId,
			...(from === undefined ? {} : { from }),
		})
	return {
		app,
		ask,
		asking,
		make,
		refused,
		playerId,
		draftId: draft.draftId,
		put,
		open,
		save,
		plan,
		clock,
		drawn,
	}
}

describe('a season on record', () => {
	test('is saved, planned, opened again after a restart, and nothing of it is overwritten', async () => {
		const one = await opened()
		expect(await one.open()).toMatchObject({
			from: '2027-01-25',
			basis: { from: 'draft', visitDate: '2027-01-25' },
			pairs: [
				{ id: 'firm', letter: 'A' },
				{ id: 'new-ag', letter: 'C' },
				{ id: 'turf', letter: 'B' },
			],
		})
		await one.save(season)
		const { plan, first, changes } = await one.plan()
		expect([first, changes]).toEqual([true, []])
		expect(plan.sessions).toHaveLength(
			seasonSessions(season).filter((each) => each.status === undefined).length,
		)
		expect(plan.sessions.every((each) => each.reasons.length > 0 || each.unmet.length > 0)).toBe(
			true,
		)
		const before = await one.open()
		expect(before.planned).toMatchObject({
			version: 1,
			season: before.savedAs,
			basisChanged: false,
			plan,
		})
		one.app.close()
		const again = one.make()
		const ask = one.asking(again)
		await ask('session.unlock', { passphrase })
		expect(await ask('season.open', { playerId: one.playerId })).toEqual(before)
		again.close()
	})
	test('a save from an older state, and one that ends before it begins, are refused', async () => {
		const one = await opened()
		const { savedAs } = await one.save(season)
		await one.save({ ...season, to: '2027-06-05' })
		expect(
			(await one.refused('season.save', { playerId: one.playerId, season, follows: savedAs }))
				.message,
		).toMatch(/changed elsewhere/)
		expect((await one.refused('season.save', { playerId: one.playerId, season })).message).toMatch(
			/changed elsewhere/,
		)
		expect((await one.open()).season?.to).toBe('2027-06-05')
		const { savedAs: follows } = await one.open()
		expect(
			(
				await one.refused('season.save', {
					playerId: one.playerId,
					season: { ...season, to: '2026-01-01' },
					follows,
				})
			).problems,
		).toEqual([{ path: 'season.to', message: expect.stringContaining('1 January 2026') }])
		one.app.close()
	})
	test('the latest signed visit counts where no draft is open', async () => {
		const one = await opened()
		await one.save(season)
		await decideAll(one.ask, one.playerId, '2027-01-25')
		await one.ask('visits.sign', { draftId: one.draftId })
		expect((await one.open()).basis).toEqual({ from: 'visit', visitDate: '2027-01-25' })
		expect((await one.plan()).plan.pairs.map((each) => each.letter)).toEqual(['A', 'C', 'B'])
		one.app.close()
	})
})
describe('planning again', () => {
	test('a pin is kept, the change is told, and the past stays though the pattern is gone', async () => {
		const one = await opened()
		await one.save(season)
		const { plan } = await one.plan()
		const free = plan.sessions.find(
			(each) => each.date > '2027-04-20' && each.pair === 'new-ag' && each.kind === 'training',
		)!
		await one.save({
			...season,
			sessions: [
				...(season.sessions ?? []),
				{ ...seasonSessions(season).find((each) => each.id === free.id)!, pinned: 'turf' },
			],
		})
		const pinned = await one.plan()
		expect(pinned.plan.sessions.find((each) => each.id === free.id)).toMatchObject({
			pair: 'turf',
			reasons: expect.arrayContaining(['chosen by the clinician']),
		})
		expect(pinned.changes.map((each) => each.says).join(' ')).toContain(
			`${fullDay(free.date)}, ${free.start}, training: C (new artificial-ground boots) becomes ` +
				'B (turf shoes)',
		)

		one.clock.ms = Date.parse('2027-05-03T09:00:00.000Z')
		await one.ask('session.unlock', { passphrase })
		const played = (from: typeof plan) =>
			from.sessions
				.filter((each) => each.date < '2027-05-03')
				.map(({ id, date, pair, parts }) => ({ id, date, pair, parts }))
		await one.save({ ...season, pattern: season.pattern!.filter((each) => each.id !== 'tue') })
		const later = await one.plan()
		expect(played(later.plan)).toEqual(played(pinned.plan))
		expect(
			later.plan.sessions.filter((each) => each.id.startsWith('tue:') && each.date >= '2027-05-03'),
		).toEqual([])
		expect((await one.open()).planned?.version).toBe(3)
		one.app.close()
	})
	test('rained off yesterday, and a pattern entered later, against the last plan', () => {
		const small: Season = {
			from: '2027-02-01',
			to: '2027-02-28',
			pattern: [
				{ id: 'tue', weekday: 'tuesday', minutes: 60, kind: 'training', surface: 'natural-firm' },
			],
		}
		const was = {
			from: '2027-02-10',
			sessions: seasonSessions(small).map((each) => ({
				...each,
				start: '18:00',
				ground: 'dry' as const,
				reasons: [],
				unmet: [],
			})),
		}
		const ids = (next: Season) =>
			seasonSessions(keepPast(next, was, '2027-02-17'))
				.filter((each) => each.status === undefined)
				.map((each) => each.id)
		expect(ids(small)).toEqual([
			'tue:2027-02-02',
			'tue:2027-02-09',
			'tue:2027-02-16',
			'tue:2027-02-23',
		])
		expect(ids({ ...small, pattern: [] })).toEqual([
			'tue:2027-02-02',
			'tue:2027-02-09',
			'tue:2027-02-16',
		])
		expect(ids({ ...small, exceptions: [{ from: '2027-02-16', status: 'cancelled' }] })).toEqual([
			'tue:2027-02-02',
			'tue:2027-02-09',
			'tue:2027-02-23',
		])
		expect(
			ids({
				...small,
				pattern: [
					...small.pattern!,
					{
						id: 'thu',
						weekday: 'thursday',
						minutes: 60,
						kind: 'training',
						surface: 'natural-firm',
					},
				],
			}),
		).toEqual([
			'tue:2027-02-02',
			'tue:2027-02-09',
			'thu:2027-02-11',
			'tue:2027-02-16',
			'thu:2027-02-18',
			'tue:2027-02-23',
			'thu:2027-02-25',
		])
	})
	test('cancelling keeps the last plan, and other calls are answered meanwhile', async () => {
		const one = await opened()
		await one.save(season)
		const running = one.app.call('season.plan', { playerId: one.playerId })
		expect(await one.ask('season.progress', { playerId: one.playerId })).toMatchObject({
			running: true,
		})
		expect((await one.refused('season.plan', { playerId: one.playerId })).message).toMatch(
			/planned already/,
		)
		expect(await one.ask('season.cancel', { playerId: one.playerId })).toEqual({ cancelled: true })
		expect(await running).toMatchObject({
			ok: false,
			message: expect.stringMatching(/cancelled. Nothing was changed/),
		})
		expect((await one.open()).planned).toBeUndefined()
		expect(await one.ask('season.cancel', { playerId: one.playerId })).toEqual({ cancelled: false })
		expect(await one.ask('season.progress', { playerId: one.playerId })).toEqual({ running: false })
		one.app.close()
	})
})
describe('a new insert and a new pair at once', () => {
	test('every step of the ladder is half as long, and the match waits for it', async () => {
		const plain = await opened()
		await plain.save(season)
		const inserted = await opened({}, { heelRaiseMm: { left: 6, right: 6 } })
		await inserted.save(season)
		const steps = (plan: OutputOf<'season.plan'>['plan']) =>
			plan.sessions.flatMap(
				(each) =>
					each.parts
						?.filter((part) => part.pair === 'new-ag' && part !== each.parts?.at(-1))
						.map((part) => part.minutes) ?? [],
			)
		const [usual, halved] = [(await plain.plan()).plan, (await inserted.plan()).plan]
		expect(steps(usual).slice(0, 3)).toEqual([20, 30, 45])
		// half of 20, 30 and 45, rounded down to five minutes
		expect(steps(halved).slice(0, 3)).toEqual([10, 15, 20])
		expect(
			halved.pairs.find((each) => each.id === 'new-ag')!.brokenInBy! >
				usual.pairs.find((each) => each.id === 'new-ag')!.brokenInBy!,
		).toBe(true)
		expect(halved.findings.find((each) => each.id === 'season.break-in-new-ag')?.says).toMatch(
			/twice at home for 10 minutes.*50 % of the usual ones/,
		)
		for (const one of [plain, inserted]) one.app.close()
	})
})
describe('giving out', () => {
	test('chart, pocket table and calendar; none of them once the sessions or pairs changed', async () => {
		const one = await opened()
		await one.save(season)
		expect(
			(await one.refused('season.chart', { playerId: one.playerId, paper: 'A4' })).message,
		).toMatch(/not planned yet/)
		await one.plan()
		for (const paper of ['A4', 'A3', 'pocket'])
			await one.ask('season.chart', { playerId: one.playerId, paper })
		expect(one.drawn.map((each) => [each.kind, each.paper ?? 'A4'])).toEqual([
			['season-chart', 'A4'],
			['season-chart', 'A3'],
			['season-pocket', 'A4'],
		])
		const words = JSON.stringify(one.drawn.map((each) => each.blocks))
		expect(words).not.toMatch(/apophysitis|stress|injur|heel/i)
		const first = await one.ask<{ text: string }>('season.ics', { playerId: one.playerId })
		one.clock.ms += 60_000
		const second = await one.ask<{ text: string }>('season.ics', { playerId: one.playerId })
		const uids = (text: string) => text.match(/^UID:.*$/gm)
		expect(uids(second.text)).toEqual(uids(first.text))
		expect(second.text).not.toMatch(/SEQUENCE:1/)
		await one.put({ footwear: pictured.footwear!.slice(0, 2) })
		expect((await one.open()).planned?.basisChanged).toBe(true)
		expect(
			(await one.refused('season.chart', { playerId: one.playerId, paper: 'A4' })).message,
		).toMatch(/Plan the season again/)
		expect((await one.refused('season.ics', { playerId: one.playerId })).message).toMatch(
			/Plan the season again/,
		)
		one.app.close()
	})
	test('a warning sign stops the rotation with its reason until it is recorded what was done', async () => {
		const one = await opened({
			screening: {
				boneStress: { side: 'right', site: 'navicular', focalTenderness: true, loadPain: true },
			},
		})
		await one.save(season)
		const { blocked } = await one.open()
		expect(blocked).toMatch(/stopped for the right foot/)
		expect((await one.refused('season.plan', { playerId: one.playerId })).message).toBe(blocked)
		const { draft } = await one.ask<OutputOf<'drafts.open'>>('drafts.open', {
			playerId: one.playerId,
			visitDate: pictured.visitDate,
		})
		const items = assess(draft.content.visit as Visit).screening.blockedBy.right
		await one.ask('drafts.save', {
			draftId: draft.draftId,
			content: {
				...draft.content,
				decisions: {
					...draft.content.decisions,
					screeningDone: [
						{ side: 'right', items, done: 'Seen by the doctor, scan clear.', on: '2027-01-25' },
					],
				},
			},
		})
		expect((await one.open()).blocked).toBeUndefined()
		expect((await one.plan()).plan.sessions.length).toBeGreaterThan(40)
		one.app.close()
		const numb = await opened({
			conditions: [{ condition: 'previous-foot-ulcer', side: 'left', status: 'past' }],
		})
		await numb.save(season)
		expect((await numb.refused('season.plan', { playerId: numb.playerId })).message).toMatch(
			/previous foot ulcer|stopped for the left foot/,
		)
		numb.app.close()
		const current = await opened({
			conditions: [{ condition: 'navicular-stress-fracture', side: 'left', status: 'current' }],
		})
		await current.save(season)
		expect((await current.refused('season.plan', { playerId: current.playerId })).message).toMatch(
			/navicular stress fracture/,
		)
		current.app.close()
	})
	test('without pairs or sessions it says what to enter', async () => {
		const one = await opened({ footwear: [] })
		expect((await one.refused('season.plan', { playerId: one.playerId })).message).toMatch(
			/No pair with its sole/,
		)
		await one.put({ footwear: pictured.footwear })
		expect((await one.refused('season.plan', { playerId: one.playerId })).message).toMatch(
			/season is empty/,
		)
		one.app.close()
	})
})
describe('importing', () => {
	const csv =
		'Date;Time;Opponent;Surface\r\n03/04/2027;14:00;Harbour (match);natural ' +
		'firm\r\n05/05/2027;TBA;Northfield (match);3G at the school\r\n'
	test('asks what can be read two ways, changes nothing, and a second reading adds nothing', async () => {
		const one = await opened()
		await one.save(season)
		const ask = (answers: Record<string, string>) =>
			one.ask<OutputOf<'season.previewImport'>>('season.previewImport', {
				playerId: one.playerId,
				text: csv,
				kind: 'csv',
				answers: { source: 'cup', ...answers },
			})
		const first = await ask({})
		expect(first.questions.map((each) => each.key)).toEqual(['dateOrder'])
		expect(first.add).toEqual([])
		const second = await ask({ dateOrder: 'day-month' })
		expect(second.questions.map((each) => each.key)).toEqual(['surfaces.3G at the school'])
		const third = await ask({
			dateOrder: 'day-month',
			'surfaces.3G at the school': 'artificial-3g',
		})
		expect(third.add.map((each) => [each.date, each.surface, each.source])).toEqual([
			['2027-04-03', 'natural-firm', 'cup'],
			['2027-05-05', 'artificial-3g', 'cup'],
		])
		expect((await one.open()).season).toEqual(season)
		await one.save({ ...season, sessions: applyImport(season.sessions ?? [], third) })
		const again = await ask({
			dateOrder: 'day-month',
			'surfaces.3G at the school': 'artificial-3g',
		})
		expect([again.add, again.change, again.remove, again.same]).toEqual([[], [], [], 2])
		expect(
			(
				await one.refused('season.previewImport', {
					playerId: one.playerId,
					text: csv,
					kind: 'csv',
					answers: { dateOrder: 'sideways' },
				})
			).problems,
		).toEqual([{ path: 'answers.dateOrder', message: expect.stringContaining('sideways') }])
		one.app.close()
	})
	test('without first and last day it asks for them', async () => {
		const one = await opened()
		expect(
			(
				await one.refused('season.previewImport', {
					playerId: one.playerId,
					text: csv,
					kind: 'csv',
					answers: {},
				})
			).message,
		).toMatch(/first and last day/)
		one.app.close()
	})
})
