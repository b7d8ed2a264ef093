/**
 * One hand on the keyboard: every key that is no part of a value is counted, and so are the words
 * that come into sight, each text once.
 */
import { expect, type Page } from '@playwright/test'
import { shot, still } from './drive.ts'

/** The texts that stand in sight: not scrolled away, not under something else, not for the ear alone. */
const textsInSight = (page: Page): Promise<string[]> =>
	page.evaluate(() => {
		const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
		const texts: string[] = []
		const inSight = (node: Node, parent: Element): boolean => {
			const range = document.createRange()
			range.selectNodeContents(node)
			const { left, right, top, bottom, width, height } = range.getBoundingClientRect()
			const isShown = width > 1 && height > 1 && bottom > 0 && top < innerHeight
			const at = document.elementFromPoint(
				(left + Math.min(right, left + 20)) / 2,
				(top + bottom) / 2,
			)
			return isShown && at !== null && (parent.contains(at) || at.contains(parent))
		}
		for (let node = walker.nextNode(); node; node = walker.nextNode()) {
			const parent = node.parentElement
			const text = node.textContent?.trim()
			if (text && parent && inSight(node, parent)) texts.push(text)
		}
		return texts
	})
/** A word holds two letters: figures and signs are looked up, not read. */
const wordsIn = (text: string): number =>
	text.split(/\s+/).filter((word) => /\p{L}{2}/u.test(word)).length

/** What was read before is known: a second visit is read with the first in mind. */
export type Known = Set<string>
export const wordsAMinute = 220
export const secondsAKey = 0.5

export function hand(page: Page, known: Known = new Set()) {
	let keys = 0
	let words = 0
	/** A chord counts each of its keys. */
	const press = async (...chords: string[]) => {
		for (const chord of chords) {
			keys += chord.split('+').length
			await page.keyboard.press(chord)
		}
	}
	const value = (text: string) => page.keyboard.type(text)
	return {
		get keys() {
			return keys
		},
		get words() {
			return words
		},
		press,
		value,
		/** Each value is typed, and gone on from. */
		enter: async (...values: string[]) => {
			for (const text of values) {
				await value(text)
				await press('Enter')
			}
		},
		/** Reads what came into sight, and takes its picture. */
		read: async (name: string) => {
			await still(page)
			const fresh = new Set((await textsInSight(page)).filter((text) => !known.has(text)))
			for (const text of fresh) {
				known.add(text)
				words += wordsIn(text)
			}
			await shot(page, name, { fullPage: false })
		},
	}
}
export type Hand = ReturnType<typeof hand>
/** Presses until nothing is asked any more on Flags: each question was put, and answered no. */
export async function answerAllNo(
	page: Page,
	{ press, read }: Hand,
	name: string,
): Promise<number> {
	const first = page.locator('[data-asked] button[value=not-asked][aria-pressed=true]')
	await expect(first.first()).toBeFocused()
	const isAsked = () =>
		page.evaluate(() => document.activeElement?.closest('[data-asked]') !== null)
	let asked = 0
	for (; await isAsked(); asked++) {
		if (asked % 6 === 0) await read(`${name}-${asked}`)
		await press('n')
	}
	return asked
}
/** Reads and settles each open question with one letter. @returns how many keys that took */
export async function settleAll(
	page: Page,
	{ press, read }: Hand,
	name: string,
	letterFor: (question: string) => Promise<string> = () => Promise.resolve('a'),
): Promise<number> {
	const open = page.locator('button[data-question]:is([data-state=open], [data-state=overtaken])')
	const line = page.locator('button[data-question][aria-expanded=true]')
	await expect(line).toBeFocused()
	let taken = 0
	for (; (await open.count()) > 0; taken++) {
		const id = (await line.getAttribute('data-question')) ?? ''
		await read(`${name}-${id}`)
		await press(await letterFor(id))
		await expect(open.and(page.locator(`[data-question="${id}"]`))).toHaveCount(0)
	}
	return taken
}
