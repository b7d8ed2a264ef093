/** Works on a store as fast as it can and tells each act. Started and killed by kills.ts. */
import { readFileSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { World } from '../compatibility/scenario/program.ts'
import { chance } from './chance.ts'
import { plainProgram } from './everything.ts'
import { acts, type Cast, type Work, WorkDone } from './kill-acts.ts'
import type { Line, Standing } from './kill-model.ts'

interface Given {
	pc: string
	seed: number
	round: number
	moment: string
	now: Standing
	cast: Cast
}
const given: Given = JSON.parse(readFileSync(process.argv[2] ?? '', 'utf8'))
/** Written at once and not through a stream: what was told has left before the next step. */
const tell = (line: Line) => writeSync(1, `${JSON.stringify(line)}\n`)
const world = new World(await plainProgram(), given.moment, join(given.pc, 'outside'))
const app = world.open(join(given.pc, 'records'))
const work: Work = { ...given, world, app, drawn: chance(given.seed, given.round), tell }
await app.ask('session.unlock', { passphrase: given.now.passphrase })
tell({ does: 'ready', told: 'did' })
try {
	for (;;) await work.drawn.pick(acts)(work)
} catch (error) {
	if (!(error instanceof WorkDone)) throw error
	// whoever waits for more lines gets them; lives until it is killed
	for (let at = 0; at < 20; at++) tell({ does: 'ready', told: 'did' })
	setInterval(() => {}, 1000)
}
