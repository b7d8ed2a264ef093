/** What tests of a restore do again and again. */
import { expect } from 'vitest'
import { type Opened, passphrase } from './bench-app.ts'

export const staff = { name: 'B. Example', registration: 'R2', role: 'clinician' as const }
export const theirs = 'nine herons over the estuary'

/** Restores a backup and unlocks. @returns the file name of what stood before */
export async function restored(app: Opened, file: string, by = passphrase): Promise<string> {
	const { before } = await app.ask('backups.restore', { file })
	await app.ask('session.unlock', { passphrase: by })
	return before
}
// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
export const listAfter = async (app: Opened): Promise<any> =>
	(await app.ask('backups.cameBack')).lists[0]
/** The lines of the list after a restore, by what they are about. */
export async function linesOf(app: Opened, what?: string) {
	const { lines } = await listAfter(app)
	return lines.filter((line: { what: string }) => what === undefined || line.what === what)
}
/** Leaves all open lines as they stand. */
export async function leaveAll(app: Opened): Promise<void> {
	const { restoreId, lines } = await listAfter(app)
	const open = lines.filter((line: { decided?: object }) => !line.decided)
	await app.ask('backups.decide', {
		restoreId,
		decisions: open.map(
			({ lineId, choices }: { lineId: string; choices: { choice: string }[] }) => ({
				lineId,
				choice: choices[0]?.choice,
			}),
		),
	})
	expect((await listAfter(app)).open).toBe(0)
}
/** A later moment: backups are named by it. */
export const later = (app: Opened, ms = 1000): void => {
	app.clock.ms += ms
}
