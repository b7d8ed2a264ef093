/** Sets up new records and tells the recovery key. Started and killed by killed-set-up.ts. */
import { writeSync } from 'node:fs'
import { join } from 'node:path'
import { clinic } from '../compatibility/scenario/people.ts'
import { World } from '../compatibility/scenario/program.ts'
import { plainProgram } from './everything.ts'

const [pc = '', passphrase = ''] = process.argv.slice(2)
const world = new World(await plainProgram(), '2027-01-20T09:00:00.000Z', join(pc, 'outside'))
const app = world.open(join(pc, 'records'))
writeSync(1, 'begun\n')
const { recoveryKey } = await app.ask('session.setUp', { clinic, passphrase })
writeSync(1, `${recoveryKey}\n`)
setInterval(() => {}, 1000)
