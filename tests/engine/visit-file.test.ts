/** The visit file: what is refused, by code, place and figures; and the command line that reads it. */
import { execFileSync, spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parseVisit } from '../../shared/engine/visit/parse.ts'

const good = () =>
	JSON.parse(
		readFileSync(new URL('../../assets/demo/visit-adolescent.json', import.meta.url), 'utf8'),
	)
const problemsIn = (input: unknown) => {
	const parsed = parseVisit(input)
	return parsed.ok ? [] : parsed.problems.map(({ path, code, params }) => ({ path, code, params }))
}
const changed = (change: (visit: ReturnType<typeof good>) => void) => {
	const visit = good()
	change(visit)
	return problemsIn(visit)
}
const soles = 'soft-ground firm-ground artificial-ground turf indoor trail road'.split(' ')

describe('a visit file', () => {
	it('is read when it is right', () => expect(problemsIn(good())).toEqual([]))
	it.each<[code: string, path: string, params: object, (visit: ReturnType<typeof good>) => void]>([
		[
			'unknown-key',
			'feet.left.heelToeMm',
			{ given: 250 },
			(v) => {
				v.feet.left.heelToeMm = 250
			},
		],
		[
			'not-a-date',
			'visitDate',
			{ given: '2027-02-30' },
			(v) => {
				v.visitDate = '2027-02-30'
			},
		],
		[
			'too-large',
			'feet.right.heelToToeMm.0',
			{ given: 2490, most: 400 },
			(v) => {
				v.feet.right.heelToToeMm = [2490, 248]
			},
		],
		[
			'wrong-type',
			'body.massKg',
			{ given: '46,2', expected: 'number' },
			(v) => {
				v.body.massKg = '46,2'
			},
		],
		[
			'wrong-type',
			'ankles.left.lungeCm.1',
			{ given: 'x', expected: 'number' },
			(v) => {
				v.ankles.left.lungeCm = [7, 'x']
			},
		],
		[
			'not-below-stature',
			'body.sittingHeightCm',
			{ given: 129, statureCm: 120 },
			(v) => {
				v.body.sittingHeightCm = 129
				v.body.statureCm = 120
			},
		],
		[
			'newer-version',
			'version',
			{ given: 2 },
			(v) => {
				v.version = 2
			},
		],
		[
			'not-a-term',
			'footwear.0.sole',
			{ given: 'blades', terms: soles },
			(v) => {
				v.footwear[0].sole = 'blades'
			},
		],
		[
			'missing',
			'player.familyName',
			{ expected: 'string' },
			(v) => {
				delete v.player.familyName
			},
		],
		[
			'not-before-visit',
			'player.birthDate',
			{ given: '2028-01-01', visitDate: '2027-01-20' },
			(v) => {
				v.player.birthDate = '2028-01-01'
			},
		],
		[
			'too-short',
			'posture.left.fpi6',
			{ given: { list: 5 }, least: 6, of: 'entries' },
			(v) => {
				v.posture.left.fpi6 = [1, 1, 1, 1, 1]
			},
		],
		[
			'wrong-type',
			'body.statureCm',
			{ given: null, expected: 'number' },
			(v) => {
				v.body.statureCm = null
			},
		],
	])('%s at %s: %j', (code, path, params, change) =>
		expect(changed(change)).toContainEqual({ code, path, params }),
	)
	it.each([
		[null, null],
		[[], { list: 0 }],
		['text', 'text'],
		[3, 3],
	])('%j is not a visit', (input, given) =>
		expect(problemsIn(input)).toEqual([
			{
				code: 'not-this-file',
				path: '(file)',
				params: { given, word: 'visit', format: 'lastwright-visit' },
			},
		]),
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
		const { massKg, adultStatureCm } = JSON.parse(done.stdout).properties.body.properties
		expect(adultStatureCm).toMatchObject({ type: 'number', unit: 'cm', maximum: 240 })
		// once or as repeats
		const reading = { type: 'number', unit: 'kg', maximum: 250 }
		expect(massKg).toMatchObject({
			anyOf: [reading, { type: 'array', maxItems: 6, items: reading }],
		})
	})
})
