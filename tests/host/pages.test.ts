/**
 * Every page of every kind over the clinical pictures and the demo: what stands on it and where, and
 * some of them as coarse pictures, so that a page that changed is looked at. Renewed by
 * `npx vitest run --project host tests/host/pages.test.ts -u`.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { planSeason } from '../../electron/solver/plan.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import {
	type KindInput,
	type KindName,
	kindNames,
	kinds,
} from '../../shared/engine/report/kinds.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { clinic, json, read } from '../demo.ts'
import { demoNames, inputOf, measured } from './kind-input.ts'
import { faultsOf } from './page-checks.ts'
import { type MarkedPage, markedPages } from './page-marks.ts'
import { looksAlike, rasterOf } from './page-raster.ts'

/**
 * The most pages of text, and the smallest letters: those of the foot, of notes and of what stands
 * at true size. What hangs on a wall has no such small ones.
 */
const limits: Record<KindName, { mostPages: number; leastPt: number; edge: number }> = {
	player: { mostPages: 3, leastPt: 7, edge: 53.5 },
	appointment: { mostPages: 1, leastPt: 7, edge: 53.5 },
	guardian: { mostPages: 2, leastPt: 6.3, edge: 53.5 },
	referral: { mostPages: 2, leastPt: 6.3, edge: 53.5 },
	'insert-order': { mostPages: 2, leastPt: 6.3, edge: 53.5 },
	'season-chart': { mostPages: 2, leastPt: 8, edge: 29.5 },
	squad: { mostPages: 2, leastPt: 7, edge: 53.5 },
	coach: { mostPages: 2, leastPt: 7, edge: 53.5 },
}
const folder = new URL('../engine/pictures/', import.meta.url)
const pictures = readdirSync(folder).filter((name) => name.endsWith('.json'))
const picture = (name: string): Visit =>
	read(JSON.parse(readFileSync(new URL(name, folder), 'utf8')))
const visits: [string, () => Visit][] = [
	...demoNames.map((name): [string, () => Visit] => [
		name.replace(/^visit-|\.json$/g, ''),
		() => measured(name),
	]),
	['season', () => read(json('season-visit.json'))],
	...pictures.map((name): [string, () => Visit] => [
		name.replace('.json', ''),
		() => picture(name),
	]),
]

/** The pages that are kept as coarse pictures, by visit. */
const kept: Record<string, readonly string[]> = {
	adolescent: ['player', 'appointment', 'guardian', 'referral', 'coach', 'squad', 'squad-club'],
	adult: ['player', 'insert-order', 'coach', 'season-chart'],
	season: ['season-chart', 'player'],
	'02-painful-flat-foot': ['insert-order'],
	'04-navicular-suspected': ['player', 'insert-order'],
	'08-rupture': ['player', 'referral'],
	'10-diabetic-foot': ['player'],
	'14-hip-of-a-boy': ['guardian', 'player', 'coach', 'squad'],
	'15-old-hand': ['season-chart', 'player'],
	'23-bones-healing': ['referral', 'squad-club'],
	letter: ['player', 'season-chart', 'insert-order'],
	'wide logo': ['player', 'guardian'],
	'twelve pairs': ['season-chart'],
}
const rasterFile = (visit: string, name: string): string =>
	`./fixtures/pages/${visit.replace(' ', '-')}-${name}.txt`
/** The pages against those that are kept: what hardly differs is as it was. */
async function againstKept(pages: readonly MarkedPage[], file: string): Promise<void> {
	const now = pages.map(rasterOf)
	const url = new URL(file, import.meta.url)
	const between = `\n${'='.repeat(40)}\n`
	const before = existsSync(url) ? readFileSync(url, 'utf8').trimEnd().split(between) : []
	const isAsBefore =
		before.length === now.length && now.every((page, at) => looksAlike(before[at] ?? '', page))
	await expect(`${(isAsBefore ? before : now).join(between)}\n`).toMatchFileSnapshot(file)
}
interface Made {
	name: string
	kind: KindName
	document: LwDocument
}
async function documentsOf(visit: Visit, more: Partial<KindInput> = {}): Promise<Made[]> {
	const plan =
		more.plan ??
		(visit.season && (visit.footwear?.length ?? 0) > 0 ? await planSeason(visit) : undefined)
	return kindNames.flatMap((kind) =>
		(kind === 'squad' ? (['clinician', 'club'] as const) : (['clinician'] as const)).flatMap(
			(audience): Made[] => {
				const input = inputOf(visit, kind, { audience, ...(plan && { plan }), ...more })
				if (kinds[kind].problems(input).length > 0) return []
				const name = audience === 'club' ? 'squad-club' : kind
				return [{ name, kind, document: kinds[kind].compose(input) }]
			},
		),
	)
}
/** Each document is drawn once, and held against all that is asked of it. */
async function hold(visit: string, made: readonly Made[], morePages = 0): Promise<void> {
	const drawn = await Promise.all(
		made.map(async (one) => ({ ...one, pages: await markedPages(await renderPdf(one.document)) })),
	)
	const faults = drawn.flatMap(({ name, kind, document, pages }) => {
		const { mostPages, ...limit } = limits[kind]
		return faultsOf(pages, document, { ...limit, mostPages: mostPages + morePages }).map(
			(fault) => `${name}: ${fault}`,
		)
	})
	expect.soft(faults).toEqual([])
	for (const { name, pages } of drawn)
		if (kept[visit]?.includes(name)) await againstKept(pages, rasterFile(visit, name))
}
describe('the pages of every kind', () => {
	it('are those of twenty-six clinical pictures', () => expect(pictures).toHaveLength(26))
	it.each(visits)('are whole and in their margins: %s', async (name, visit) =>
		hold(name, await documentsOf(visit())),
	)
})

