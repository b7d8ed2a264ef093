/** Packs of an outreach day: made at the clinic, opened on the laptop, written for the way back. */
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, type Page } from '@playwright/test'
import { choosePath, openDialog, writePath } from './choosing.ts'
import { shot } from './drive.ts'
import { accessible, button, packPassphrase, panel, to } from './outreach-drive.ts'

/** @param stick a folder with the file note.txt in it. @returns the path of the pack */
export async function makePack(clinic: Page, url: string, stick: string): Promise<string> {
	// the clinic makes the pack; a folder that cannot be used is named, and nothing typed is lost
	await clinic.goto(url)
	await to(clinic, 'Outreach')
	const making = panel(clinic, 'Make a pack')
	await expect(
		making.getByText(
			'Still to fill in: folder or stick, passphrase of the pack, the passphrase again.',
		),
	).toBeVisible()
	await making.getByLabel('Find players').fill('trescott')
	await making.getByRole('checkbox', { name: /Owain Trescott/ }).press('Space')
	await making.getByLabel('Find players').fill('ashdown')
	await making.getByRole('checkbox', { name: /Tui Ashdown/ }).press('Space')
	await expect(making.getByText('2 chosen.', { exact: false })).toBeVisible()
	await making.getByLabel('Passphrase of the pack', { exact: true }).fill('short')
	await making.getByLabel('Passphrase of the pack again').fill('short')
	const dialog = await openDialog(clinic, making, 'Folder or stick')
	for (const [folder, words] of [
		['stick', 'The folder "stick" is not a whole path.'],
		[join(stick, 'none'), `There is no folder ${stick}/none.`],
		[join(stick, 'note.txt'), 'is a file, not a folder.'],
		['/proc/self', 'cannot be written to'],
	] as const) {
		await writePath(dialog, folder)
		await expect(dialog.getByRole('alert').filter({ hasText: words })).toBeVisible()
	}
	await shot(clinic, 'dialog-trouble')
	await writePath(dialog, stick)
	await expect(dialog).toBeHidden()
	await button(making, 'Make the pack').press('Enter')
	await expect(
		making
			.getByRole('alert')
			.filter({ hasText: 'Passphrase of the pack has 5 characters. Choose one of 8 or more.' }),
	).toBeVisible()
	await expect(making.getByRole('checkbox', { name: /Tui Ashdown/ })).toBeChecked()
	await expect(making.getByText(stick, { exact: true })).toBeVisible()
	for (const label of ['Passphrase of the pack', 'Passphrase of the pack again'])
		await making.getByLabel(label, { exact: true }).fill(packPassphrase)
	await shot(clinic, 'trouble')
	await button(making, 'Make the pack').press('Enter')
	await expect(making.getByRole('status').filter({ hasText: '2 players' })).toBeVisible()
	await expect(
		panel(clinic, 'Packs that went out').getByRole('row', { name: /Tui Ashdown/ }),
	).toContainText('Not yet')
	const pack = join(stick, readdirSync(stick).find((name) => name.startsWith('pack-')) ?? '')
	expect(readdirSync(stick).sort()).toEqual(['note.txt', pack.slice(stick.length + 1)])
	await shot(clinic, 'made')
	await accessible(clinic)
	return pack
}
export async function openPack(laptop: Page, url: string, pack: string): Promise<void> {
	// the laptop: first screen, wrong path and wrong passphrase first
	await laptop.goto(url)
	const dialog = await openDialog(laptop, laptop, 'Backup or pack file')
	await writePath(dialog, `${pack}x`)
	await expect(
		dialog.getByRole('alert').filter({ hasText: `There is no file ${pack}x.` }),
	).toBeVisible()
	await writePath(dialog, pack)
	await expect(dialog).toBeHidden()
	await laptop.getByLabel('Pack passphrase').fill('not this one at all')
	await button(laptop, 'Bring these records here').press('Enter')
	await expect(
		laptop
			.getByRole('alert')
			.filter({ hasText: 'The passphrase is not the one of this pack. The file itself is whole.' }),
	).toBeVisible()
	await shot(laptop, 'first-screen')
	await laptop.getByLabel('Pack passphrase').fill(packPassphrase)
	await button(laptop, 'Bring these records here').press('Enter')
	await expect(laptop.getByRole('heading', { name: 'The pack was opened' })).toBeVisible()
	await expect(laptop.getByRole('heading', { name: 'Set up the clinic' })).toHaveCount(0)
	await shot(laptop, 'opened')
	await button(laptop, 'Go on to unlock').press('Enter')
	await laptop.getByLabel('Passphrase', { exact: true }).fill(packPassphrase)
	await laptop.keyboard.press('Enter')
	await to(laptop, 'Outreach')
	await expect(
		laptop.getByRole('table', { name: 'Players on this laptop' }).getByRole('row'),
	).toHaveCount(3)
	await expect(
		laptop.getByText(
			/^2 players, .*Shelf: yes\. Protocol .*Entered here: 0 records\. Open drafts: 1\.$/,
		),
	).toBeVisible()
	await shot(laptop, 'carries')
	await accessible(laptop)
}
/** @returns the path of the file for the way back */
export async function makeReturn(laptop: Page, stick: string): Promise<string> {
	// the way back
	await to(laptop, 'Outreach')
	const back = panel(laptop, 'The way back')
	await choosePath(laptop, back, 'Folder or stick', stick)
	await back.getByLabel('Passphrase of the pack').fill(packPassphrase)
	await button(back, 'Make the file for the way back').press('Enter')
	await expect(back.getByRole('status').filter({ hasText: 'was written' })).toBeVisible()
	const returned = join(stick, readdirSync(stick).find((name) => name.startsWith('return-')) ?? '')
	await shot(laptop, 'way-back')

	return returned
}
