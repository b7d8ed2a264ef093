/** What a person meets who opens a store and reads everything in it. */

import { join } from 'node:path'
import { type Program, World } from '../compatibility/scenario/program.ts'
import { type Views, viewsOf } from '../compatibility/views.ts'
import { lookedAt, ownerPassphrase } from './everything.ts'

export interface Look {
	/** why the program did not open the folder at all */
	opening?: string
	/** why nobody could unlock */
	unlock?: string
	/** what was said before and after unlocking */
	warnings: string[]
	views: Views
	/** what the verification named */
	problems: string[]
	/** what a backup named */
	backup?: string
	/** words that no person should meet: of the database, of a programming fault */
	faults: string[]
}
const raw =
	/SQLITE|disk image|malformed|constraint|no such (table|column)|duplicate column|syntax error|could not finish this|undefined|\bNaN\b|\[object|\.ts:\d/
const faultsIn = (texts: readonly string[]): string[] => texts.filter((text) => raw.test(text))
const messageOf = (error: unknown): string =>
	error instanceof Error ? error.message : String(error)

/**
 * @param lastRow the last row of the trail that counts
 * @param moment what the PC's clock shows
 */
export async function lookAt(
	program: Program,
	pc: string,
	{ lastRow = Number.MAX_SAFE_INTEGER, moment = lookedAt } = {},
): Promise<Look> {
	const look: Look = { warnings: [], views: {}, problems: [], faults: [] }
	const notes: string[] = []
	const world = new World(program, moment, join(pc, 'outside'), (text) => notes.push(text))
	let opened: ReturnType<World['open']>
	try {
		opened = world.open(join(pc, 'records'))
	} catch (error) {
		const opening = messageOf(error)
		return { ...look, opening, faults: faultsIn([opening]) }
	}
	try {
		const { ask, call } = opened
		const status = async () => (await ask('session.status')).warnings as string[]
		look.warnings.push(...(await status()))
		const answer = await call('session.unlock', { passphrase: ownerPassphrase })
		if (answer.ok) {
			look.warnings.push(...(await status()))
			look.views = (await viewsOf(call, lastRow)).views
			const verified = look.views['audit.verify'] as { problems?: string[]; refused?: string }
			look.problems = verified.problems ?? [verified.refused ?? '']
			look.warnings.push(...(await status()))
		} else look.unlock = answer.message
	} catch (error) {
		look.faults.push(`thrown: ${messageOf(error)}`)
	}
	opened.close()
	const refusals = Object.entries(look.views).flatMap(([view, value]) => {
		const { refused } = value as { refused?: string }
		return refused === undefined ? [] : [`${view}: ${refused}`]
	})
	look.warnings = [...new Set(look.warnings)]
	const said = [...look.warnings, ...look.problems, ...refusals, look.unlock ?? '']
	look.faults.push(...faultsIn(said))
	if (look.faults.length > 0) look.faults.push(...notes)
	return look
}
/** Whether a backup of it says something. @returns its words; undefined where it was made */
export async function backupSays(program: Program, pc: string): Promise<string | undefined> {
	const opened = new World(program, lookedAt, join(pc, 'outside')).open(join(pc, 'records'))
	try {
		await opened.ask('session.unlock', { passphrase: ownerPassphrase })
		const answer = await opened.call('backups.make')
		return answer.ok ? undefined : answer.message
	} finally {
		opened.close()
	}
}
