/**
 * How long a match takes against a shelf of 500 models, and whether the time grows no faster than
 * the shelf.
 */
import { readFileSync } from 'node:fs'
import { assess } from '../../shared/engine/assess.ts'
import { shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Shelf } from '../../shared/engine/visit/shelf.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

const file = (name: string) =>
	JSON.parse(readFileSync(new URL(`../../assets/demo/${name}`, import.meta.url), 'utf8'))
const limitMs = 20
/**
 * Twice the models may take a little more than twice the time: the small one is partly overhead the
 * other way.
 */
const mostGrowth = 3
/** Processor time, so that other work on the PC does not count; the smallest of several runs. */
function leastMs(work: () => unknown, runs = 31): number {
	for (let run = 0; run < 10; run++) work()
	const times = Array.from({ length: runs }, () => {
		const from = process.cpuUsage()
		work()
		const used = process.cpuUsage(from)
		return (used.user + used.system) / 1000
	})
	return Math.min(...times)
}
/** Time of the match alone: an assessment with the shelf less one without. */
export async function matchBench(): Promise<
	{ name: string; value: number; unit: string; limit: number }[]
> {
	const shelf = file('shelf.json') as Shelf
	const grown = (count: number): Shelf => ({
		...shelf,
		models: Array.from({ length: count }, (_, index) => {
			const model = shelf.models[index % (shelf.models.length - 1)]!
			return { ...model, id: `${model.id}-${index}` }
		}),
	})
	return ['visit-adult.json', 'visit-adolescent.json'].flatMap((name) => {
		const visit = file(name) as Visit
		const base = leastMs(() => assess(visit))
		const over = (count: number) => {
			const larger = grown(count)
			return leastMs(() => assess(visit, [], shippedProtocol, larger)) - base
		}
		const [half, whole, twice] = [over(250), over(500), over(1000)]
		return [
			{ name: `match, 500 models, ${name}`, value: whole, unit: 'ms', limit: limitMs },
			{
				name: `match, growth from 250 to 500 models, ${name}`,
				value: whole / half,
				unit: 'times',
				limit: mostGrowth,
			},
			{
				name: `match, growth from 500 to 1000 models, ${name}`,
				value: twice / whole,
				unit: 'times',
				limit: mostGrowth,
			},
		]
	})
}
