/**
 * The one piece of work with a pack that may be under way: how far it is, and that it can be stopped
 * as long as nothing of it counts.
 */
import { setImmediate } from 'node:timers/promises'
import type { OutputOf } from '../../../shared/contract.ts'
import type { WorkKind, WorkStep } from '../../../shared/desk/outreach/work.ts'
import { PackRefused } from '../../store/pack-refused.ts'
import type { PackWork } from '../../store/pack-work.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'

/** Other calls wait at most about so long; common practice, no source. */
const sliceMs = 15
/** What each piece of work leaves behind once it was stopped. */
const stoppedWords: Readonly<Record<WorkKind, string>> = {
	pack: 'No pack was made, and nothing was noted as taken along.',
	'way-back': 'No file for the way back was made. Everything stands here as before.',
	look: 'Nothing was changed.',
	merge: 'Nothing was taken in. The records here stand as before.',
	open: 'Nothing was brought to this PC.',
}
interface Run {
	what: WorkKind
	/** who began it; undefined on a PC without records */
	personId: string | undefined
	step: WorkStep
	done: number
	/** 0 where it is not known */
	total: number
	stop: boolean
	/** the last step, which is done whole or not at all */
	isLast: boolean
}
type Needs = Pick<Memory, 'people'>
type Stores = Pick<Deps, 'store'>
const runs = new WeakMap<Memory['people'], Run>()
const runOf = ({ people }: Needs): Run | undefined => runs.get(people)
const whoWorks = ({ people }: Needs, { store }: Stores): string | undefined =>
	store.isOpen ? people.atWork?.personId : undefined

/** Work that is watched and may be stopped. */
export interface WatchedWork extends PackWork {
	/** What follows is done at once and cannot be stopped. @throws PackRefused where it was before */
	last: (step: WorkStep) => Promise<void>
}
/**
 * Does one piece of work with a pack. It ends where it was cancelled, and where the records are
 * locked or another person works here meanwhile.
 * @throws Refusal where another piece is under way
 */
export async function watched<T>(
	memory: Needs,
	stores: Stores,
	what: WorkKind,
	does: (work: WatchedWork) => Promise<T>,
): Promise<T> {
	if (runOf(memory))
		throw new Refusal(
			'outreach.busy',
			'A pack is being made or read already. Wait until it is done, or cancel it.',
		)
	const personId = whoWorks(memory, stores)
	const run: Run = {
		what,
		personId,
		step: 'passphrase',
		done: 0,
		total: 0,
		stop: false,
		isLast: false,
	}
	runs.set(memory.people, run)
	try {
		return await does(workOf(memory, stores, run))
	} finally {
		runs.delete(memory.people)
	}
}
function workOf(memory: Needs, stores: Stores, run: Run): WatchedWork {
	let pausedMs = performance.now()
	const pause = async () => {
		await setImmediate()
		pausedMs = performance.now()
		goesOn(memory, stores, run)
	}
	return {
		at: async (step, done, total) => {
			// each step is seen at least once, and can be stopped
			const isNew = run.step !== step || done === 0
			Object.assign(run, { step, done, total })
			if (isNew || performance.now() - pausedMs > sliceMs) await pause()
		},
		last: async (step) => {
			Object.assign(run, { step, done: 0, total: 0 })
			// that it is the last step is asked for by the screen before the work begins
			await pause()
			run.isLast = true
		},
	}
}
/** @throws PackRefused where the work may not go on */
function goesOn(memory: Needs, stores: Stores, { what, personId, stop }: Run): void {
	if (stop) throw new PackRefused(`Cancelled. ${stoppedWords[what]}`, 'outreach.cancelled')
	if (whoWorks(memory, stores) !== personId)
		throw new PackRefused(
			`Stopped: the records were locked, or another person took over. ${stoppedWords[what]}`,
			'people.locked',
		)
}
/** So often what is read is read again where something is written meanwhile. A choice of this program. */
const mostReadings = 3
/**
 * What is read with pauses, as it stands at one moment: it is read again where a record was written
 * or destroyed meanwhile.
 * @throws PackRefused where records are written without an end
 */
export async function atOneMoment<T>(
	store: Pick<Deps['store'], 'state'>,
	work: PackWork,
	read: (work: PackWork) => Promise<T>,
): Promise<T> {
	for (let reading = 1; reading <= mostReadings; reading++) {
		const before = store.state
		const found = await read(work)
		if (store.state === before) return found
	}
	throw new PackRefused(
		'Records are being written here all the time. Wait until that is done, then try again.',
	)
}
/** Only who began a piece of work hears of it. */
const ownRun = (memory: Needs, stores: Stores): Run | undefined => {
	const run = runOf(memory)
	return run && run.personId === whoWorks(memory, stores) ? run : undefined
}
export function progressOfWork(memory: Needs, stores: Stores): OutputOf<'outreach.progress'> {
	const run = ownRun(memory, stores)
	if (!run) return { running: false }
	const { what, step, done, total, stop, isLast } = run
	return { running: true, what, step, done, total, mayCancel: !stop && !isLast }
}
export function cancelWork(memory: Needs, stores: Stores): OutputOf<'outreach.cancel'> {
	const run = ownRun(memory, stores)
	const cancelled = run !== undefined && !run.isLast
	if (cancelled) run.stop = true
	return { cancelled }
}
