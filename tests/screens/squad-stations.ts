/** The stations of the screening day: measures with two swapped shirts, ankles, footwear. */
import { expect, type Page } from '@playwright/test'
import {
	call,
	desk,
	done,
	doneButton,
	enter,
	footMm,
	measures,
	named,
	noWidth,
	type Shot,
	swapped,
	walking,
} from './squad-day.ts'

/** The feet of whom a swapped shirt stands for; undefined for all others. */
function otherFeet(number: number): number | undefined {
	const [first, second] = swapped
	if (number === first) return footMm(second)
	return number === second ? footMm(first) : undefined
}
export async function takeMeasures(page: Page, shot: Shot) {
	await desk(page, 'Measures').press('Enter')
	await page.getByLabel('Number of the player').fill('77')
	await page.getByLabel('Number of the player').press('Enter')
	await expect(page.getByText('No player has the number 77.', { exact: false })).toBeVisible()
	await page.getByLabel('Number of the player').fill('')
	for (const number of walking) {
		await call(page, number, 'Measures')
		// only this station's fields
		if (number === 1) {
			await expect(page.getByRole('textbox', { name: 'Knee to wall, left' })).toHaveCount(0)
			for (const side of ['left', 'right']) await sideStandsOver(page, side)
		}
		const other = otherFeet(number)
		await enter(page, 'Stature', measures(number, other))
		if (other !== undefined) await settleSwap(page, shot, number)
		await done(page)
	}
	await expect(page.getByRole('row', { name: new RegExp(`${named(noWidth)} `) })).toContainText(
		'Measures 2, Footwear 1',
	)
	await expect(page.getByRole('row', { name: new RegExp(`${named(1)} `) })).toContainText(
		'Footwear 1, Ankles and posture 4',
	)
}
/** The side in large letters, over the fields of that side. */
async function sideStandsOver(page: Page, side: string) {
	const head = page.locator(`[data-side="${side}"]`)
	const [over, field] = await Promise.all([
		head.boundingBox(),
		page.getByRole('textbox', { name: `Heel to toe, ${side}` }).boundingBox(),
	])
	expect((over?.y ?? 0) + (over?.height ?? 0)).toBeLessThanOrEqual(field?.y ?? 0)
	expect(over?.x ?? 0).toBeLessThanOrEqual(field?.x ?? 0)
	expect((over?.x ?? 0) + (over?.width ?? 0)).toBeGreaterThan((field?.x ?? 0) + 20)
	expect((over?.x ?? 0) + (over?.width ?? 0)).toBeLessThanOrEqual(
		(field?.x ?? 0) + (field?.width ?? 0) + 40,
	)
	await expect(head).toHaveCSS('font-size', '24px')
}
/** Shirts swapped: the station is not left before it is settled whose feet these are. */
async function settleSwap(page: Page, shot: Shot, number: number) {
	await expect(page.getByText(`Is this really ${named(number)}?`, { exact: false })).toBeVisible()
	await expect(
		page.getByText(
			number === swapped[0]
				? /left foot is \d+ mm longer since/
				: /left foot is \d+ mm shorter since/,
		),
	).toBeVisible()
	await shot(`swapped-${number}`)
	await doneButton(page).press('Enter')
	await expect(page.getByText('Answer the question about a swap first.')).toBeVisible()
	for (const [side, value] of [
		['left', footMm(number)],
		['right', footMm(number) + 1],
	] as const)
		await page.getByRole('textbox', { name: `Heel to toe, ${side}` }).fill(String(value))
	await expect(page.getByText('Is this really', { exact: false })).toHaveCount(0)
}
export async function anklesAndFootwear(page: Page) {
	await desk(page, 'Ankles and posture').press('Enter')
	for (const number of walking.filter((number) => number <= 8)) {
		await call(page, number, 'Ankles and posture')
		await enter(page, 'Knee to wall, left', ['9.5', '10', '', '', '1 1 1 1 1 1', '0 1 1 1 1 1'])
		await done(page)
	}
	await desk(page, 'Footwear').press('Enter')
	for (const number of [1, 2]) {
		await call(page, number, 'Footwear')
		await page.getByRole('button', { name: 'Add a pair' }).press('Enter')
		await page.getByLabel('Name', { exact: true }).fill('match boots')
		await page.getByLabel('Sole', { exact: true }).selectOption('firm-ground')
		await page.getByLabel('Size system').selectOption('eu')
		await page.getByLabel('Size', { exact: true }).fill('39')
		await done(page)
	}
	await expect(page.getByRole('row', { name: new RegExp(`${named(1)} `) })).toContainText(
		'ready to sign',
	)
	await expect(page.getByRole('row', { name: new RegExp(`${named(5)} `) })).toContainText(
		'Footwear 1',
	)
}
