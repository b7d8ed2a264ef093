/**
 * Forty player reports, from the start of the process to the last file, against a browser and an
 * office program that print the very same documents from their accessible pages. The pages are made
 * beforehand, outside the time: what is compared is the way to the PDF. All of them do their work once
 * in each round, so that a busy moment meets each.
 */
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'

interface Line {
	name: string
	value: number
	unit: string
	limit: number
}
const reports = 40
const rounds = 5
const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url))
const main = at('../../build/program/main.js')
const pictures = at('../engine/pictures/')
const quiet = '--disable-warning=ExperimentalWarning'

/** Visits of every picture in turn. @returns their files */
function visitsIn(folder: string): string[] {
	mkdirSync(folder)
	const names = readdirSync(pictures).filter((name) => name.endsWith('.json'))
	return Array.from({ length: reports }, (_, index) => {
		const file = join(folder, `visit-${String(index).padStart(2, '0')}.json`)
		writeFileSync(file, readFileSync(join(pictures, names[index % names.length] ?? '')))
		return file
	})
}
interface Program {
	name: string
	command: string
	args: (out: string) => string[]
}
/** What the program before left running has ended by then. */
const restMs = 1500
/** @throws Error where it did not write a PDF of each: what is not done is not fast */
async function secondsOf({ name, command, args }: Program, out: string): Promise<number> {
	rmSync(out, { recursive: true, force: true })
	mkdirSync(out)
	await setTimeout(restMs)
	const begun = performance.now()
	const { status, stderr, error } = spawnSync(command, args(out), { encoding: 'utf8' })
	const seconds = (performance.now() - begun) / 1000
	const made = readdirSync(out).filter((file) => file.endsWith('.pdf'))
	if (status !== 0 || made.length !== reports)
		throw new Error(`${name}: ${made.length} of ${reports} written. ${error?.message ?? stderr}`)
	for (const file of made)
		if (!readFileSync(join(out, file)).subarray(0, 5).equals(Buffer.from('%PDF-')))
			throw new Error(`${name}: ${file} is no PDF`)
	return seconds
}
const isThere = (command: string): boolean =>
	spawnSync(command, ['--version'], { encoding: 'utf8' }).status === 0

export async function manyReportsBench(): Promise<Line[]> {
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-many-'))
	const visits = visitsIn(join(folder, 'visits'))
	const pages = join(folder, 'pages')
	const report = ['report', ...visits, '--kind', 'player', '--out-dir']
	spawnSync(process.execPath, [quiet, main, ...report, pages, '--format', 'html'])
	const files = readdirSync(pages).map((name) => join(pages, name))
	const browser = process.env.LASTWRIGHT_BROWSER ?? 'chromium'
	const own: Program = {
		name: 'Lastwright',
		command: process.execPath,
		args: (out) => [quiet, main, ...report, out],
	}
	const others: Program[] = [
		{
			name: 'a browser that prints them',
			command: process.execPath,
			args: (out) => [quiet, at('./browser-prints.ts'), browser, out, ...files],
		},
		{
			name: 'an office program that converts them',
			command: 'soffice',
			args: (out) => [
				...[`-env:UserInstallation=file://${join(folder, 'office')}`, '--headless'],
				...['--convert-to', 'pdf', '--outdir', out, ...files],
			],
		},
	]
	const there = others.filter(({ command, name }) => {
		const program = command === process.execPath ? browser : command
		if (isThere(program)) return true
		process.stdout.write(`${reports} reports against ${name}: skipped, no ${program} here.\n`)
		return false
	})
	const out = join(folder, 'out')
	const times: { own: number; others: number[] }[] = []
	for (let round = 0; round < rounds; round++) {
		const seconds = await secondsOf(own, out)
		const others: number[] = []
		for (const program of there) others.push(await secondsOf(program, out))
		times.push({ own: seconds, others })
	}
	const lines = there.map(({ name }, which): Line => {
		const ratios = times
			.map((round) => round.own / (round.others[which] ?? Number.NaN))
			.toSorted((a, b) => a - b)
		const [least, middle, most] = [0, (rounds - 1) / 2, rounds - 1].map((place) => ratios[place])
		return {
			name:
				`${reports} player reports from the start of the process, against ${name} ` +
				`(${least?.toFixed(2)} to ${most?.toFixed(2)})`,
			value: middle ?? Number.NaN,
			unit: 'times',
			limit: 1,
		}
	})
	const seconds = times.map((round) => round.own).toSorted((a, b) => a - b)
	rmSync(folder, { recursive: true, force: true })
	return [
		...lines,
		{
			name: `${reports} player reports (for comparison)`,
			value: seconds[(rounds - 1) / 2] ?? Number.NaN,
			unit: 's',
			limit: Number.POSITIVE_INFINITY,
		},
	]
}
