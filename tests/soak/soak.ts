/**
 * The long runs of faults and attacks: `npm run soak -- NAME [--seed N] [--rounds N] [--only N]`.
 * Everything drawn follows from the printed seed. Small figures of each run in npm test.
 */
import { parseArgs } from 'node:util'
import ownTemporary from '../temporary.ts'
import { damages } from './damages.ts'
import { forger, wrongWith } from './forger.ts'
import { fillUntilFull } from './full-disk.ts'
import { killedSetUps, killedUpgrades } from './killed-starts.ts'
import { kills } from './kills.ts'
import { planLaws } from './plan.ts'
import { restores } from './restores.ts'
import { seasons } from './seasons.ts'
import { shares } from './share.ts'

interface Given {
	seed: number
	rounds: number | undefined
	only: number | undefined
}
interface Ended {
	faults: number
	result: unknown
}
const tell = (text: string) => process.stdout.write(`${text}\n`)
const runs: Record<string, (given: Given) => Promise<Ended>> = {
	kills: async ({ seed, rounds = 500 }) => {
		const setUps = await killedSetUps(Math.ceil(rounds / 5), seed, tell)
		const upgrades = await killedUpgrades(Math.ceil(rounds / 10), seed, tell)
		const result = await kills(rounds - setUps.kills - upgrades.kills, seed, tell)
		const faults = [...setUps.faults, ...upgrades.faults, ...result.faults]
		return { faults: faults.length, result: { setUps, upgrades, work: result } }
	},
	damages: async ({ seed, rounds = 2000, only }) => {
		const result = await damages(rounds, seed, only === undefined ? {} : { only }, tell)
		return { faults: result.wrong.length, result }
	},
	forger: async () => {
		const result = await forger(tell)
		return { faults: result.filter((forged) => wrongWith(forged).length > 0).length, result }
	},
	restore: async ({ seed, rounds = 50 }) => {
		const result = await restores(rounds, seed, tell)
		return { faults: result.faults.length, result }
	},
	plan: async ({ seed, rounds = 10_000, only }) => {
		const result = planLaws(rounds, seed, only === undefined ? {} : { only }, tell)
		const faults = Object.values(result.broken).reduce((sum, visits) => sum + visits, 0)
		return { faults, result }
	},
	season: async ({ seed, rounds = 200, only }) => {
		const result = await seasons(rounds, seed, only === undefined ? {} : { only }, tell)
		return { faults: result.faults.length, result }
	},
	share: async ({ seed, rounds = 30 }) => {
		const result = await shares(rounds, seed, tell)
		return { faults: result.faults.length, result }
	},
	disk: async ({ rounds = 30 }) => {
		const result = await fillUntilFull(rounds, tell)
		if (result.rounds === 0) tell('not tried: this PC lets no small file system be mounted')
		return { faults: result.lost.length, result }
	},
}
const { positionals, values } = parseArgs({
	allowPositionals: true,
	options: {
		seed: { type: 'string' },
		rounds: { type: 'string' },
		only: { type: 'string' },
	},
})
const numberOf = (text: string | undefined): number | undefined =>
	text === undefined ? undefined : Number(text)
const names = positionals.length > 0 ? positionals : Object.keys(runs)
const unknown = names.find((name) => !Object.hasOwn(runs, name))
if (unknown !== undefined) {
	process.stderr.write(`no soak is called ${unknown}; there are ${Object.keys(runs).join(', ')}\n`)
	process.exit(2)
}
const clearUp = ownTemporary()
const seed = numberOf(values.seed) ?? Date.now() % 1_000_000
let faults = 0
for (const name of names) {
	tell(`${name}, seed ${seed}`)
	const given = { seed, rounds: numberOf(values.rounds), only: numberOf(values.only) }
	const ended = await runs[name]?.(given)
	faults += ended?.faults ?? 0
	tell(`${name}, seed ${seed}: ${JSON.stringify(ended?.result, null, '\t')}`)
}
clearUp()
process.exit(faults > 0 ? 1 : 0)
