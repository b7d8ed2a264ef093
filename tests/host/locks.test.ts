/** One program at a time on a data folder: no two ever, and no dead one in the way. */
import { type ChildProcess, fork, spawn, spawnSync } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import { once } from 'node:events'
import {
	existsSync,
	mkdirSync,
	mkdtempSync,
	readFileSync,
	rmSync,
	statSync,
	utimesSync,
	writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, describe, expect, test, vi } from 'vitest'
import { type LockOptions, takeLock } from '../../electron/store/lock.ts'
import { Store } from '../../electron/store/store.ts'

const racer = fileURLToPath(new URL('./fixtures/lock-racer.ts', import.meta.url))
const holder = fileURLToPath(new URL('./fixtures/folder-holder.ts', import.meta.url))
const rounds = 500
const children: ChildProcess[] = []
afterEach(() => {
	for (const child of children.splice(0)) child.kill('SIGKILL')
})
const newFolder = (): string => mkdtempSync(join(tmpdir(), 'lastwright-locks-'))
const lockOf = (folder: string, options: LockOptions = {}) =>
	takeLock(folder, join(folder, 'lastwright.db'), options)
/** Whether this user may give a program a PC name of its own: root on Linux. */
const mayRename = spawnSync('unshare', ['--uts', 'hostname', 'other']).status === 0

async function startRacer(folder: string): Promise<ChildProcess> {
	const child = fork(racer, [folder], { execArgv: ['--disable-warning=ExperimentalWarning'] })
	children.push(child)
	await once(child, 'message')
	return child
}
/** Works on the records as version 0.1.0 does: it has them open, and holds none of our locks. */
async function startEarlier(folder: string): Promise<ChildProcess> {
	const script =
		"const { DatabaseSync } = require('node:sqlite'); const db = new DatabaseSync(process.argv[1]);" +
		"db.exec('PRAGMA journal_mode=WAL'); console.log('open'); setInterval(() => {}, 1000)"
	const child = spawn(process.execPath, ['-e', script, join(folder, 'lastwright.db')])
	children.push(child)
	await once(child.stdout, 'data')
	return child
}
async function tell(child: ChildProcess, what: 'take' | 'release'): Promise<string> {
	const answer = once(child, 'message')
	child.send(what)
	return String((await answer)[0])
}
async function kill(child: ChildProcess): Promise<void> {
	const gone = once(child, 'exit')
	child.kill('SIGKILL')
	await gone
}
test(`of 2 to 4 programs that start at once exactly one gets in, ${rounds} times, with kills between`, {
	timeout: 300_000,
}, async () => {
	const folder = newFolder()
	const racers = await Promise.all(Array.from({ length: 4 }, () => startRacer(folder)))
	for (let round = 0; round < rounds; round++) {
		const some = racers.slice(0, 2 + (round % 3))
		const answers = await Promise.all(some.map((child) => tell(child, 'take')))
		const where = `round ${round}: ${answers.join(', ')}`
		expect(answers.toSorted(), where).toEqual(['held', ...some.slice(1).map(() => 'refused')])
		const holder = answers.indexOf('held')
		if (round % 50 === 49) {
			await kill(some[holder]!)
			rmSync(join(folder, 'witness'))
			racers[holder] = await startRacer(folder)
		} else await tell(some[holder]!, 'release')
	}
})

