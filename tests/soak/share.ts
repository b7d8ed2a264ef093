/**
 * Several PCs as processes write at once while PCs are killed, the server is killed and put back from an
 * older dump: nothing that was acknowledged is missing, and all hold the same.
 */
import { type ChildProcessByStdio, spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import type { Readable, Writable } from 'node:stream'
import { setTimeout as after } from 'node:timers/promises'
import { Clinic, type Pc } from '../host/share/bench.ts'
import { Cluster, noServer } from '../host/share/cluster.ts'
import { type Place, storesOf } from '../host/share/stores.ts'
import { type Chance, chance } from './chance.ts'
import type { Begun } from './share-worker.ts'

export interface ShareResult {
	seed: number
	promised: number
	held: number
	done: Record<string, number>
	/** a sentence for each fault */
	faults: string[]
}
const worker = join(import.meta.dirname, 'share-worker.ts')
const everyMs = 120
/** So long all may take until they hold the same; a choice of this run. */
const settledMs = 120_000

class Desk {
	readonly promised: string[] = []
	readonly ended: string[] = []
	readonly #begun: Begun
	#child: ChildProcessByStdio<Writable, Readable, null> | undefined
	#told: (ids: string[]) => void = () => {}
	constructor(place: Place, clinic: Clinic, pc: Pc) {
		this.#begun = { place, wish: clinic.wish(pc), everyMs }
	}
	async start(): Promise<void> {
		const child = spawn(
			process.execPath,
			['--disable-warning=ExperimentalWarning', worker, JSON.stringify(this.#begun)],
			{ stdio: ['pipe', 'pipe', 'inherit'] },
		)
		this.#child = child
		await new Promise<void>((resolve, reject) => {
			child.once('exit', (code) => reject(new Error(`a PC did not begin (${code})`)))
			createInterface({ input: child.stdout }).on('line', (line) => {
				if (line === 'begun') resolve()
				this.#take(line)
			})
		})
	}
	#take(line: string): void {
		if (line.startsWith('wrote ')) this.promised.push(line.slice(6))
		if (line.startsWith('stopped ')) this.ended.push(line)
		if (line.startsWith('held ')) this.#told(JSON.parse(line.slice(5)))
	}
	async kill(): Promise<void> {
		const child = this.#child
		if (!child) return
		const ended = once(child, 'exit')
		child.kill('SIGKILL')
		await ended
	}
	/** What it holds now; it writes no more. */
	held(): Promise<string[]> {
		return new Promise((resolve) => {
			this.#told = resolve
			this.#child?.stdin.write('held\n')
		})
	}
}
type Act = 'a PC killed' | 'the server killed' | 'a dump made' | 'the dump put back'
async function act(
	what: Act,
	{
		cluster,
		clinic,
		desks,
		dump,
	}: { cluster: Cluster; clinic: Clinic; desks: Desk[]; dump: Uint8Array },
	drawn: Chance,
): Promise<Uint8Array> {
	if (what === 'a PC killed') {
		const desk = drawn.pick(desks)
		await desk.kill()
		await desk.start()
	}
	if (what === 'the server killed') {
		await cluster.stop('crash')
		await after(drawn.below(3000))
		await cluster.start()
	}
	if (what === 'a dump made') return cluster.dump(clinic.database)
	if (what === 'the dump put back') await cluster.putBack(clinic.database, dump)
	return dump
}
const acts: readonly Act[] = [
	'a PC killed',
	'a PC killed',
	'the server killed',
	'a dump made',
	'the dump put back',
]

/** Asks until all hold the same and all that was promised, or for so long. */
async function settle(desks: readonly Desk[]): Promise<{ held: string[][]; missing: string[] }> {
	const promised = desks.flatMap((desk) => desk.promised)
	for (const from = Date.now(); ; await after(500)) {
		const held = await Promise.all(desks.map((desk) => desk.held()))
		const missing = promised.filter(
			(id) => !held.every((all) => all.some((one) => one.startsWith(id))),
		)
		const isSame = new Set(held.map((all) => all.join())).size === 1
		if ((isSame && missing.length === 0) || Date.now() - from > settledMs) return { held, missing }
	}
}
/** @param rounds how many acts, some two seconds apart */
export async function shares(
	rounds: number,
	seed: number,
	tell: (text: string) => void,
	howMany = 6,
): Promise<ShareResult> {
	const result: ShareResult = { seed, promised: 0, held: 0, done: {}, faults: [] }
	if (noServer !== undefined) {
		tell(`not tried: ${noServer}`)
		return result
	}
	const drawn = chance(seed)
	const cluster = await new Cluster().make()
	const clinic = await Clinic.of(cluster)
	const desks: Desk[] = []
	let first: Pc | undefined
	for (const { place, store } of await storesOf(howMany)) {
		const pc = await clinic.pc(first, store.origin)
		first ??= pc
		store.close()
		desks.push(new Desk(place, clinic, pc))
	}
	await clinic.end()
	await Promise.all(desks.map((desk) => desk.start()))
	let dump = cluster.dump(clinic.database)
	for (let round = 0; round < rounds; round++) {
		await after(1000 + drawn.below(2000))
		const what = drawn.pick(acts)
		dump = await act(what, { cluster, clinic, desks, dump }, drawn)
		result.done[what] = (result.done[what] ?? 0) + 1
		tell(`${round + 1} of ${rounds}: ${what}`)
	}
	const { held, missing } = await settle(desks)
	for (const desk of desks) result.faults.push(...desk.ended)
	if (missing.length > 0) result.faults.push(`${missing.length} promised records are missing`)
	if (new Set(held.map((all) => all.join())).size > 1)
		result.faults.push(
			`the PCs hold different records: ${held.map(({ length }) => length).join(', ')}`,
		)
	result.promised = desks.reduce((sum, { promised }) => sum + promised.length, 0)
	result.held = held[0]?.length ?? 0
	for (const desk of desks) await desk.kill()
	await cluster.stop('crash')
	return result
}
