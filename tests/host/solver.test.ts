/** The season planned from the outside: worker, cancel, time limit, command line, re-planning. */
import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import ICAL from 'ical.js'
import { afterAll, expect, it } from 'vitest'
import { planSeason } from '../../electron/solver/plan.ts'
import { SolveCancelled, solveSeason } from '../../electron/solver/solve.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { planDifference } from '../../shared/engine/season/difference.ts'
import { planSchema } from '../../shared/engine/season/plan-file.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import type { Session } from '../../shared/engine/visit/visit.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { bigSeason, seasonVisit } from '../engine/random-season.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'lastwright-plan-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const demo = () =>
	visitSchema.parse(JSON.parse(readFileSync(join(root, 'assets/demo/season-visit.json'), 'utf8')))
const training = (date: string, more: Partial<Session> = {}): Session => ({
	id: date,
	date,
	start: '18:00',
	minutes: 75,
	kind: 'training',
	surface: 'natural-firm',
	...more,
})
const firm = { id: 'firm', name: 'firm boots', sole: 'firm-ground' as const, minutesWorn: 1000 }
const turf = { id: 'turf', name: 'turf shoes', sole: 'turf' as const, minutesWorn: 1000 }

it('wet boots rest, and the reason says since when', async () => {
	const plan = await planSeason(
		seasonVisit(
			[firm, turf],
			[training('2027-02-02', { ground: 'wet', surface: 'natural-soft' }), training('2027-02-03')],
		),
	)
	expect(plan.sessions.map(({ pair }) => pair)).toEqual(['firm', 'turf'])
	expect(plan.sessions[1]!.reasonCodes).toContainEqual({
		code: 'season.hindered',
		params: {
			hindrance: {
				is: 'moist',
				pair: 'firm boots',
				ground: 'wet',
				worn: { date: '2027-02-02', from: '2027-02-03' },
			},
		},
	})
})
it('where no pair may be worn the session and the findings say so, with what to buy', async () => {
	const plan = await planSeason(
		seasonVisit(
			[firm],
			[training('2027-02-02'), training('2027-03-03', { surface: 'hall', kind: 'match' })],
		),
	)
	expect(plan.sessions[1]!.pair).toBeUndefined()
	expect(plan.sessions[1]!.unmetCodes).toEqual([
		{
			code: 'season.unmet-no-pair',
			params: {
				begun: false,
				hindrances: [
					{
						is: 'barred',
						pair: 'firm boots',
						barred: { why: 'sole', sole: 'firm-ground', surface: 'hall' },
					},
				],
			},
		},
	])
	expect(plan.findings.map(({ id }) => id)).toContain('season.no-pair')
	expect(plan.purchases[0]).toMatchObject({ sole: 'indoor', neededBy: '2027-03-03' })
})
it('pins are honoured where they may be, and refused where they may not', async () => {
	const plan = await planSeason(
		seasonVisit(
			[firm, turf],
			[
				training('2027-02-02', { pinned: 'turf' }),
				training('2027-02-09', { pinned: 'firm', surface: 'hall' }),
			],
		),
	)
	expect(plan.sessions.map(({ pair }) => pair)).toEqual(['turf', 'turf'])
	const codes = plan.sessions.map(({ reasonCodes = [], unmetCodes = [] }) =>
		[...reasonCodes, ...unmetCodes].map(({ code }) => code),
	)
	expect(codes[0]).toContain('season.chosen')
	expect(codes[1]).toContain('season.unmet-pin-barred')
	expect(plan.findings.map(({ id }) => id)).toContain('season.pin')
})
it('the past stays, the future is solved anew, and the difference is told', async () => {
	const sessions = ['02', '04', '09', '11'].map((day) => training(`2027-02-${day}`))
	const before = await planSeason(seasonVisit([firm, turf], sessions))
	const changed: Record<string, Partial<Session>> = {
		'2027-02-02': { worn: 'turf' },
		'2027-02-09': { ground: 'wet' },
	}
	const rained = sessions.map((session) => ({ ...session, ...changed[session.date] }))
	const after = await planSeason(seasonVisit([firm, turf], [...rained, training('2027-02-10')]), {
		from: '2027-02-05',
		earlier: before,
	})
	expect(after.sessions.slice(0, 2).map(({ past, pair }) => [past, pair])).toEqual([
		[true, 'turf'],
		[true, before.sessions[1]!.pair],
	])
	const told = planDifference(before, after)
	expect(told).toContainEqual(
		expect.objectContaining({
			code: 'season.change-moved',
			params: expect.objectContaining({
				date: '2027-02-09',
				start: '18:00',
				moved: [{ field: 'ground', before: 'dry', after: 'wet' }],
			}),
		}),
	)
	expect(told).toContainEqual(
		expect.objectContaining({
			date: '2027-02-10',
			code: 'season.change-new',
			params: expect.objectContaining({ start: '18:00' }),
		}),
	)
	expect(planDifference(before, before)).toEqual([])
})
it('a current bone stress injury plans nothing', async () => {
	const plan = await planSeason(
		seasonVisit([firm], [training('2027-02-02')], {
			conditions: [{ condition: 'navicular-stress-fracture', side: 'left', status: 'current' }],
		}),
	)
	expect(plan.sessions).toEqual([])
	expect(plan.findings.map(({ id, level }) => [id, level])).toEqual([['season.held', 'stop']])
})
it('cancel ends it at once and leaves the thread free', async () => {
	const { problem } = buildProblem({ visit: bigSeason(2), protocol: openProtocol(), suitability })
	const stop = new AbortController()
	let seen = 0
	const solving = solveSeason(problem, {
		signal: stop.signal,
		onProgress: () => {
			seen++
			stop.abort()
		},
	})
	await expect(solving).rejects.toBeInstanceOf(SolveCancelled)
	expect(seen).toBe(1)
	await expect(solveSeason(problem, { signal: AbortSignal.abort() })).rejects.toBeInstanceOf(
		SolveCancelled,
	)
})
it('a time limit gives a sound plan with its gap', async () => {
	const { problem } = buildProblem({ visit: bigSeason(3), protocol: openProtocol(), suitability })
	const solved = await solveSeason(problem, { timeLimitSeconds: 0.02 })
	expect(solved.status).toBe('time-limit')
	expect(solved.gap).toBeGreaterThanOrEqual(0)
	expect(verify(problem, solved.rotation).problems).toEqual([])
})
const run = (...args: string[]) =>
	spawnSync(
		process.execPath,
		['--disable-warning=ExperimentalWarning', 'electron/command/main.ts', 'plan', ...args],
		{ cwd: root, encoding: 'utf8' },
	)
