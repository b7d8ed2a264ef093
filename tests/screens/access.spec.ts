/**
 * Every screen for every person: nothing for axe to report, focus seen and never lost, targets
 * large enough, and the main job done from the accessibility tree alone.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { axe } from './axe.ts'
import { agreeOnSign, settleQuestions, signButton, still } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'
import { cutRing } from './ring.ts'
import { type Look, looks, put, tour } from './tour.ts'

/**
 * Side of the smallest target in px; WCAG 2.2 asks for 24, a hand in a hurry for 44 (success
 * criterion 2.5.5, from memory).
 */
const target = 44

/**
 * Targets that are too small, by what a hand can hit: a field counts with its frame, a tick with
 * its label; a link within a sentence is exempt.
 */
function small(page: Page, where: string): Promise<string[]> {
	return page.evaluate(
		([least, where]) => {
			const targets =
				'a[href], button, input:not([type=hidden]), select, textarea, summary, [role=tab], ' +
				'[role=button], [role=menuitem]'
			const words = (element: Element | null) => (element?.textContent ?? '').trim()
			const unseen = (control: HTMLElement) =>
				control.closest('[aria-hidden=true]') !== null ||
				control.checkVisibility?.({ visibilityProperty: true }) === false ||
				control.matches(':disabled')
			const withinSentence = (control: HTMLElement) =>
				control instanceof HTMLAnchorElement &&
				getComputedStyle(control).display === 'inline' &&
				words(control.parentElement).length > words(control).length + 8
			/** Boxes that a hand can hit for the control, its own first. */
			const boxesOf = (control: HTMLElement) =>
				[
					control,
					control.closest('label'),
					control.closest('.MuiInputBase-root, .MuiCheckbox-root, .MuiRadio-root, .MuiSwitch-root'),
					...(control instanceof HTMLInputElement ? [...(control.labels ?? [])] : []),
				].flatMap((part) => (part ? [part.getBoundingClientRect()] : []))
			return [...document.querySelectorAll<HTMLElement>(targets)].flatMap((control) => {
				if (unseen(control) || withinSentence(control)) return []
				const boxes = boxesOf(control)
				if (boxes[0]!.width === 0 || boxes[0]!.bottom < 0) return []
				const width = Math.max(...boxes.map((box) => box.width))
				const height = Math.max(...boxes.map((box) => box.height))
				if (width >= least - 0.5 && height >= least - 0.5) return []
				const name = (control.getAttribute('aria-label') ?? words(control)).trim().slice(0, 40)
				return [
					`${where}: ${control.tagName.toLowerCase()} "${name}" ` +
						`is ${Math.round(width)} x ${Math.round(height)} px`,
				]
			})
		},
		[target, where] as const,
	)
}
/** What is wrong with the focus now, if anything; and a mark of where it is. */
function focusNow(page: Page): Promise<{ wrong: string; mark: string }> {
	return page.evaluate(() => {
		const now = document.activeElement as HTMLElement | null
		if (!now || now === document.body || now === document.documentElement)
			return { wrong: '', mark: '' }
		const name =
			`${now.tagName.toLowerCase()} ` +
			`"${(now.getAttribute('aria-label') ?? now.textContent ?? now.getAttribute('name') ?? '').trim().slice(0, 40)}"`
		const holders = [
			now,
			now.closest<HTMLElement>('.MuiInputBase-root'),
			now.closest<HTMLElement>('.MuiCheckbox-root, .MuiRadio-root, .MuiSwitch-root'),
			now.closest<HTMLElement>('label'),
		].filter((holder) => holder !== null)
		const ringed = holders.some((holder) => {
			const style = getComputedStyle(holder)
			return style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2
		})
		const box = (holders[1] ?? now).getBoundingClientRect()
		const seen =
			now.tagName === 'IFRAME' ||
			(box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth)
		const all = [...document.querySelectorAll('*')]
		return {
			wrong:
				!ringed && now.tagName !== 'IFRAME'
					? `${name} shows no focus`
					: !seen
						? `${name} has the focus off the screen`
						: '',
			mark: String(all.indexOf(now)),
		}
	})
}
/** Walks the whole screen by Tab. */
async function walk(page: Page, where: string): Promise<string[]> {
	const found: string[] = []
	await page.evaluate(() => {
		;(document.activeElement as HTMLElement | null)?.blur()
		getSelection()?.removeAllRanges()
		scrollTo(0, 0)
	})
	const total = await page.evaluate(
		() =>
			document.querySelectorAll(
				'a[href], button, input, select, textarea, summary, iframe, [tabindex="0"]',
			).length,
	)
	let stuck = 0
	let before = ''
	for (let press = 0; press < total + 5; press++) {
		await page.keyboard.press('Tab')
		const { wrong, mark } = await focusNow(page)
		if (mark === '') return found
		if (wrong) found.push(`${where}: ${wrong}`)
		const cut = await cutRing(page)
		if (cut) found.push(`${where}: ${cut}`)
		// a dialog of one field keeps the focus there, and Escape leaves it
		stuck = mark === before && (await page.getByRole('dialog').count()) === 0 ? stuck + 1 : 0
		if (stuck > 1) return [...found, `${where}: the focus is trapped`]
		before = mark
	}
	return found
}

