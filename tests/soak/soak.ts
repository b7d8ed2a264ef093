/**
 * The long form of the tests that kill and fill: `npm run soak [rounds]`; a short form runs in npm
 * test.
 */
import ownTemporary from '../temporary.ts'
import { fillUntilFull } from './full-disk.ts'
import { soak } from './kills.ts'

const longestMs = 3000
const clearUp = ownTemporary()
const rounds = Number(process.argv[2] ?? 300)
const tell = (text: string) => process.stdout.write(`${text}\n`)
const killed = await soak(rounds, longestMs, tell)
const full = await fillUntilFull(Math.ceil(rounds / 10), tell)
const lost = [...killed.lost, ...full.lost]
const fullDisk =
	full.rounds === 0
		? 'not tried: this PC lets no small file system be mounted'
		: { rounds: full.rounds, saves: full.saves, refused: full.refused }
process.stdout.write(`${JSON.stringify({ ...killed, lost, fullDisk }, null, '\t')}\n`)
clearUp()
process.exitCode = lost.length ? 1 : 0