describe('a lock that nobody holds stops no start', () => {
	const leftovers: [string, (folder: string) => void][] = [
		[
			'the number of a living program',
			(at) => writeFileSync(join(at, 'lastwright.lock'), `${process.ppid}`),
		],
		['our own number', (at) => writeFileSync(join(at, 'lastwright.lock'), `${process.pid}`)],
		['the number 1', (at) => writeFileSync(join(at, 'lastwright.lock'), '1')],
		['no number', (at) => writeFileSync(join(at, 'lastwright.lock'), '\0\0\0')],
		['a number beyond all', (at) => writeFileSync(join(at, 'lastwright.lock'), '9'.repeat(30))],
		['an empty lock', (at) => writeFileSync(join(at, 'lastwright.lock'), '')],
		['a folder', (at) => mkdirSync(join(at, 'lastwright.lock'))],
		[
			'a torn lock database',
			(at) => writeFileSync(join(at, 'lastwright.lock.db'), randomBytes(5000)),
		],
		['zeros', (at) => writeFileSync(join(at, 'lastwright.lock.db'), Buffer.alloc(4096))],
		[
			'a torn journal of it',
			(at) => writeFileSync(join(at, 'lastwright.lock.db-journal'), randomBytes(2000)),
		],
		['half a note', (at) => writeFileSync(join(at, 'lastwright.holder'), '{"host":"ano')],
		['an empty note', (at) => writeFileSync(join(at, 'lastwright.holder'), '')],
	]
	test.each(leftovers)('%s', (_, leave) => {
		const folder = newFolder()
		leave(folder)
		const store = new Store(folder)
		expect(() => new Store(folder)).toThrow(/already open in another Lastwright/)
		expect(statSync(join(folder, 'lastwright.lock.db')).size).toBe(0)
		store.close()
		expect(existsSync(join(folder, 'lastwright.holder'))).toBe(false)
		new Store(folder).close()
	})
	test('that its number now belongs to another program is said', () => {
		const folder = newFolder()
		writeFileSync(join(folder, 'lastwright.lock'), `${process.ppid}`)
		const store = new Store(folder)
		expect(store.notices).toEqual([
			expect.stringMatching(/left by a power cut.*belongs to another program.*were opened/),
		])
		store.close()
		const again = new Store(folder)
		expect(again.notices).toEqual([])
		again.close()
	})
})
describe('a program of version 0.1.0', () => {
	test('that works on the records is noticed, whatever number its lock tells', async () => {
		const folder = newFolder()
		new Store(folder).close()
		const earlier = await startEarlier(folder)
		for (const number of [earlier.pid, process.ppid]) {
			writeFileSync(join(folder, 'lastwright.lock'), String(number))
			expect(() => new Store(folder)).toThrow(/already open in another Lastwright \(process \d+\)/)
		}
		await kill(earlier)
		new Store(folder).close()
	})
	test('finds our number in its lock and stays out; it is taken out again at the end', () => {
		const folder = newFolder()
		const lock = join(folder, 'lastwright.lock')
		writeFileSync(lock, '999999999')
		const store = new Store(folder)
		expect(readFileSync(lock, 'utf8')).toBe(String(process.pid))
		store.close()
		expect(existsSync(lock)).toBe(false)
	})
})
describe('two PCs on one folder', () => {
	const minute = 60_000
	const clock = (startMs: number) => {
		let nowMs = startMs
		return {
			now: () => nowMs,
			pass: (ms: number) => {
				nowMs += ms
			},
		}
	}
	const today = Date.parse('2027-01-20T09:00:00Z')
	/** A PC that crashed: its note stays, its lock is gone. */
	function crashed(folder: string, now: () => number): void {
		const note = join(folder, 'lastwright.holder')
		const held = lockOf(folder, { host: 'front-desk', now })
		const text = readFileSync(note, 'utf8')
		held.release()
		writeFileSync(note, text)
	}
	const anyClock: [string, number][] = [
		['agree', 0],
		['differ by an hour', 60 * minute],
		['differ by an hour the other way', -60 * minute],
		['differ by ten years', 10 * 365 * 1440 * minute],
		['differ by ten years the other way', -10 * 365 * 1440 * minute],
	]
	test.each(anyClock)(
		'one that crashed keeps the other out for a minute, where the clocks %s',
		(_, apartMs) => {
			const folder = newFolder()
			crashed(folder, clock(today + apartMs).now)
			const here = clock(today)
			const start = () => lockOf(folder, { now: here.now })
			expect(start).toThrow(/open on another PC: front-desk.*again in 60 seconds/)
			here.pass(20_000)
			expect(start).toThrow(/again in 40 seconds/)
			here.pass(40_000)
			const held = start()
			expect(held.notices).toEqual([expect.stringMatching(/The PC front-desk had the records/)])
			held.release()
			expect(lockOf(folder).notices).toEqual([])
		},
	)
	test('one that still works keeps the other out however long that tries', async () => {
		const folder = newFolder()
		const there = clock(today - 3 * 3_600_000)
		crashed(folder, there.now)
		const note = join(folder, 'lastwright.holder')
		const here = clock(today)
		for (let look = 0; look < 20; look++) {
			expect(() => lockOf(folder, { now: here.now })).toThrow(/open on another PC/)
			here.pass(2 * minute)
			there.pass(2 * minute)
			const holder = JSON.parse(readFileSync(note, 'utf8'))
			writeFileSync(
				note,
				JSON.stringify({ ...holder, renewed: new Date(there.now()).toISOString() }),
			)
		}
	})
	test('a clock that is set back meanwhile only begins the wait anew', () => {
		const folder = newFolder()
		crashed(folder, clock(today).now)
		const here = clock(today + 365 * 1440 * minute)
		expect(() => lockOf(folder, { now: here.now })).toThrow(/60 seconds/)
		here.pass(-365 * 1440 * minute)
		expect(() => lockOf(folder, { now: here.now })).toThrow(/60 seconds/)
		here.pass(minute)
		lockOf(folder, { now: here.now }).release()
	})
	test('a note from long ago, by the clocks of both PCs and of the disk, makes nobody wait', () => {
		const folder = newFolder()
		const then = Date.now() - 30 * 1440 * minute
		crashed(folder, clock(then).now)
		utimesSync(join(folder, 'lastwright.holder'), then / 1000, then / 1000)
		const held = lockOf(folder)
		expect(held.notices).toHaveLength(1)
		held.release()
	})
	test('one whose folder was taken over while it slept writes nothing more, and says why', async () => {
		vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] })
		try {
			const folder = newFolder()
			const store = new Store(folder, { cost: 1024 })
			await store.setUp('seven grey herons')
			const note = join(folder, 'lastwright.holder')
			const own = JSON.parse(readFileSync(note, 'utf8'))
			const other = JSON.stringify({ ...own, host: 'front-desk', token: 'of-the-other-pc' })
			writeFileSync(note, other)
			vi.advanceTimersByTime(10_000)
			expect(store.isOpen).toBe(false)
			expect(store.notices).toEqual([expect.stringMatching(/Another PC, front-desk/)])
			await expect(store.unlock('seven grey herons')).rejects.toThrow(
				/Nothing more is written here/,
			)
			store.close()
			expect(readFileSync(note, 'utf8')).toBe(other)
		} finally {
			vi.useRealTimers()
		}
	})
	test('the note is renewed while the folder is held, and put back where it went', () => {
		vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] })
		try {
			const folder = newFolder()
			const note = join(folder, 'lastwright.holder')
			const here = clock(today)
			const held = lockOf(folder, { now: here.now })
			const renewed = () => JSON.parse(readFileSync(note, 'utf8')).renewed
			expect(renewed()).toBe('2027-01-20T09:00:00.000Z')
			here.pass(10_000)
			vi.advanceTimersByTime(10_000)
			expect(renewed()).toBe('2027-01-20T09:00:10.000Z')
			rmSync(note)
			vi.advanceTimersByTime(10_000)
			expect(renewed()).toBe('2027-01-20T09:00:10.000Z')
			held.release()
			expect(existsSync(note)).toBe(false)
		} finally {
			vi.useRealTimers()
		}
	})
	test.skipIf(!mayRename)(
		'a real one of another name is refused by its name while it works',
		async () => {
			const folder = newFolder()
			const other = spawn('unshare', [
				...['--uts', 'sh', '-c', 'hostname front-desk; exec "$@"', 'sh', process.execPath],
				...['--disable-warning=ExperimentalWarning', holder, folder],
			])
			children.push(other)
			await once(other.stdout, 'data')
			expect(() => new Store(folder)).toThrow(/open on another PC: front-desk \(process \d+\)/)
			await kill(other)
			expect(() => new Store(folder)).toThrow(/start Lastwright here again in 60 seconds/)
		},
	)
})
