/** Coming home of an outreach day: looked into, brought in twice, and the laptop emptied. */
import { join } from 'node:path'
import { expect, type Page } from '@playwright/test'
import { choosePath, openDialog, writePath } from './choosing.ts'
import { shot } from './drive.ts'
import { accessible, button, packPassphrase, panel, to } from './outreach-drive.ts'

interface Files {
	/** the folder with note.txt in it */
	stick: string
	pack: string
	returned: string
}
/** @returns the receipt for the laptop */
export async function comeHome(clinic: Page, { stick, pack, returned }: Files): Promise<string> {
	// come home: look first, then bring it in, and once more
	await to(clinic, 'Outreach')
	const home = panel(clinic, 'Come home')
	await home.getByLabel('Passphrase of the pack').fill(packPassphrase)
	const dialog = await openDialog(clinic, home, 'File for the way back')
	for (const [file, words] of [
		[stick, 'is a folder, not a file'],
		[join(stick, 'note.txt'), 'Choose a file that ends in .lwpack.'],
	] as const) {
		await writePath(dialog, file)
		await expect(dialog.getByRole('alert').filter({ hasText: words })).toBeVisible()
	}
	await writePath(dialog, pack)
	await expect(dialog).toBeHidden()
	await button(home, 'Look into the file').press('Enter')
	await expect(
		home.getByRole('alert').filter({ hasText: 'This is a pack that goes out.' }),
	).toBeVisible()
	await choosePath(clinic, home, 'File for the way back', returned)
	await button(home, 'Look into the file').press('Enter')
	const looked = home.getByRole('status')
	await expect(looked).toContainText(
		'2 questions to answer afterwards. Drafts changed in both places, both kept: Tui Ashdown.',
	)
	await expect(looked).toContainText('perhaps one person entered twice')
	const changes = looked.getByRole('region', { name: 'What changes' })
	await expect(changes).toContainText(
		/Club was changed in two places \(at home .*Rovers.*; away .*United.*\): it is asked under To answer/,
	)
	await expect(changes).toContainText('New player, born on 3 March 2001.')
	const numbers =
		/Records before (\d+), after (\d+)\. In the file (\d+): (\d+) added, (\d+) here already, 0 put aside/
			.exec((await looked.textContent()) ?? '')
			?.slice(1)
			.map(Number)
	expect(numbers?.[1], `before and added: ${numbers}`).toBe(
		(numbers?.[0] ?? 0) + (numbers?.[3] ?? 0),
	)
	await shot(clinic, 'look')
	await button(home, 'Bring it in').press('Enter')
	const done = home.getByRole('status').filter({ hasText: 'Receipt for the laptop' })
	await expect(done).toContainText(
		`Brought in: ${numbers?.[3]} records added, before ${numbers?.[0]}, after ${numbers?.[1]}.`,
	)
	const receipt =
		/Receipt for the laptop: (\S+)\./.exec((await done.textContent()) ?? '')?.[1] ?? ''
	await home.getByLabel('Passphrase of the pack').fill(packPassphrase)
	await button(home, 'Look into the file').press('Enter')
	await expect(looked).toContainText('It was brought in before.')
	await button(home, 'Bring it in').press('Enter')
	await expect(done).toContainText('This file was brought in before. Nothing was added twice.')
	const kept = panel(clinic, 'What came home')
	await expect(kept.getByText(/brought in by Imke Darrow\. Receipt for the laptop/)).toHaveCount(1)
	await expect(
		kept.getByText(`Records before ${numbers?.[0]}, after ${numbers?.[1]}.`, { exact: false }),
	).toBeVisible()
	await expect(
		panel(clinic, 'Packs that went out').getByRole('row', { name: /Tui Ashdown/ }),
	).toContainText('Yes')
	await shot(clinic, 'questions')
	await accessible(clinic)
	return receipt
}
/** The laptop's trail stands beside the clinic's own, and both are whole. */
export async function readTrail(clinic: Page): Promise<void> {
	await to(clinic, 'Outreach')
	await panel(clinic, 'What came home').getByRole('link', { name: 'Read the trail' }).press('Enter')
	await clinic.getByLabel('Trail of').selectOption({ index: 2 })
	await expect(
		clinic.getByRole('table', { name: 'Audit rows' }).getByRole('row').nth(3),
	).toBeVisible()
	await expect(clinic.getByRole('table', { name: 'Audit rows' })).toContainText('Imke Darrow')
	await button(clinic, 'Check the trail').press('Enter')
	await expect(
		clinic.getByText(
			/rows checked, and \d+ that laptops brought home: none is missing, none was altered/,
		),
	).toBeVisible()
	await shot(clinic, 'trail')
}
/** With the receipt the laptop's copy goes, and a register line stays. */
export async function emptyLaptop(laptop: Page, receipt: string): Promise<void> {
	const off = panel(laptop, 'Take the records off this laptop')
	await off.getByLabel('Receipt from home').fill('1a2b-3c4d-5e6f')
	await button(off, 'Remove the copy here').press('Enter')
	await expect(off.getByRole('alert').filter({ hasText: 'not the receipt' })).toBeVisible()
	await off.getByLabel('Receipt from home').fill(receipt)
	await button(off, 'Remove the copy here').press('Enter')
	await expect(
		laptop.getByRole('status').filter({ hasText: 'were taken off this laptop' }),
	).toBeVisible()
	await shot(laptop, 'removed')
	await laptop.getByRole('link', { name: 'under Retention' }).press('Enter')
	await expect(
		laptop.getByRole('table', { name: 'Register' }).getByRole('row', { name: /Tui Ashdown/ }),
	).toContainText(`merged at home, receipt ${receipt}`)
	await shot(laptop, 'register')
}
