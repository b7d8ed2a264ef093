/** A kind of document that does not apply to a visit ends the command line, and writes nothing. */
import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { beforeEach, expect, it } from 'vitest'
import { type KindName, kindNames } from '../../shared/engine/report/kinds.ts'

const main = fileURLToPath(new URL('../../electron/command/main.ts', import.meta.url))
const read = (name: string) =>
	JSON.parse(readFileSync(new URL(`../../assets/demo/${name}`, import.meta.url), 'utf8'))
const adult = read('visit-adult.json')
const minor = read('visit-adolescent.json')
const { season: _, ...seasonless } = adult
const pictured = (name: string) =>
	JSON.parse(readFileSync(new URL(`../engine/pictures/${name}.json`, import.meta.url), 'utf8'))
const stopped = { ...minor, screening: { ...minor.screening, breathlessOrChestPain: true } }
const sessions = [{ date: '2027-02-02', minutes: 60, kind: 'training', surface: 'natural-firm' }]
const consent = { id: 'C-7', purpose: 'coach', decision: 'permit', given: '2026-12-01' }
interface Refused {
	why: string
	visit: unknown
	says: RegExp
	/** A consent file. */
	consent?: unknown
	args?: string[]
}
/** Of each kind, every way in which it does not apply; none where it always does. */
const table: Record<KindName, Refused[]> = {
	player: [],
	appointment: [],
	guardian: [
		{ why: 'an adult without guardian', visit: adult, says: /^player\.guardian: missing/ },
	],
	referral: [{ why: 'no reason', visit: adult, says: /^referral: no reason/ }],
	'insert-order': [
		{ why: 'no insert', visit: pictured('12-well-player'), says: /^insert: nothing to order/ },
		{
			why: 'both feet held',
			visit: pictured('22-stiff-midfoot'),
			says: /^insert: nothing to order, given left held and right held/,
		},
		{
			why: 'sport held for one foot',
			visit: pictured('04-navicular-suspected'),
			says: /^insert: held/,
		},
	],
	'season-chart': [
		{ why: 'no season', visit: seasonless, says: /^season: no sessions/ },
		{
			why: 'no pair',
			visit: { ...adult, footwear: [], season: { from: '2027-02-01', to: '2027-03-01', sessions } },
			says: /^season: no sessions/,
		},
		{ why: 'sport held', visit: stopped, says: /^season: held/ },
	],
	squad: [
		{
			why: 'no consent to the club',
			visit: minor,
			args: ['--audience', 'club'],
			says: /^Tui Ashdown: consent: missing/,
		},
		{
			why: 'a consent to something else',
			visit: minor,
			args: ['--audience', 'club'],
			consent,
			says: /^Tui Ashdown: consent\.purpose: for something else/,
		},
	],
	coach: [
		{ why: 'no consent', visit: minor, says: /^consent: missing/ },
		{
			why: 'a consent refused',
			visit: minor,
			consent: { ...consent, decision: 'deny' },
			says: /^consent\.decision: not given/,
		},
		{
			why: 'a consent withdrawn',
			visit: minor,
			consent: { ...consent, withdrawn: '2027-01-02' },
			says: /^consent\.withdrawn: withdrawn/,
		},
		{
			why: 'a consent run out',
			visit: minor,
			consent: { ...consent, until: '2027-01-02' },
			says: /^consent\.until: run out/,
		},
	],
}
let folder: string
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'lastwright-applies-'))
})
function written(
	kind: string,
	{ visit, consent: agreed, args = [] }: Omit<Refused, 'why' | 'says'>,
) {
	const file = (name: string, content: unknown) => {
		writeFileSync(join(folder, name), JSON.stringify(content))
		return join(folder, name)
	}
	const out = join(folder, 'out.pdf')
	const given = [
		...['report', file('visit.json', visit), '--kind', kind, '--out', out, ...args],
		...(agreed ? ['--consent', file('consent.json', agreed)] : []),
	]
	const ran = spawnSync(
		process.execPath,
		['--disable-warning=ExperimentalWarning', main, ...given],
		{ encoding: 'utf8' },
	)
	return { ...ran, out }
}

const refused = kindNames.flatMap((kind) => table[kind].map((one) => ({ kind, ...one })))
it.each(refused)('$kind: $why', ({ kind, says, ...given }) => {
	const { status, stdout, stderr, out } = written(kind, given)
	const lines = stderr.trim().split('\n')
	expect({ status, stdout, lines: lines.length }).toEqual({ status: 2, stdout: '', lines: 1 })
	expect(lines[0]).toMatch(says)
	expect(lines[0]).toMatch(/, given .+, allowed: /)
	expect(existsSync(out)).toBe(false)
	expect(readdirSync(folder).filter((name) => name.endsWith('.pdf'))).toEqual([])
})
it('the kinds that always apply are written for a visit that holds next to nothing', () => {
	const bare = {
		format: 'lastwright-visit',
		version: 1,
		player: adult.player,
		visitDate: adult.visitDate,
	}
	const always = kindNames.filter((kind) => table[kind].length === 0)
	expect(always).toEqual(['player', 'appointment'])
	for (const kind of [...always, 'squad']) {
		const { status, stderr, out } = written(kind, { visit: bare })
		expect({ status, stderr }, kind).toEqual({ status: 0, stderr: '' })
		expect(readFileSync(out).subarray(0, 5).toString(), kind).toBe('%PDF-')
	}
})
