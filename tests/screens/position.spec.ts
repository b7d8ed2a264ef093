/**
 * The position of play: words in other spelling are understood, the list of the code is offered, and
 * what no list knows is kept as it was typed.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { positionsIn } from '../../shared/engine/visit/positions.ts'
import { axe } from './axe.ts'
import { hostCall, visitSaved } from './drive.ts'
import { startHost } from './host.ts'

const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Harrow Lane Foot Clinic',
	address: [],
	colour: '#1f5f5b',
	clinician: { name: 'Imke Darrow', registration: 'DEMO-00417' },
}

test('the position is typed freely or chosen from the list of the code', async ({ page }) => {
	const data = mkdtempSync(join(tmpdir(), 'lastwright-position-'))
	const host = await startHost('--data', data)
	try {
		await page.goto(host.url)
		await hostCall(page, 'session.setUp', { clinic, passphrase: 'seven grey herons' })
		const { playerId } = await hostCall<{ playerId: string }>(page, 'players.save', {
			player: { givenName: 'Wren', familyName: 'Holloway', birthDate: '1998-03-04', sex: 'female' },
		})
		await page.goto(`${new URL(host.url).origin}/#/assessment/${playerId}`)
		await page.reload()
		const position = page.getByRole('combobox', { name: 'Position', exact: true })
		const offered = page.getByRole('listbox').getByRole('option')
		const told = page.getByRole('status')
		// union and league mean different positions by it
		await position.fill('lock')
		await expect(told.filter({ hasText: 'Choose the code' })).toBeVisible()
		await page
			.getByRole('combobox', { name: 'Football code', exact: true })
			.selectOption('rugby-union')
		// spelt as on the list, but for the capital: there is nothing to tell
		await expect(told.filter({ hasText: 'Choose the code' })).toHaveCount(0)
		await position.fill('second row')
		await expect(told.filter({ hasText: 'Read as Lock' })).toBeVisible()
		await position.fill('No 8')
		await expect(told.filter({ hasText: 'Read as Number eight' })).toBeVisible()
		await position.fill('')
		await position.press('ArrowDown')
		await expect(offered).toHaveText(positionsIn('rugby-union').map(({ name }) => name))
		expect(await axe(page, 'the list of positions')).toEqual([])
		await position.fill('outside half')
		await expect(offered).toHaveText(['Fly-half'])
		const chosen = visitSaved(page, ({ play }) => play?.position, 'Fly-half')
		await position.press('ArrowDown')
		await expect(position).toHaveAttribute('aria-activedescendant', /./)
		await position.press('Enter')
		await chosen
		await expect(position).toHaveValue('Fly-half')
		const kept = visitSaved(page, ({ play }) => play?.position, 'kit carrier')
		await position.fill('kit carrier')
		await expect(told.filter({ hasText: 'Not on the list' })).toBeVisible()
		await kept
		await page.reload()
		await expect(position).toHaveValue('kit carrier')
	} finally {
		await host.kill()
		rmSync(data, { recursive: true, force: true })
	}
})
