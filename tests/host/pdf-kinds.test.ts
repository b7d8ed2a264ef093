/** Documents as real pages, read back with an independent reader; pages.test.ts holds every page. */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { assess } from '../../shared/engine/assess.ts'
import { addDays } from '../../shared/engine/plain/days.ts'
import { settleAll } from '../../shared/engine/prescription/answers.ts'
import { kinds } from '../../shared/engine/report/kinds.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { clinic, json, read } from '../demo.ts'
import { decisions, demoNames, inputOf, measured } from './kind-input.ts'
import { type Page, pagesOf, wordsOf } from './read-pages.ts'

function inside(pages: Page[], edge: number) {
	for (const page of pages)
		for (const item of page.items) {
			expect(item.x, item.str).toBeGreaterThanOrEqual(edge)
			expect(item.x + item.width, item.str).toBeLessThanOrEqual(page.width - edge)
			expect(item.y, item.str).toBeGreaterThan(10)
			expect(item.y, item.str).toBeLessThan(page.height - 10)
		}
}
describe('every kind as pages', () => {
	const folder = new URL('../engine/pictures/', import.meta.url)
	const pictures = readdirSync(folder).filter((name) => name.endsWith('.json'))
	it.each(demoNames)('holds guardian and referral on one page each: %s', async (name) => {
		for (const kind of ['guardian', 'referral'] as const)
			expect(
				await pagesOf(await renderPdf(kinds[kind].compose(inputOf(measured(name), kind)))),
				kind,
			).toHaveLength(1)
	})
	it('holds the report of most players on two pages, and none runs to four', async () => {
		const counts: number[] = []
		for (const name of pictures) {
			const visit = read(JSON.parse(readFileSync(new URL(name, folder), 'utf8')))
			const settled = settleAll(decisions, assess(visit).prescription, 'asked elsewhere')
			const document = kinds.player.compose({ ...inputOf(visit, 'player'), decisions: settled })
			counts.push((await pagesOf(await renderPdf(document))).length)
		}
		expect(Math.max(...counts)).toBeLessThanOrEqual(3)
		expect(counts.filter((count) => count === 2).length).toBeGreaterThanOrEqual(18)
	}, 60_000)
	it.each([
		['A4', 595.28],
		['Letter', 612],
		['A3', 841.89],
	] as const)('holds half a season on one page of %s, its letters large', async (paper, width) => {
		const input = inputOf(measured(demoNames[0]!), 'season-chart', { paper })
		const day = (week: number, weekday: number) => addDays('2027-02-01', 7 * week + weekday)
		const sessions = Array.from({ length: 26 }, (_, week) =>
			[1, 3, 5].map((weekday) => ({
				date: day(week, weekday),
				start: week % 3 === 0 && weekday === 5 ? '19:30' : '18:00',
				kind: weekday === 5 ? ('match' as const) : ('training' as const),
				surface: 'natural-firm',
				pair: week % 4 === 0 ? 'p2' : 'p1',
			})),
		).flat()
		const pairs = [
			{ id: 'p1', letter: 'A', name: 'match boots', sole: 'firm-ground' },
			{ id: 'p2', letter: 'B', name: 'trainers', sole: 'trail', replaceBy: '2027-05-01' },
		]
		const pages = await pagesOf(
			await renderPdf(kinds['season-chart'].compose({ ...input, plan: { sessions, pairs } })),
		)
		expect(pages).toHaveLength(1)
		expect(pages[0]!.width).toBeCloseTo(width, 1)
		const words = wordsOf(pages)
		for (const date of ['1 Feb', '26 Jul', 'new B', 'match boots']) expect(words).toContain(date)
		for (const item of pages[0]!.items) {
			expect(item.size, item.str).toBeGreaterThanOrEqual(8)
			if (/^[AB]$/.test(item.str.trim())) expect(item.size).toBeGreaterThanOrEqual(10.1)
		}
		inside(pages, 29)
	})
	it('prints on Letter where the clinic asks for it', async () => {
		const pages = await pagesOf(
			await renderPdf(
				kinds.player.compose(
					inputOf(measured(demoNames[1]!), 'player', { clinic: { ...clinic, paper: 'Letter' } }),
				),
			),
		)
		expect([pages[0]!.width, pages[0]!.height]).toEqual([612, 792])
		inside(pages, 50)
	})
	it.each(['player', 'insert-order', 'season-chart', 'squad'] as const)(
		'gives the same bytes for the same input: %s',
		async (kind) => {
			const digest = async () =>
				createHash('sha256')
					.update(await renderPdf(kinds[kind].compose(inputOf(measured(demoNames[0]!), kind))))
					.digest('hex')
			expect(await digest()).toBe(await digest())
		},
	)
	it('holds 200 squad rows, very long names and very long lists', async () => {
		const visit = read(json(demoNames[0]!))
		const members = Array.from({ length: 199 }, (_, at) => ({
			visit: {
				...visit,
				player: {
					...visit.player,
					givenName: `Player${at}`,
					familyName:
						at === 7 ? 'Featherstonehaughhohenbrunnachterbergfeatherstonehaugh' : 'Of The Squad',
				},
			},
			assessment: assess(visit),
			decisions: noDecisions,
		}))
		const pages = await pagesOf(
			await renderPdf(kinds.squad.compose(inputOf(visit, 'squad', { members }))),
		)
		const text = wordsOf(pages)
		for (const number of [0, 99, 198]) expect(text).toMatch(new RegExp(`Player${number}\\b`))
		inside(pages, 50)
		const long: Decisions = {
			...decisions,
			lines: Array.from({ length: 120 }, (_, at) => ({
				findingId: `own.${at}`,
				choice: 'add' as const,
				says: `Line ${at}: ${'a longer sentence of the clinician '.repeat(8)}end.`,
			})),
			warningSigns: Array.from({ length: 12 }, (_, at) => `sign ${at} ${'word '.repeat(30)}`),
		}
		const report = await pagesOf(
			await renderPdf(kinds.player.compose(inputOf(visit, 'player', { decisions: long }))),
		)
		expect(wordsOf(report)).toContain('Line 119:')
		inside(report, 50)
	})
	it('names a character that no font has in any kind of block', async () => {
		const visit = measured(demoNames[0]!)
		const broken = {
			...visit,
			footwear: visit.footwear!.map((pair) => ({ ...pair, name: '靴' })),
			player: { ...visit.player, club: 'Ελλάς Đội bóng Спартанец' },
		}
		await expect(
			renderPdf(kinds['insert-order'].compose(inputOf(broken, 'insert-order'))),
		).rejects.toThrow(/靴 \(U\+9774\)/)
		const fine = wordsOf(
			await pagesOf(
				await renderPdf(
					kinds.player.compose(inputOf({ ...broken, footwear: visit.footwear }, 'player')),
				),
			),
		)
		expect(fine).toContain('Ελλάς Đội bóng Спартанец')
	})
})
