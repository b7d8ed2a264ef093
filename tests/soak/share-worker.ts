/** One PC as a process: writes, and tells each record once it is durable; the flow runs beside. */
import { createInterface } from 'node:readline'
import { setTimeout as after } from 'node:timers/promises'
import type { Wish } from '../../electron/share/connect.ts'
import { Flow } from '../../electron/share/flow/flow.ts'
import { holding, openStore, type Place, takingOf, writeIn } from '../host/share/stores.ts'

/** What a process is given to begin with. */
export interface Begun {
	place: Place
	wish: Wish
	/** between two writes, on the average */
	everyMs: number
}
const { place, wish, everyMs } = JSON.parse(process.argv[2] ?? '') as Begun
const tell = (line: string) => process.stdout.write(`${line}\n`)
const store = await openStore(place)
const times = { firstMs: 50, longestMs: 500, lookMs: 2000, turnMs: 5000 }
const flow = new Flow({
	...takingOf(store),
	wish,
	now: () => new Date(),
	tell: ({ is, refused }) => refused && tell(`${is} ${refused.code}`),
	times,
})
flow.start()
let isQuiet = false
// whoever began it is gone
process.stdin.once('end', () => process.exit(1))
createInterface({ input: process.stdin }).on('line', (line) => {
	isQuiet = true
	if (line === 'held') tell(`held ${JSON.stringify(holding(store))}`)
})
tell('begun')
for (let number = 0; !isQuiet; number++) {
	const id = writeIn(store, { number, note: 'x'.repeat(200 + ((number * 37) % 900)) })
	tell(`wrote ${id}`)
	flow.wake()
	await after(everyMs * (0.5 + Math.random()))
}