test.describe('every screen of the open workstation', () => {
	test.describe.configure({ timeout: 420_000 })
	let host: RunningHost
	test.beforeEach(async ({ page }) => {
		host = await startHost('--demo')
		await page.goto(host.url)
		await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
	})
	test.afterEach(() => host.kill())

	for (const look of Object.keys(looks) as Look[]) {
		test(`axe finds nothing: ${look}`, async ({ page }) => {
			const found: string[] = []
			for (const stop of await tour(page)) {
				await stop.open(page)
				await put(page, look)
				await still(page)
				found.push(...(await axe(page, stop.name, look === 'light')))
				if (/200 %/.test(look)) {
					const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
					if (over > 1) found.push(`${stop.name}: ${over} px stand out to the right`)
				}
			}
			expect(found.join('\n')).toBe('')
		})
	}
	test('targets are large enough for a hand in a hurry', async ({ page }) => {
		const found: string[] = []
		for (const stop of await tour(page)) {
			await stop.open(page)
			found.push(...(await small(page, stop.name)))
		}
		expect(found.join('\n')).toBe('')
	})
	test('the focus is seen on every stop of every screen, and leaves each', async ({ page }) => {
		const found: string[] = []
		for (const stop of await tour(page)) {
			await stop.open(page)
			found.push(...(await walk(page, stop.name)))
		}
		expect(found.join('\n')).toBe('')
	})
	test('the main job from the accessibility tree alone: by role and name, keys only', async ({
		page,
	}) => {
		/** A button that is not ready yet takes no key. */
		const press = async (role: 'button' | 'link' | 'tab', name: string | RegExp) => {
			const control = page.getByRole(role, { name, exact: true })
			await expect(control).toBeEnabled()
			await control.press('Enter')
		}
		const write = async (name: string | RegExp, text: string) => {
			await page.getByRole('textbox', { name, exact: true }).focus()
			await page.keyboard.type(text)
		}
		await press('button', 'New player')
		await write('Given name', 'Ilse')
		await write('Family name', 'Vantorre')
		await write('Birth date', '8 November 1999')
		await page.getByRole('combobox', { name: 'Sex' }).selectOption('female')
		await press('button', 'Save player')
		await press('button', 'Start assessment')
		const steps = page.getByRole('navigation', { name: 'Steps' })
		await steps.getByRole('button', { name: 'Feet', exact: true }).press('Enter')
		await expect(page.getByRole('heading', { level: 1, name: 'Feet' })).toBeFocused()
		await page.getByRole('textbox', { name: 'Heel to toe, left', exact: true }).focus()
		for (const typed of ['264 265', '26.3 cm', '195', '196', '104', '105', '254', '256']) {
			await page.keyboard.type(typed)
			await page.keyboard.press('Enter')
		}
		const result = page.getByRole('complementary', { name: 'Result' })
		await expect(result.getByRole('group', { name: 'Feet' })).toContainText('Inside length')
		// the two most consequential stand there, the others are one key away
		const findings = result.getByRole('region', { name: 'Findings' })
		await expect(findings).toContainText('wide for its length')
		await page.keyboard.press('Alt+m')
		await expect(findings).toContainText('inside length')
		await page.keyboard.press('Alt+m')
		// an error belongs to its field and is announced
		await write('Heel width, left', '655')
		const wrong = page.getByRole('textbox', { name: 'Heel width, left', exact: true })
		await expect(wrong).toHaveAttribute('aria-invalid', 'true')
		await expect(wrong).toHaveAccessibleDescription(/655 is outside what can be measured/)
		await expect(page.getByRole('alert').filter({ hasText: '655 is outside' })).toHaveCount(1)
		await wrong.press('Backspace')
		await expect(page.getByRole('alert')).toHaveCount(0)
		// gone on to, the next step begins at its first field, within a group that names the step
		await press('button', 'On to Ankles')
		await expect(
			page
				.getByRole('group', { name: 'Ankles', exact: true })
				.getByRole('textbox', { name: 'Knee to wall, left', exact: true }),
		).toBeFocused()
		for (const typed of ['6.1 6.3 6.2', '8.4 8.2 8.4']) {
			await page.keyboard.type(typed)
			await page.keyboard.press('Enter')
		}
		await steps.getByRole('button', { name: 'Flags', exact: true }).press('Enter')
		await page
			.getByRole('group', { name: 'Pain at night or at rest' })
			.getByRole('button', { name: 'No', exact: true })
			.press('Enter')
		await steps.getByRole('button', { name: 'Decide', exact: true }).press('Enter')
		await settleQuestions(page)
		await steps.getByRole('button', { name: 'Sign', exact: true }).press('Enter')
		await agreeOnSign(page)
		await signButton(page).press('Enter')
		await expect(page.getByRole('status').filter({ hasText: 'Signed' }).first()).toBeVisible({
			timeout: 30_000,
		})
	})
})
const locks = async (page: Page) => {
	await page.getByRole('button', { name: 'Lock' }).press('Enter')
	await expect(page.getByLabel('Passphrase')).toBeVisible()
}
const setsUp = async (page: Page) => {
	await page.getByLabel('Clinic name').fill('Invented Clinic')
	await page.getByLabel('Clinician name').fill('A. Example')
	await page.getByLabel('Registration number').fill('X1')
	await page.getByLabel('Passphrase', { exact: true }).fill('nine herons over the estuary')
	await page.getByLabel('Passphrase again').fill('nine herons over the estuary')
	await page.getByRole('button', { name: 'Set up', exact: true }).press('Enter')
	await page.getByLabel('I have it on paper').check()
}
test('set-up, its recovery key and the locked screen: axe, focus and targets in every look', async ({
	page,
}) => {
	test.setTimeout(180_000)
	const data = mkdtempSync(join(tmpdir(), 'lastwright-access-'))
	const [fresh, demo] = [await startHost('--data', data), await startHost('--demo')]
	const found: string[] = []
	try {
		const goTo = async ({ url }: RunningHost) => {
			await page.goto(url)
			await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible()
		}
		for (const [name, arrive] of [
			['set-up', () => goTo(fresh)],
			['recovery key', () => setsUp(page)],
			['locked', () => goTo(demo).then(() => locks(page))],
		] as const) {
			await arrive()
			for (const look of Object.keys(looks) as Look[]) {
				await put(page, look)
				await still(page)
				found.push(...(await axe(page, `${name}, ${look}`)))
			}
			await put(page, 'light')
			found.push(...(await small(page, name)), ...(await walk(page, name)))
		}
	} finally {
		await Promise.all([fresh.kill(), demo.kill()])
		rmSync(data, { recursive: true, force: true })
	}
	expect(found.join('\n')).toBe('')
})
