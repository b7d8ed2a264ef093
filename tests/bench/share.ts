/**
 * Records shared over a real server with TLS on this PC: many brought and fetched, and how soon what is
 * written on one PC stands on another. Nothing where PostgreSQL is not installed.
 */

import { Flow } from '../../electron/share/flow/flow.ts'
import { meet } from '../../electron/share/flow/meet.ts'
import { pull } from '../../electron/share/flow/pull.ts'
import { push } from '../../electron/share/flow/push.ts'
import type { Store } from '../../electron/store/store.ts'
import { Clinic, type Pc } from '../host/share/bench.ts'
import { Cluster, noServer } from '../host/share/cluster.ts'
import { at, storesOf, takingOf, writeIn } from '../host/share/stores.ts'

interface Line {
	name: string
	value: number
	unit: string
	limit: number
}
/** As many records as a clinic writes in some years; `LASTWRIGHT_RECORDS` for another number. */
const records = Number(process.env.LASTWRIGHT_RECORDS ?? 20_000)
const writes = 200
/** bytes of one, before it is sealed */
const long = 600

function fill(store: Store): void {
	const note = 'x'.repeat(long)
	for (let from = 0; from < records; from += 500)
		store.together(() => {
			for (let number = from; number < Math.min(records, from + 500); number++)
				store.append({ kind: 'player', at, value: { number, note } })
		})
}
const seconds = async (work: () => Promise<unknown>): Promise<number> => {
	const before = performance.now()
	await work()
	return (performance.now() - before) / 1000
}
const heldMb = (): number => {
	globalThis.gc?.()
	return process.memoryUsage().rss / 1e6
}
async function many(first: [Store, Pc], second: [Store, Pc]): Promise<Line[]> {
	const limit = Number.POSITIVE_INFINITY
	fill(first[0])
	const before = heldMb()
	const bring = async () => {
		const { mark } = await meet(first[1].client, first[0].sharing)
		await push(first[1].client, first[0].sharing, mark)
	}
	const fetch = async () => {
		const { mark } = await meet(second[1].client, second[0].sharing)
		await pull(second[1].client, takingOf(second[0]), mark)
	}
	return [
		{ name: `share: ${records} records brought`, value: await seconds(bring), unit: 's', limit },
		{ name: `share: ${records} records fetched`, value: await seconds(fetch), unit: 's', limit },
		{ name: 'share: memory more afterwards', value: heldMb() - before, unit: 'MB', limit },
	]
}
/** Time from a write until it stands in the other store's file. */
async function sooner(clinic: Clinic, from: [Store, Pc], to: [Store, Pc]): Promise<Line[]> {
	let arrived = (): void => {}
	const flowOf = ([store, pc]: [Store, Pc]) => {
		const taking = takingOf(store)
		const flow = new Flow({
			...taking,
			take: (coming, mark) => {
				taking.take(coming, mark)
				if (coming.length > 0) arrived()
			},
			wish: clinic.wish(pc),
			now: () => new Date(),
		})
		flow.start()
		return flow
	}
	const flows = [flowOf(from), flowOf(to)]
	const took: number[] = []
	for (let written = 0; written < writes; written++) {
		const came = new Promise<void>((resolve) => {
			arrived = resolve
		})
		const before = performance.now()
		writeIn(from[0], { written })
		flows[0]?.wake()
		await came
		took.push(performance.now() - before)
	}
	for (const flow of flows) await flow.stop()
	const sorted = took.toSorted((one, other) => one - other)
	const share = (part: number) => sorted[Math.floor(part * sorted.length)] ?? 0
	return [
		{
			name: 'share: written here, stands there, median',
			value: share(0.5),
			unit: 'ms',
			limit: 300,
		},
		{
			name: 'share: written here, stands there, 95 %',
			value: share(0.95),
			unit: 'ms',
			limit: 1000,
		},
	]
}
export async function shareBench(): Promise<Line[]> {
	if (noServer !== undefined) {
		process.stdout.write(`share: skipped, ${noServer}\n`)
		return []
	}
	const cluster = await new Cluster().make()
	const clinic = await Clinic.of(cluster)
	const [one, two] = await storesOf(2)
	if (!one || !two) throw new Error('two stores were asked for')
	const first = await clinic.pc(undefined, one.store.origin)
	const second = await clinic.pc(first, two.store.origin)
	try {
		return [
			...(await many([one.store, first], [two.store, second])),
			...(await sooner(clinic, [one.store, first], [two.store, second])),
		]
	} finally {
		await clinic.end()
		for (const { store } of [one, two]) store.close()
		await cluster.stop('crash')
	}
}
