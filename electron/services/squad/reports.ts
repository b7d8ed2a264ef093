/** Writing the signed reports of a screening day into a folder, while the board goes on. */
import { renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { dayInWords } from '../../../shared/engine/plain/days.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { folderToWrite, writeTrouble } from '../clinic/places.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { documentFor, mayLeave } from '../visits/composing.ts'
import { keepDocument } from '../visits/documents.ts'
import { handedOver, openReport } from '../visits/reports.ts'
import { openVisit } from '../visits/visits.ts'
import { type BoardNeeds, signedRows } from './board.ts'
import { dayOf } from './day.ts'

type Needs = BoardNeeds & Pick<Memory, 'clinic' | 'outbox' | 'outreach' | 'people'>

/** Players whose pages are drawn at the same time: as many as there are drawing threads. */
const drawnAtOnce = 2

/** The writing of one day's reports: how far it is, and how it ended. */
interface Run {
	running: boolean
	done: number
	total: number
	/** nothing more is begun: cancelled, or a fault that would meet every player */
	stop: boolean
	files: number
	/** players whose report could not be written, with the reason */
	failed: string[]
	/** how it ended, in words; empty where all is well */
	said: string
}
type SignedRow = ReturnType<typeof signedRows>[number]
/** What one writing is about. */
interface Order {
	adultYears: number
	day: string
	folder: string
	/** the players not begun yet */
	waiting: SignedRow[]
}

/** Runs by screening day; gone with the memory they belong to. */
const runsByMemory = new WeakMap<Memory['players'], Map<string, Run>>()
function runsOf({ players }: Pick<Memory, 'players'>): Map<string, Run> {
	const runs = runsByMemory.get(players) ?? new Map<string, Run>()
	runsByMemory.set(players, runs)
	return runs
}
/**
 * Writes the signed reports of the day into a folder, and for minors the guardian's page, two
 * players at a time. A file never holds a name in its name.
 */
export function startReports(
	memory: Needs,
	deps: Deps,
	{ squadId, folder }: InputOf<'squad.reports'>,
): OutputOf<'squad.reports'> {
	folderToWrite(folder)
	if (runsOf(memory).get(squadId)?.running)
		throw new Refusal(
			'squad.being-written',
			'The reports of this day are being written. Wait, or cancel.',
		)
	const rows = signedRows(memory, deps, squadId)
	if (rows.length === 0)
		throw new Refusal(
			'squad.nobody-signed',
			'Nobody of this day is signed yet. Sign one by one from the board first.',
		)
	const total = rows.length
	const run: Run = {
		running: true,
		done: 0,
		total,
		stop: false,
		files: 0,
		failed: [],
		said: '',
	}
	runsOf(memory).set(squadId, run)
	const { adultYears } = memory.clinic.settings.ages
	const { day } = dayOf(deps, squadId)
	void writeAll(memory, deps, run, { adultYears, day, folder, waiting: [...rows] })
	return { total }
}
/** Writes with several players under way at once, and says in the run how it ended. */
async function writeAll(memory: Needs, deps: Deps, run: Run, order: Order): Promise<void> {
	try {
		const lanes = Array.from({ length: drawnAtOnce }, () => writeWaiting(memory, deps, run, order))
		const ended = await Promise.allSettled(lanes)
		const troubles = ended.map((lane) => {
			if (lane.status === 'rejected') throw new Error('not written')
			return lane.value
		})
		// one word for the folder, not the same one for each player
		const trouble = troubles.find((words) => words !== undefined)
		run.said = endWords(run, trouble, deps.store.isOpen)
	} catch {
		run.said =
			`Stopped after ${run.done} of ${run.total} players: a report could not be ` +
			'made. Start again: what is written stays.'
	} finally {
		run.running = false
	}
}
function endWords(run: Run, trouble: string | undefined, isOpen: boolean): string {
	const whole = `${run.done} of ${run.total} players are written and whole`
	if (trouble !== undefined) return `Stopped: ${whole}. ${trouble}`
	if (run.stop) return `Cancelled. ${whole}.`
	if (isOpen) return ''
	return 'The records were locked meanwhile. Unlock and start again: what is written stays.'
}
/**
 * Takes one waiting player after the other. @returns what is wrong with the folder, in words, where
 * that ended it. @throws what is no refusal: a fault of ours
 */
async function writeWaiting(
	memory: Needs,
	deps: Deps,
	run: Run,
	order: Order,
): Promise<string | undefined> {
	while (!run.stop && deps.store.isOpen) {
		const row = order.waiting.shift()
		if (row === undefined) return undefined
		try {
			// awaited first: both lanes add to the same count
			const written = await writeReports(memory, deps, row, order)
			run.files += written
		} catch (error) {
			const trouble = noteTrouble(run, row, error, order.folder)
			if (trouble !== undefined) return trouble
		}
		run.done++
		// the board goes on, and a person can cancel, between two players
		await setImmediate()
	}
	return undefined
}
/**
 * A refusal is about one player, and the next one is begun. @returns what would meet every player,
 * in words. @throws what is no refusal; both stop the run
 */
function noteTrouble(run: Run, row: SignedRow, error: unknown, folder: string): string | undefined {
	const trouble = writeTrouble(error, folder, 'No half report')
	if (trouble === undefined && error instanceof Refusal) {
		run.failed.push(`${row.name}: ${error.message}`)
		return undefined
	}
	run.stop = true
	if (trouble === undefined) throw error
	return trouble.says
}
/**
 * @returns how many files were written. @throws Refusal where a visit may not leave: a student's
 * without countersignature, or one entered in error
 */
async function writeReports(
	memory: Needs,
	deps: Deps,
	row: SignedRow,
	{ adultYears, day, folder }: Order,
): Promise<number> {
	mayLeave(memory.players, deps, row.visitId)
	const stem = `${day}-number-${row.number.padStart(3, '0')}`
	const report = openReport(memory, deps, { visitId: row.visitId })
	const documents: [name: string, bytes: Uint8Array][] = [
		[`${stem}-report.pdf`, Buffer.from(report.base64, 'base64')],
	]
	if (ageYears(row.birthDate, day) < adultYears)
		documents.push([`${stem}-guardian.pdf`, await guardianPage(memory, deps, row.visitId)])
	for (const [name, bytes] of documents) writeWhole(folder, name, bytes)
	// whoever was given it is told of an amendment: the folder stands for them
	handedOver(memory, deps, {
		visitId: row.visitId,
		recipient: `Reports of the screening day, ${dayInWords(day)}`,
		channel: 'export',
	})
	return documents.length
}
/** The guardian's page as it was kept at signing; one that is made now is kept as well. */
async function guardianPage(memory: Needs, deps: Deps, visitId: string): Promise<Uint8Array> {
	const { guardian } = openVisit(deps, { visitId }).visit.player
	const { document, isKept } = await documentFor(memory, deps, {
		visitId,
		kind: 'guardian',
		recipient: { recipientId: 'guardian', role: 'guardian', name: guardian?.name ?? '' },
	})
	if (!isKept) keepDocument(deps, document)
	return Buffer.from(document.base64, 'base64')
}
/** Whole or not there: a cancelled run and a full stick leave no half file. */
function writeWhole(folder: string, name: string, bytes: Uint8Array): void {
	const coming = join(folder, `${name}.writing`)
	try {
		writeFileSync(coming, bytes, { mode: 0o600 })
		renameSync(coming, join(folder, name))
	} catch (error) {
		rmSync(coming, { force: true })
		throw error
	}
}
export function reportsProgress(
	memory: Pick<Memory, 'players'>,
	{ squadId }: InputOf<'squad.progress'>,
): OutputOf<'squad.progress'> {
	const run = runsOf(memory).get(squadId)
	if (!run) return { running: false, done: 0, total: 0, files: 0, failed: [], said: '' }
	const { stop: _, ...shown } = run
	return shown
}
export function cancelReports(
	memory: Pick<Memory, 'players'>,
	{ squadId }: InputOf<'squad.cancel'>,
): OutputOf<'squad.cancel'> {
	const run = runsOf(memory).get(squadId)
	if (run?.running) run.stop = true
	return { cancelled: run?.running === true }
}
