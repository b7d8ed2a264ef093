/**
 * A set-up that is killed either happened or did not: the records open by the passphrase, with the
 * owner and a way to a printed recovery key, or they are set up anew.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { clinic } from '../compatibility/scenario/people.ts'
import { type Opened, type Program, World } from '../compatibility/scenario/program.ts'
import { runUntilKilled } from '../host/killed.ts'
import type { Chance } from './chance.ts'
import { plainProgram } from './everything.ts'

const worker = join(import.meta.dirname, 'set-up-worker.ts')
const passphrase = 'lantern over nine quarries'
const longestMs = 90
const moment = '2027-01-20T09:05:00.000Z'

const opened = (program: Program, pc: string): Opened =>
	new World(program, moment, join(pc, 'outside')).open(join(pc, 'records'))
async function recoveryOpens(program: Program, pc: string, recoveryKey: string) {
	const app = opened(program, pc)
	const given = { recoveryKey, newPassphrase: 'marble owl counts seven' }
	const answer = await app.call('session.unlockWithRecoveryKey', given)
	app.close()
	return answer.ok
}
/** The key that a person can hold in the end: the one that was shown, or a new one. */
async function keyHeld({ ask }: Opened, shown: string | undefined): Promise<string> {
	if (shown !== undefined) return shown
	return (await ask('session.newRecoveryKey', { passphrase })).recoveryKey
}
/** @returns whether it had happened, and a sentence for each fault */
export async function setUpUntilKilled(
	drawn: Chance,
): Promise<{ stood: boolean; faults: string[] }> {
	const program = await plainProgram()
	const pc = mkdtempSync(join(tmpdir(), 'lastwright-set-up-'))
	const delayMs = drawn.below(longestMs)
	try {
		const { lines } = await runUntilKilled(worker, [pc, passphrase], delayMs)
		const app = opened(program, pc)
		const { state } = await app.ask('session.status')
		if (state === 'needs-setup') {
			const faults =
				lines.length > 1 ? [`the key was shown after ${delayMs} ms, nothing stands`] : []
			await app.ask('session.setUp', { clinic, passphrase })
			app.close()
			return { stood: false, faults }
		}
		await app.ask('session.unlock', { passphrase })
		const { people } = await app.ask('people.list')
		const key = await keyHeld(app, lines[1])
		const { problems } = await app.ask('audit.verify')
		app.close()
		const faults = people.length === 1 ? problems : ['there is no owner', ...problems]
		if (!(await recoveryOpens(program, pc, key))) faults.push('the recovery key opens nothing')
		return { stood: true, faults }
	} catch (error) {
		const says = error instanceof Error ? error.message : String(error)
		return { stood: true, faults: [`set-up killed after ${delayMs} ms: ${says}`] }
	} finally {
		rmSync(pc, { recursive: true, force: true })
	}
}
