/**
 * The owner's way through a restore: what is to be known of each backup, what it holds, the restore,
 * and the list that waits after the unlock.
 */
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { createApp } from '../../electron/app.ts'
import { shot } from './drive.ts'
import { startHost } from './host.ts'

const passphrase = 'eleven copper lanterns by the weir'
const player = {
	givenName: 'Tui',
	familyName: 'Ashdown',
	birthDate: '2013-05-02',
	sex: 'male',
	guardian: { name: 'Rae Ashdown', relation: 'parent', email: 'rae@guardian.example' },
}
const consent = {
	purpose: 'email',
	recipient: 'Rae Ashdown',
	decision: 'permit',
	grantor: { name: 'Rae Ashdown', relation: 'parent' },
	method: 'written',
	given: '2026-11-20',
}
/** Records with a backup, after which a person left and a consent was withdrawn. */
async function prepared(dataFolder: string): Promise<{ file: string; theirs: string }> {
	const app = createApp({
		dataFolder,
		scryptCost: 1024,
		renderPdf: async () => Buffer.from('%PDF-1.7 fixed'),
	})
	// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
	const ask = async (name: string, input: unknown = {}): Promise<any> => {
		const answer = await app.call(name, input)
		if (!answer.ok) throw new Error(`${name}: ${answer.message}`)
		return answer.value
	}
	await ask('session.setUp', {
		clinic: {
			...{ format: 'lastwright-clinic', version: 1, name: 'Invented Clinic', address: [] },
			...{ colour: '#1f5f5b', clinician: { name: 'A. Example', registration: 'X1' } },
		},
		passphrase,
	})
	const { playerId } = await ask('players.save', { player })
	const { personId } = await ask('people.save', {
		...{ name: 'B. Example', registration: 'R2', role: 'clinician' },
		passphrase: 'nine herons over the estuary',
	})
	const { consentId } = await ask('consents.record', { playerId, consent })
	const { file } = await ask('backups.make')
	await ask('people.retire', { personId, reason: 'left the clinic' })
	await ask('consents.withdraw', {
		...{ playerId, consentId, withdrawn: '2026-11-21', withdrawnBy: 'Rae Ashdown' },
	})
	app.close()
	const theirs = file.replace(/[0-9a-f]{12}-asked/, 'ffffffffffff-asked')
	copyFileSync(join(dataFolder, file), join(dataFolder, theirs))
	return { file, theirs }
}
async function unlock(page: Page): Promise<void> {
	await page.getByLabel('Passphrase').fill(passphrase)
	await page.getByRole('button', { name: 'Unlock' }).press('Enter')
}
test('a backup is restored, and the owner decides what came back or was kept', async ({ page }) => {
	await page.setViewportSize({ width: 1280, height: 720 })
	const data = mkdtempSync(join(tmpdir(), 'lastwright-restore-'))
	const { file, theirs } = await prepared(data)
	const host = await startHost('--data', data)
	try {
		await page.goto(host.url)
		await unlock(page)
		await expect(page.getByRole('heading', { level: 1, name: 'Players' })).toBeVisible()
		await page.evaluate(() => {
			location.hash = '#/records/backups'
		})
		const rows = page.getByRole('table', { name: 'Backups' })
		await expect(rows.getByRole('row', { name: theirs })).toContainText(
			'Made by another PC of this clinic.',
		)
		await page.getByRole('button', { name: `Look into ${file}` }).press('Enter')
		await expect(page.getByText(/One player, no visits/)).toBeVisible()
		await shot(page, 'backup-preview')
		await page.getByRole('button', { name: 'Restore this backup' }).press('Enter')
		await unlock(page)

		await expect(page.getByRole('heading', { level: 2, name: 'After the restore' })).toBeVisible()
		const list = page.getByRole('table', { name: 'After the restore' })
		const person = list.getByRole('row', { name: /B\. Example was taken off/ })
		await expect(person).toContainText('Open')
		await expect(list.getByRole('row', { name: /Consent of Tui Ashdown/ })).toContainText(
			'stays withdrawn',
		)
		await shot(page, 'after-restore')
		await person.getByRole('button', { name: /^Decide/ }).press('Enter')
		await page.getByLabel('Decision').selectOption({ label: 'As in the backup: let in again' })
		await expect(page.getByLabel('New passphrase', { exact: true })).toBeVisible()
		await shot(page, 'after-restore-decide')
		await page.getByLabel('New passphrase', { exact: true }).fill('twelve violet ladders in rain')
		await page.getByLabel('New passphrase again').fill('twelve violet ladders in rain')
		await page.getByRole('button', { name: 'Decide this' }).press('Enter')
		await expect(person).toContainText('let in again (A. Example')
		await page.getByRole('button', { name: 'Leave the open line as it stands' }).press('Enter')
		await expect(page.getByText('All lines are decided.')).toBeVisible()
		await shot(page, 'after-restore-decided')
	} finally {
		await host.kill()
		rmSync(data, { recursive: true, force: true })
	}
})
