/**
 * Damages of single bits and bytes anywhere in the records file: whatever they change of what a
 * person sees is said in words, at unlock, on reading, or by the verification.
 */
import { type ChildProcess, fork } from 'node:child_process'
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Everything, makeEverything } from './everything.ts'

/** How a damage was met. */
export const outcomes = [
	'same',
	'said at opening',
	'said at unlock',
	'said on reading',
	'said by verify only',
	'said by backup only',
	'silent',
] as const
export type Outcome = (typeof outcomes)[number]
export interface Damage {
	round: number
	/** where in the file, and what was done there */
	at: string
	outcome: Outcome
	/** answers that were other than before */
	changed: string[]
	said: string[]
	faults: string[]
}
export interface DamageResult {
	seed: number
	rounds: number
	perSecond: number
	counts: Record<Outcome, number>
	/** the most answers that one damage changed without keeping the records closed */
	mostChanged: number
	/** each one a fault of the program */
	wrong: Damage[]
}
const hangMs = 120_000
const worker = join(import.meta.dirname, 'damage-worker.ts')

/** Works in a process of its own, so that a hang or a crash is met too. */
function inProcess(
	everything: Everything,
	seed: number,
	[from, to]: readonly [number, number],
	met: (damage: Damage) => void,
): Promise<void> {
	const pc = copyFor(everything)
	return new Promise<void>((resolve, reject) => {
		const child: ChildProcess = fork(worker, [pc, String(seed), String(from), String(to)], {
			execArgv: ['--disable-warning=ExperimentalWarning'],
		})
		let next = from
		let watch: NodeJS.Timeout
		const hangs = () => {
			clearTimeout(watch)
			watch = setTimeout(() => child.kill('SIGKILL'), hangMs)
		}
		hangs()
		child.on('message', (damage: Damage) => {
			hangs()
			next = damage.round + 1
			met(damage)
		})
		child.once('error', reject)
		child.once('close', (code, signal) => {
			clearTimeout(watch)
			if (code === 0 && next > to) return resolve()
			if (signal === null && next === from)
				return reject(new Error(`the rounds from ${from} on could not begin (${code})`))
			const faults = [`the program ended (${code ?? signal}) or hung in this round`]
			met({ round: next, at: '', outcome: 'silent', changed: [], said: [], faults })
			if (next >= to) return resolve()
			inProcess(everything, seed, [next + 1, to], met).then(resolve, reject)
		})
	}).finally(() => rmSync(pc, { recursive: true, force: true }))
}
/** Each process has the records for itself; on memory where the PC has such a disk. */
function copyFor(everything: Everything): string {
	const shared = process.platform === 'linux' ? '/dev/shm' : tmpdir()
	const pc = mkdtempSync(join(shared, 'lastwright-damaged-'))
	cpSync(everything.pc, pc, { recursive: true, preserveTimestamps: true })
	return pc
}
/** @param only this round, to look at one again */
export async function damages(
	rounds: number,
	seed: number,
	{ lanes = 2, only }: { lanes?: number; only?: number } = {},
	tell: (text: string) => void = () => {},
): Promise<DamageResult> {
	const everything = await makeEverything()
	const all: Damage[] = []
	const began = performance.now()
	const met = (damage: Damage): void => {
		all.push(damage)
		if (isWrong(damage) || only !== undefined) tell(JSON.stringify(damage))
		if (all.length % 100 === 0) tell(`${all.length} damages, ${all.filter(isWrong).length} wrong`)
	}
	const share = Math.ceil(rounds / lanes)
	const ranges: [number, number][] =
		only === undefined
			? Array.from({ length: lanes }, (_, lane) => [
					lane * share + 1,
					Math.min(rounds, (lane + 1) * share),
				])
			: [[only, only]]
	await Promise.all(
		ranges
			.filter(([from, to]) => from <= to)
			.map((range) => inProcess(everything, seed, range, met)),
	)
	rmSync(everything.pc, { recursive: true, force: true })
	return resultOf(seed, all, (performance.now() - began) / 1000)
}
/** What changed is to be said where it is read: that the verification knows of it is not enough. */
const isWrong = ({ outcome, changed, faults }: Damage): boolean =>
	outcome === 'silent' ||
	faults.length > 0 ||
	(outcome === 'said by verify only' && changed.length > 0)
function resultOf(seed: number, all: readonly Damage[], seconds: number): DamageResult {
	const counts = Object.fromEntries(
		outcomes.map((outcome) => [outcome, 0]),
	) as DamageResult['counts']
	for (const { outcome } of all) counts[outcome]++
	const open = all.filter(({ outcome }) => !['said at opening', 'said at unlock'].includes(outcome))
	return {
		seed,
		rounds: all.length,
		perSecond: Math.round((all.length / seconds) * 10) / 10,
		counts,
		mostChanged: Math.max(0, ...open.map(({ changed }) => changed.length)),
		wrong: all.filter(isWrong),
	}
}
