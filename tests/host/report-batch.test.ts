/** Many reports by one call of the command line. */
import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { beforeEach, expect, it } from 'vitest'
import { kindNames } from '../../shared/engine/report/kinds.ts'
import { pagesOf, wordsOf } from './read-pages.ts'

const main = fileURLToPath(new URL('../../electron/command/main.ts', import.meta.url))
const demo = (name: string) => fileURLToPath(new URL(`../../assets/demo/${name}`, import.meta.url))
const picture = (name: string) =>
	fileURLToPath(new URL(`../engine/pictures/${name}.json`, import.meta.url))
const report = (...args: string[]) =>
	spawnSync(process.execPath, ['--disable-warning=ExperimentalWarning', main, 'report', ...args], {
		encoding: 'utf8',
	})
let folder: string
let out: string
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'lastwright-batch-'))
	out = join(folder, 'made', 'pages')
})

it('writes a file for each visit, named as its own, and alike names apart', async () => {
	mkdirSync(join(folder, 'other'))
	const again = join(folder, 'other', 'visit-adult.json')
	cpSync(demo('visit-adult.json'), again)
	const visits = [demo('visit-adult.json'), demo('visit-adolescent.json'), again]
	const { status, stderr, stdout } = report(...visits, '--kind', 'player', '--out-dir', out)
	expect({ status, stderr, stdout }).toEqual({ status: 0, stderr: '', stdout: '' })
	expect(readdirSync(out).sort()).toEqual([
		'visit-adolescent.pdf',
		'visit-adult-2.pdf',
		'visit-adult.pdf',
	])
	const of = (name: string) => readFileSync(join(out, name))
	expect(of('visit-adult-2.pdf').equals(of('visit-adult.pdf'))).toBe(true)
	expect(wordsOf(await pagesOf(of('visit-adolescent.pdf')))).toContain('Ashdown')
	// the same bytes as alone
	const alone = join(folder, 'alone.pdf')
	expect(report(visits[0]!, '--kind', 'player', '--out', alone).status).toBe(0)
	expect(readFileSync(alone).equals(of('visit-adult.pdf'))).toBe(true)
})
it('names the visit to which the kind does not apply, and writes the others', () => {
	const { status, stderr } = report(
		demo('visit-adolescent.json'),
		demo('visit-adult.json'),
		'--kind',
		'guardian',
		'--out-dir',
		out,
	)
	expect(status).toBe(2)
	expect(stderr.trim().split('\n')).toEqual([
		expect.stringMatching(/visit-adult\.json: player\.guardian: missing/),
	])
	expect(readdirSync(out)).toEqual(['visit-adolescent.pdf'])
})
it('refuses one file for several visits, and both ways at once', () => {
	const two = [demo('visit-adult.json'), demo('visit-adolescent.json'), '--kind', 'player']
	const file = join(folder, 'one.pdf')
	expect(report(...two, '--out', file)).toMatchObject({
		status: 2,
		stderr: expect.stringContaining('--out: one file for 2 visits'),
	})
	expect(report(...two, '--out', file, '--out-dir', out)).toMatchObject({
		status: 2,
		stderr: expect.stringContaining('--out-dir: not beside --out'),
	})
	for (const name of ['consent', 'plan', 'earlier', 'member'])
		expect(report(...two, '--out-dir', out, `--${name}`, 'of-one.json')).toMatchObject({
			status: 2,
			stderr: expect.stringContaining(`--${name}: of one visit, given 2 visits`),
		})
	expect(report('--kind', 'player', '--out-dir', out)).toMatchObject({
		status: 2,
		stderr: expect.stringContaining('arguments: VISIT.json... expected'),
	})
	expect(readdirSync(folder)).toEqual([])
})
it('writes the accessible page of each kind, by the end of its name or by --format', () => {
	const adolescent = demo('visit-adolescent.json')
	const consent = join(folder, 'consent.json')
	writeFileSync(consent, '{"id":"C-7","purpose":"coach","decision":"permit","given":"2027-01-20"}')
	const given: readonly (readonly [kind: string, visit: string, ...more: string[]])[] = [
		['player', adolescent],
		['appointment', adolescent],
		['guardian', adolescent],
		['referral', picture('04-navicular-suspected')],
		['insert-order', demo('visit-adult.json')],
		['season-chart', demo('season-visit.json')],
		['squad', adolescent],
		['coach', adolescent, '--consent', consent],
	]
	expect(given.map(([kind]) => kind)).toEqual(kindNames)
	for (const [kind, visit, ...more] of given) {
		const page = join(folder, `${kind}.html`)
		const { status, stderr } = report(visit, '--kind', kind, '--out', page, ...more)
		expect({ kind, status, stderr }).toEqual({ kind, status: 0, stderr: '' })
		expect(readFileSync(page, 'utf8')).toMatch(/^<!doctype html>\n<html lang="en">[\s\S]*<h1>/)
	}
	const two = [adolescent, demo('visit-adult.json'), '--kind', 'player', '--out-dir', out]
	expect(report(...two, '--format', 'html').status).toBe(0)
	expect(readdirSync(out).sort()).toEqual(['visit-adolescent.html', 'visit-adult.html'])
	expect(report(...two, '--format', 'odt')).toMatchObject({
		status: 2,
		stderr: expect.stringContaining('--format: no such form of a document, given "odt"'),
	})
})