it('plan on the command line exits 2 with one line where the season is held, and writes nothing', () => {
	const [given, out] = [join(folder, 'held.json'), join(folder, 'held-plan.json')]
	const visit = seasonVisit([firm], [training('2027-02-02')], { screening: { nightPain: true } })
	writeFileSync(given, JSON.stringify(visit))
	const done = run(given, '--out', out)
	expect([done.status, done.stdout]).toEqual([2, ''])
	expect(done.stderr.trim().split('\n')).toEqual([expect.stringMatching(/^season: held\. /)])
	expect(existsSync(out)).toBe(false)
})
it('plan on the command line writes both files and nothing else', () => {
	const [out, ics] = [join(folder, 'plan.json'), join(folder, 'plan.ics')]
	const done = run(
		'assets/demo/season-visit.json',
		'--out',
		out,
		'--ics',
		ics,
		'--zone',
		'Australia/Melbourne',
	)
	expect([done.status, done.stdout, done.stderr]).toEqual([0, '', ''])
	const plan = planSchema.parse(JSON.parse(readFileSync(out, 'utf8')))
	expect(plan.sessions.map(({ date, start }) => `${date} ${start}`)).toEqual(
		plan.sessions.map(({ date, start }) => `${date} ${start}`).sort(),
	)
	expect(plan.sessions.find(({ id }) => id === 'sat:2027-05-22')!.pair).toBe('firm')
	expect(
		new ICAL.Component(ICAL.parse(readFileSync(ics, 'utf8'))).getAllSubcomponents('vevent').length,
	).toBe(plan.sessions.length)
}, 120_000)
it('bad input exits 2 with one line per problem', () => {
	const bare = run('assets/demo/season-visit.json')
	expect([bare.status, bare.stderr]).toEqual([
		2,
		'--out: missing, given nothing, allowed: the name of the plan file to write\n',
	])
	const visit = join(folder, 'visit.json')
	writeFileSync(visit, JSON.stringify({ ...demo(), season: undefined }))
	const none = run(visit, '--out', join(folder, 'x.json'))
	expect([none.status, none.stderr]).toEqual([2, expect.stringContaining('season: missing')])
	expect(
		run('assets/demo/season-visit.json', '--out', join(folder, 'none/x.json')).stderr,
	).toContain('--out: cannot be written (ENOENT)')
}, 120_000)