const svg = (width: number, height: number) => ({
	mediaType: 'image/svg+xml' as const,
	base64: Buffer.from(
		`<svg viewBox="0 0 ${width} ${height}"><path d="M0 0H${width}V${height}H0Z" fill="#446688"/></svg>`,
	).toString('base64'),
})
const { logo: _logo, ...withoutLogo } = clinic
const long = 'Featherstonehaughhohenbrunnachterbergfeatherstonehaugh'
const longNamed = (visit: Visit): Visit => ({
	...visit,
	player: {
		...visit.player,
		givenName: 'Maximiliana-Theodora',
		familyName: long,
		club: `${long} Rovers`,
		...(visit.player.guardian && { guardian: { ...visit.player.guardian, name: `Rae ${long}` } }),
	},
	...(visit.footwear && {
		footwear: visit.footwear.map((pair) => ({ ...pair, name: `${long} boots` })),
	}),
})
const twelvePairs = Array.from({ length: 12 }, (_, at) => ({
	id: `p${at + 1}`,
	letter: String.fromCharCode(65 + at),
	name: `pair number ${at + 1}`,
	sole: 'firm-ground',
}))
const twelvePlan = {
	pairs: twelvePairs,
	sessions: Array.from({ length: 48 }, (_, at) => ({
		date: new Date(Date.UTC(2027, 2, 2 + at * 2)).toISOString().slice(0, 10),
		start: '18:00',
		kind: at % 3 === 2 ? ('match' as const) : ('training' as const),
		surface: 'natural-firm',
		pair: `p${(at % 12) + 1}`,
	})),
}
const [young = '', grown = ''] = demoNames
const variants: [string, (visit: Visit) => Visit, Partial<KindInput>][] = [
	['no logo', (visit) => visit, { clinic: withoutLogo }],
	['wide logo', (visit) => visit, { clinic: { ...clinic, logo: svg(1000, 100) } }],
	['tall logo', (visit) => visit, { clinic: { ...clinic, logo: svg(100, 500) } }],
	['letter', (visit) => visit, { clinic: { ...clinic, paper: 'Letter' } }],
	['twelve pairs', (visit) => visit, { plan: twelvePlan }],
	['long names', longNamed, {}],
]
describe('the pages of every kind, whatever the clinic and the player', () => {
	it.each(variants)('are whole and in their margins: %s', async (name, changed, more) => {
		const [first, second] = await Promise.all([
			documentsOf(changed(measured(young)), more),
			documentsOf(changed(measured(grown)), more),
		])
		// of both where a kind is of one alone
		const others = second.filter(({ kind }) => !first.some((one) => one.kind === kind))
		await hold(name, [...first, ...others], name === 'long names' ? 1 : 0)
	})
	it('tell twelve pairs apart without colour: eleven patterns and a plain field', async () => {
		const visit = measured(young)
		for (const letters of [true, false]) {
			const pairs = twelvePairs.map(({ letter, ...pair }) => (letters ? { ...pair, letter } : pair))
			const plan = { ...twelvePlan, pairs }
			const document = kinds['season-chart'].compose(inputOf(visit, 'season-chart', { plan }))
			const marks = (await markedPages(await renderPdf(document))).flatMap((page) => page.marks)
			const patterns = marks.flatMap((mark) => (mark.kind === 'area' ? (mark.pattern ?? []) : []))
			expect(new Set(patterns).size).toBe(11)
		}
	})
	it('give a logo of any proportion room to be read, and leave no gap without one', async () => {
		const visit = measured(young)
		const nameAt = async (logo?: ReturnType<typeof svg>) => {
			const head = { clinic: { ...withoutLogo, ...(logo && { logo }) } }
			const { letterhead, ...document } = kinds.guardian.compose(inputOf(visit, 'guardian', head))
			const drawn = await renderPdf({ ...document, letterhead }, { logoMustShow: true })
			const [page] = await markedPages(drawn)
			const ink = 1 - (0.299 * 0x44 + 0.587 * 0x66 + 0.114 * 0x88) / 255
			const area = page!.marks.find((mark) => Math.abs(mark.ink - ink) < 0.001)
			const [name] = page!.marks.filter(({ kind }) => kind === 'text')
			return { area: area?.box ?? name!.box, name: name!.box }
		}
		const bare = await nameAt()
		expect(bare.name.left).toBeCloseTo(54, 0)
		for (const [wide, high] of [
			[1000, 100],
			[300, 100],
			[100, 100],
			[100, 500],
			[4000, 100],
		] as const) {
			const { area, name } = await nameAt(svg(wide, high))
			const [width, height] = [area.right - area.left, area.bottom - area.top]
			expect(width / height).toBeCloseTo(wide / high, 1)
			expect(height).toBeGreaterThanOrEqual(11)
			expect(height).toBeLessThanOrEqual(60)
			expect(width).toBeGreaterThanOrEqual(9)
			// beside the name, or on a line above it
			if (wide / high <= 10) expect(name.left).toBeCloseTo(area.right + 14, 0)
			else expect(name.top).toBeGreaterThan(area.bottom)
		}
	})
	it('are of US Letter in every kind where the clinic prints on it', async () => {
		const input = { clinic: { ...clinic, paper: 'Letter' as const } }
		for (const { name, document } of await documentsOf(measured(grown), input))
			expect(document.paper, name).toBe('Letter')
	})
})
