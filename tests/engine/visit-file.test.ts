import { execFileSync, spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parseVisit } from '../../shared/engine/visit/parse.ts'
import { problemLine } from '../../shared/engine/visit/problems.ts'

const good = () =>
	JSON.parse(
		readFileSync(new URL('../../assets/demo/visit-adolescent.json', import.meta.url), 'utf8'),
	)
const lines = (input: unknown) => {
	const parsed = parseVisit(input)
	return parsed.ok ? [] : parsed.problems.map(problemLine)
}
const changed = (change: (visit: ReturnType<typeof good>) => void) => {
	const visit = good()
	change(visit)
	return lines(visit)
}

describe('a visit file', () => {
	it('is read when it is right', () => expect(lines(good())).toEqual([]))
	it.each<[string, (visit: ReturnType<typeof good>) => void, string]>([
		[
			'unknown key',
			(v) => {
				v.feet.left.heelToeMm = 250
			},
			'feet.left.heelToeMm: unknown key, given 250, allowed: only the keys of the file format',
		],
		[
			'impossible date',
			(v) => {
				v.visitDate = '2027-02-30'
			},
			'visitDate: wrong form, given "2027-02-30", allowed: a date that exists, YYYY-MM-DD',
		],
		[
			'too long a foot',
			(v) => {
				v.feet.right.heelToToeMm = [2490, 248]
			},
			'feet.right.heelToToeMm.0: too large, given 2490, allowed: 400 or less',
		],
		[
			'text for a number',
			(v) => {
				v.body.massKg = '46,2'
			},
			'body.massKg: wrong type, given "46,2", allowed: a number',
		],
		[
			'text among repeats',
			(v) => {
				v.ankles.left.lungeCm = [7, 'x']
			},
			'ankles.left.lungeCm.1: wrong type, given "x", allowed: a number',
		],
		[
			'sitting above stature',
			(v) => {
				v.body.sittingHeightCm = 129
				v.body.statureCm = 120
			},
			'body.sittingHeightCm: not below stature, given 129, allowed: less than the stature of ' +
				'120 cm (take off the height of the stool)',
		],
		[
			'future version',
			(v) => {
				v.version = 2
			},
			'version: a version of the future, given 2, allowed: 1 (open this file with a newer ' +
				'Lastwright)',
		],
		[
			'unknown term',
			(v) => {
				v.footwear[0].sole = 'blades'
			},
			'footwear.0.sole: not one of the terms, given "blades", allowed: soft-ground, ' +
				'firm-ground, artificial-ground, turf, indoor, trail, road',
		],
		[
			'missing name',
			(v) => {
				delete v.player.familyName
			},
			'player.familyName: missing, given nothing, allowed: text',
		],
		[
			'born after the visit',
			(v) => {
				v.player.birthDate = '2028-01-01'
			},
			'player.birthDate: not before the visit, given "2028-01-01", allowed: a date before ' +
				'2027-01-20',
		],
		[
			'five FPI items',
			(v) => {
				v.posture.left.fpi6 = [1, 1, 1, 1, 1]
			},
			'posture.left.fpi6: too short, given a list of 5, allowed: at least 6 entries',
		],
		[
			'null for a measure',
			(v) => {
				v.body.statureCm = null
			},
			'body.statureCm: wrong type, given null, allowed: a number',
		],
	])('%s is named with its path', (_name, change, line) => expect(changed(change)).toContain(line))
	it.each([[null], [[]], ['text'], [3]])('%j is not a visit', (input) =>
		expect(lines(input)[0]).toMatch(/^\(file\): not a visit/),
	)
})

const node = process.execPath
const main = new URL('../../electron/command/main.ts', import.meta.url).pathname
const run = (args: string[], input?: string) =>
	spawnSync(node, ['--disable-warning=ExperimentalWarning', main, ...args], {
		encoding: 'utf8',
		...(input === undefined ? {} : { input }),
	})

describe('the command line', () => {
	it('prints the assessment and nothing else', () => {
		const out = execFileSync(node, ['--disable-warning=ExperimentalWarning', main, 'assess', '-'], {
			input: JSON.stringify(good()),
			encoding: 'utf8',
		})
		const assessment = JSON.parse(out)
		expect(assessment.format).toBe('lastwright-assessment')
		// mean of 249 and 248 is the longer foot; 248.5 mm is 9.783 in, UK 3 x in - 23 = 6.35
		// (sizing.md 1.2)
		expect(assessment.sizing.longerFoot).toBe('right')
		expect(assessment.sizing.sizes.uk.exact).toBeCloseTo(6.35, 2)
		expect(assessment.ankle.asymmetryCm).toBeCloseTo(2.4, 6)
		expect(out).not.toMatch(/NaN|undefined|null/)
	})
	it.each([
		[['assess', '-'], '{"format":', 2, /^\(file\): not JSON/],
		[
			['assess', '-'],
			'{"format":"lastwright-visit","body":{"massKg":60,"massKg":90}}',
			2,
			/^body\.massKg: given twice/,
		],
		[['assess', 'no-such-file.json'], undefined, 2, /no such file/],
		[['dance'], undefined, 2, /^command: unknown, given "dance"/],
		[['schema', 'shoe'], undefined, 2, /^NAME: no such schema, given "shoe"/],
		[['report', '-', '--kind', 'poster', '--out', 'x.pdf'], '{}', 2, /^--kind: not a kind/],
		[['assess', '-', '--fast'], '{}', 2, /^arguments: /],
	])('%j answers with code 2 and one line a problem', (args, input, code, line) => {
		const done = run(args as string[], input)
		expect(done.status).toBe(code)
		expect(done.stderr).toMatch(line)
		expect(done.stderr).not.toMatch(/\n\s+at /)
		expect(done.stdout).toBe('')
	})
	it('prints the JSON Schema of a visit with units', () => {
		const done = run(['schema', 'visit'])
		expect(done.status).toBe(0)
		expect(JSON.parse(done.stdout).properties.body.properties.massKg).toMatchObject({
			type: 'number',
			unit: 'kg',
			maximum: 250,
		})
	})
})
