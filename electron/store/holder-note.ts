/**
 * Who holds a data folder, told to other PCs that share it: renewed while it is held, so that a PC
 * that crashed does not keep the others out. Whether it is renewed is seen by looking twice, by the
 * clock of the one that looks: the clocks of two PCs are never compared with each other.
 */
import { createHash, randomBytes } from 'node:crypto'
import {
	closeSync,
	constants,
	existsSync,
	openSync,
	rmSync,
	statSync,
	writeFileSync,
	writeSync,
} from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { z } from 'zod'
import { readPlainFile } from './plain-file.ts'

const holderSchema = z.object({
	host: z.string().max(255),
	/** tells PCs of one name apart, where the system has such a number */
	machine: z.string().max(64),
	process: z.int().min(0),
	/** one holding of the folder */
	token: z.string().min(1).max(64),
	since: z.iso.datetime(),
	renewed: z.iso.datetime(),
})
export type Holder = z.infer<typeof holderSchema>
export interface NoteOptions {
	host?: string
	now?: () => number
	renewMs?: number
	goneMs?: number
}
const noteName = 'lastwright.holder'
const mostBytes = 4096
/** How often it is renewed, and after how long without that it is held to be gone; our choice. */
const usualRenewMs = 10_000
export const usualGoneMs = 60_000
/** Beyond this age by two clocks nobody is made to wait: no clocks in use are so far apart. */
const longGoneMs = 48 * 3_600_000

/** A digest of the number that the system gives this PC; empty where it gives none. */
function machineNumber(): string {
	try {
		const number = readPlainFile('/etc/machine-id', mostBytes).toString('utf8').trim()
		return createHash('sha256').update(`lastwright ${number}`).digest('hex').slice(0, 16)
	} catch {
		return ''
	}
}
/** Whether a holder is a program of this PC: then the lock of the system can be relied on. */
export const thisPc = (holder: Holder, { host = hostname() }: NoteOptions = {}): boolean =>
	holder.host === host && holder.machine === machineNumber()

/** The note that stands there; undefined where there is none, or half of one after a power cut. */
export const noteOf = (folder: string): Holder | undefined =>
	readAs(holderSchema, join(folder, noteName))

function readAs<T>(schema: z.ZodType<T>, file: string): T | undefined {
	try {
		return schema.parse(JSON.parse(readPlainFile(file, mostBytes).toString('utf8')))
	} catch {
		return undefined
	}
}

/** What was seen of a note, by the clock of this PC. */
const seenSchema = z.object({ token: z.string(), renewed: z.string(), seenMs: z.number() })
function seenFile(folder: string, { host = hostname() }: NoteOptions): string {
	const name = createHash('sha256').update(`${host} ${machineNumber()}`).digest('hex')
	return join(folder, `lastwright.waiting-${name.slice(0, 12)}`)
}
/**
 * Whether another PC still holds the folder. What is seen of its note is kept, for the next look.
 * @returns how long to wait before the next look, in ms; undefined where the other one is gone
 */
export function refusedByOtherPc(
	folder: string,
	holder: Holder,
	options: NoteOptions,
): number | undefined {
	const { now = Date.now, goneMs = usualGoneMs } = options
	const file = seenFile(folder, options)
	const seen = readAs(seenSchema, file)
	const isSame = seen?.token === holder.token && seen.renewed === holder.renewed
	const waitedMs = isSame ? now() - seen.seenMs : -1
	if (waitedMs >= goneMs) return undefined
	if (waitedMs < 0) {
		const { token, renewed } = holder
		writeFileSync(file, JSON.stringify({ token, renewed, seenMs: now() }), { mode: 0o600 })
	}
	return isLongGone(folder, file, holder, now()) ? undefined : goneMs - Math.max(0, waitedMs)
}
/** By its own clock held against ours, and by the clock of the disk that both files lie on. */
function isLongGone(folder: string, justWritten: string, holder: Holder, nowMs: number): boolean {
	const byDisk = statSync(justWritten).mtimeMs - statSync(join(folder, noteName)).mtimeMs
	return byDisk > longGoneMs && nowMs - Date.parse(holder.renewed) > longGoneMs
}

const textOf = (holder: Holder): string => `${JSON.stringify(holder)}\n`
/** Written over in place: it is always of the same length, and needs no room on a full disk. */
function writeOver(file: string, text: string): void {
	const handle = openSync(file, constants.O_WRONLY)
	try {
		writeSync(handle, text, 0)
	} finally {
		closeSync(handle)
	}
}
interface KeptNote {
	end: () => void
}
/**
 * Writes who holds the folder and renews it until it ends.
 * @param instead the note that was found before, whose holder is gone
 * @param lost told once where another one holds it instead
 * @returns undefined where another one wrote its note meanwhile
 */
export function keepNote(
	folder: string,
	instead: Holder | undefined,
	options: NoteOptions,
	lost: (other: Holder) => void,
): KeptNote | undefined {
	const { now = Date.now, renewMs = usualRenewMs, host = hostname() } = options
	const file = join(folder, noteName)
	const at = (): string => new Date(now()).toISOString()
	const own: Holder = {
		host,
		machine: machineNumber(),
		process: process.pid,
		token: randomBytes(12).toString('hex'),
		since: at(),
		renewed: at(),
	}
	const begin = (): void => {
		rmSync(file, { force: true })
		writeFileSync(file, textOf(own), { flag: 'wx', mode: 0o600 })
	}
	const meanwhile = noteOf(folder)
	if (meanwhile && meanwhile.token !== instead?.token) return undefined
	begin()
	rmSync(seenFile(folder, options), { force: true })
	const renew = (): void => {
		const standing = noteOf(folder)
		if (standing && standing.token !== own.token) {
			clearInterval(timer)
			lost(standing)
			return
		}
		own.renewed = at()
		try {
			if (standing) writeOver(file, textOf(own))
			else if (existsSync(folder)) begin()
		} catch {
			/* a stick that is out or a full disk: the next time may do, and others see it unrenewed */
		}
	}
	const timer = setInterval(renew, renewMs)
	timer.unref()
	return {
		end: () => {
			clearInterval(timer)
			if (noteOf(folder)?.token === own.token) rmSync(file, { force: true })
		},
	}
}
