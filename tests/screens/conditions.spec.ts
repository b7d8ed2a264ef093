/** Conditions found by any of their names, recorded and taken out again, keys only. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { axe } from './axe.ts'
import { hostCall, shot, visitSaved } from './drive.ts'
import { startHost } from './host.ts'

const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Harrow Lane Foot Clinic',
	address: [],
	colour: '#1f5f5b',
	clinician: { name: 'Imke Darrow', registration: 'DEMO-00417' },
}
test.use({ viewport: { width: 1280, height: 720 } })
test('a condition is found by another name, its side asked, its questions opened', async ({
	page,
}) => {
	const data = mkdtempSync(join(tmpdir(), 'lastwright-conditions-'))
	const host = await startHost('--data', data)
	try {
		await page.goto(host.url)
		await hostCall(page, 'session.setUp', { clinic, passphrase: 'seven grey herons' })
		const { playerId } = await hostCall<{ playerId: string }>(page, 'players.save', {
			player: { givenName: 'Wren', familyName: 'Holloway', birthDate: '1998-03-04', sex: 'female' },
		})
		await page.goto(`${new URL(host.url).origin}/#/assessment/${playerId}`)
		await page.reload()
		const add = page.getByRole('combobox', { name: 'Add a condition' })
		const press = page.keyboard.press.bind(page.keyboard)
		await add.focus()
		await page.keyboard.type('sever')
		const option = page.getByRole('listbox').getByRole('option')
		await expect(option).toHaveCount(1)
		await expect(option).toContainText('calcaneal apophysitis (growing heel)')
		await expect(option).toContainText('also called: Sever')
		await shot(page, 'conditions-found', { fullPage: false })
		await press('Enter')

		// the side is asked and not guessed, and so is the age of an adult
		const heel = page.getByRole('region', { name: 'Calcaneal apophysitis (growing heel)' })
		await expect(heel.getByRole('button', { name: 'Left' })).toBeFocused()
		await expect(heel.getByRole('button', { pressed: true, name: /Left|Right|Both/ })).toHaveCount(
			0,
		)
		// nothing is filled in: no status and no pain either
		await expect(heel.getByRole('button', { pressed: true })).toHaveCount(0)
		await expect(heel.getByRole('textbox', { name: 'Worst pain' })).toHaveValue('')
		await expect(heel.getByText(/Choose side and status/)).toBeVisible()
		await expect(page.getByText(/Missing:.*The status of calcaneal apophysitis/)).toBeVisible()
		await expect(heel).toContainText('Open on Flags, to be asked with it')
		await visitSaved(page, ({ conditions }) => conditions, [
			{ condition: 'calcaneal-apophysitis', side: 'none' },
		])
		await press('ArrowRight')
		await press('Space')
		// Enter goes on: status, then pain
		await press('Enter')
		await expect(heel.getByRole('button', { name: 'Current' })).toBeFocused()
		await press('Space')
		await press('Enter')
		await expect(heel.getByRole('textbox', { name: 'Worst pain' })).toBeFocused()
		// only the age of an adult is still asked
		await expect(heel.getByRole('status')).toHaveCount(1)

		// what it asks opens by a key, and closes by the same
		const asks = heel.getByRole('button', { name: 'What this asks' })
		await asks.focus()
		await press('Enter')
		await expect(asks).toHaveAttribute('aria-expanded', 'true')
		await expect(heel.getByRole('term')).toHaveText([
			'Ages',
			'To ask',
			'Shoe',
			'Changes to a shoe',
			'Lacing',
			'Insert',
			'Season',
		])
		expect(await axe(page, 'condition asks')).toEqual([])
		await shot(page, 'condition-asks', { fullPage: false })
		await press('Enter')
		await expect(heel.getByRole('term')).toHaveCount(0)

		// one outside the list, in words, with wishes of the clinician
		await add.focus()
		await page.keyboard.type('something else')
		await press('Enter')
		const own = page.getByRole('region', { name: 'Another condition' })
		await expect(own.getByRole('button', { name: 'Left' })).toBeFocused()
		await own.getByRole('button', { name: 'Current' }).focus()
		await press('Space')
		await own.getByRole('textbox', { name: 'What it is' }).focus()
		await page.keyboard.type('Os naviculare')
		await own.getByRole('combobox', { name: 'Seek in a shoe' }).focus()
		await page.keyboard.type('soft upper')
		await expect(page.getByRole('listbox').getByRole('option')).toHaveCount(1)
		await press('Enter')
		await press('Escape')

		// of the player: no side is asked
		await add.focus()
		await page.keyboard.type('diabetes')
		await press('Enter')
		const diabetes = page.getByRole('region', { name: 'Diabetes', exact: true })
		await expect(diabetes.getByRole('button', { name: 'Left' })).toHaveCount(0)
		await expect(diabetes.getByRole('button', { name: 'Current' })).toBeFocused()
		await press('Space')
		// high enough that nothing lies under the foot
		await page.setViewportSize({ width: 1280, height: 3600 })
		expect(await axe(page, 'conditions')).toEqual([])
		await page.setViewportSize({ width: 1280, height: 720 })
		await shot(page, 'conditions-recorded')

		const recorded = [
			{ condition: 'calcaneal-apophysitis', side: 'right', status: 'current' },
			{
				condition: 'other-condition',
				side: 'none',
				status: 'current',
				inWords: 'Os naviculare',
				seek: ['soft-upper'],
			},
			{ condition: 'diabetes', side: 'none', status: 'current' },
		]
		await visitSaved(page, ({ conditions }) => conditions, recorded)
		// the questions of diabetes are open among the flags, without a complaint chosen
		await diabetes.getByRole('button', { name: 'Go to the flags' }).press('Enter')
		await expect(page.getByRole('heading', { name: 'Diabetes: foot risk' })).toBeVisible()
		await press('Alt+1')

		// taking the first away leaves the others as they were
		await heel.getByRole('button', { name: 'Remove' }).focus()
		await press('Enter')
		await expect(heel).toHaveCount(0)
		await expect(own.getByRole('textbox', { name: 'What it is' })).toHaveValue('Os naviculare')
		await visitSaved(page, ({ conditions }) => conditions, recorded.slice(1))
	} finally {
		await host.kill()
		rmSync(data, { recursive: true, force: true })
	}
})
