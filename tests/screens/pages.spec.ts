/**
 * The accessible page of every kind of document, as it is saved: nothing for axe to report in light
 * and dark, no wider than a telephone, no word cut, headings in order, drawings with words.
 */
import { readFileSync } from 'node:fs'
import { expect, type Page, test } from '@playwright/test'
import { reportCss } from '../../shared/engine/report/html/style.ts'
import { toHtml } from '../../shared/engine/report/html.ts'
import { type KindName, kindNames, kinds } from '../../shared/engine/report/kinds.ts'
import { read } from '../demo.ts'
import { demoNames, inputOf, measured } from '../host/kind-input.ts'
import { axe } from './axe.ts'

const picture = (name: string) =>
	read(
		JSON.parse(readFileSync(new URL(`../engine/pictures/${name}.json`, import.meta.url), 'utf8')),
	)
const visits = [
	...demoNames.map((name) => [name, measured(name)] as const),
	...['04-navicular-suspected', '24-operated'].map((name) => [name, picture(name)] as const),
]
const pagesOf = (kind: KindName) =>
	visits.flatMap(([name, visit]) => {
		const clubAlso = kind === 'squad' ? ([undefined, 'club'] as const) : ([undefined] as const)
		return clubAlso.flatMap((audience) => {
			const input = inputOf(visit, kind, audience ? { audience } : {})
			if (kinds[kind].problems(input).length > 0) return []
			const document = kinds[kind].compose(input)
			const html = toHtml(document, { css: reportCss(document.letterhead.colour) })
			return [{ name: [kind, audience, name].filter(Boolean).join(' '), html, document }]
		})
	})

/** Px; the narrowest that WCAG 2.2 asks for (1.4.10), telephones, a tablet, a window. */
const widths = [320, 360, 414, 700, 1100]
/** What stands out of the window; what moves within a place of its own, or is read out alone, may. */
const standsOut = (page: Page): Promise<string[]> =>
	page.evaluate(() => {
		const root = document.documentElement
		const parts = [...document.querySelectorAll('body *:not(svg *)')].filter((element) => {
			const { right, left, width } = element.getBoundingClientRect()
			const isOut = right > root.clientWidth + 0.5 || left < -0.5
			return width > 0 && isOut && !element.closest('.drawn svg, thead')
		})
		const wide = root.scrollWidth - root.clientWidth
		return [
			...(wide > 0 ? [`scrolls by ${wide} px`] : []),
			...parts.map(({ tagName, textContent }) => `${tagName} out: ${textContent?.slice(0, 40)}`),
		]
	})
/** Words that stand on two lines; a hyphen is no cut, so none is set meanwhile. */
const cutWords = (page: Page): Promise<string[]> =>
	page.evaluate(() => {
		const whole = document.createElement('style')
		whole.textContent = '*{hyphens:none!important}'
		document.head.append(whole)
		const linesOf = (text: Text, word: string, index: number) => {
			const range = document.createRange()
			range.setStart(text, index)
			range.setEnd(text, index + word.length)
			return new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size
		}
		const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
		const cut: string[] = []
		for (let text = texts.nextNode() as Text | null; text; text = texts.nextNode() as Text | null) {
			if (text.parentElement?.closest('svg, thead')) continue
			for (const { 0: word, index } of text.data.matchAll(/[\p{L}\p{M}\p{N}'’]+/gu))
				if (linesOf(text, word, index) > 1) cut.push(`cut: ${word}`)
		}
		whole.remove()
		return cut
	})
/** Headings out of order, drawings without words, a page without its language. */
const unspoken = (page: Page): Promise<string[]> =>
	page.evaluate(() => {
		const levels = [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].map((heading) =>
			Number(heading.tagName.slice(1)),
		)
		const isOne = levels[0] === 1 && levels.lastIndexOf(1) === 0
		const mute = [...document.querySelectorAll('svg')].filter(
			(drawing) => !drawing.querySelector('desc')?.textContent?.trim(),
		)
		return [
			...(isOne ? [] : ['no heading of its own']),
			...levels
				.filter((level, at) => at > 0 && level > (levels[at - 1] ?? 0) + 1)
				.map((level) => `skips to a heading of level ${level}`),
			...mute.map(() => 'a drawing without words'),
			...(document.documentElement.lang === 'en' ? [] : ['no language']),
		]
	})
const faults = async (page: Page): Promise<string[]> => [
	...(await standsOut(page)),
	...(await cutWords(page)),
	...(await unspoken(page)),
]

for (const kind of kindNames)
	test(`the page of ${kind} can be read in any window, look and voice`, async ({ page }) => {
		const pages = pagesOf(kind)
		expect(pages.length, kind).toBeGreaterThan(0)
		const found: string[] = []
		for (const { name, html, document } of pages) {
			await page.setContent(html)
			for (const note of document.notes)
				await expect(page.locator('.notes'), name).toContainText(note)
			for (const width of widths) {
				await page.setViewportSize({ width, height: 800 })
				found.push(...(await faults(page)).map((fault) => `${name}, ${width} px: ${fault}`))
			}
			await page.setViewportSize({ width: 360, height: 800 })
			for (const colorScheme of ['light', 'dark'] as const) {
				await page.emulateMedia({ colorScheme })
				found.push(...(await axe(page, `${name}, ${colorScheme}`)))
			}
		}
		expect(found).toEqual([])
	})

test('a cut word, a page that scrolls and a skipped heading would be found', async ({ page }) => {
	await page.setViewportSize({ width: 320, height: 800 })
	await page.setContent(
		'<html lang="en"><h1>A</h1><h3>B</h3><p style="overflow-wrap:anywhere;width:2rem">weight-bearing</p>' +
			'<p style="width:40rem">wide</p></html>',
	)
	const found = await faults(page)
	for (const fault of [/^scrolls by/, /^P out/, /^cut: weight/, /^skips to/])
		expect(
			found.some((said) => fault.test(said)),
			String(fault),
		).toBe(true)
})
test('where there is no room a row is told cell by cell, and stays a row to a voice', async ({
	page,
}) => {
	const [squad] = pagesOf('squad')
	await page.setViewportSize({ width: 360, height: 800 })
	await page.setContent(squad!.html)
	const table = page.getByRole('table', { name: 'The most urgent first' })
	await expect(table.getByRole('columnheader', { name: 'Born' })).toHaveCount(1)
	await expect(table.getByRole('rowheader')).toHaveCount(1)
	const lefts = await table
		.getByRole('cell')
		.evaluateAll((cells) => cells.map((cell) => Math.round(cell.getBoundingClientRect().left)))
	expect(new Set(lefts).size).toBe(1)
	await page.setViewportSize({ width: 1100, height: 800 })
	const tops = await table
		.getByRole('cell')
		.evaluateAll((cells) => cells.map((cell) => Math.round(cell.getBoundingClientRect().top)))
	expect(new Set(tops).size).toBe(1)
})
