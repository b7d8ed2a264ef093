/**
 * The host of `npm run dev`, as a process that is replaced when a file of it is saved. It answers
 * calls that come as messages, from demo records in the folder that is its one argument.
 */
import { readdirSync } from 'node:fs'
import type { App } from '../../app.ts'
import { openDemo, unlockDemo } from '../demo/records.ts'
import type { HostAnswer, HostCall } from './messages.ts'

const note = (text: string) => process.stderr.write(`lastwright: ${text}\n`)

/** What was typed before the restart is still there: the same folder is opened again. */
async function open(folder: string): Promise<App> {
	const opening = { folder, now: () => new Date(), note }
	if (readdirSync(folder).length === 0) return openDemo(opening)
	const app = await unlockDemo(opening)
	if (!app) throw new Error('the demo could not be unlocked')
	return app
}

const folder = process.argv[2]
if (folder === undefined || process.send === undefined)
	throw new Error('demo-host.ts is started by npm run dev only')
const app = await open(folder)
const answer = (message: HostAnswer) => process.send?.(message)
process.on('message', ({ id, name, input }: HostCall) => {
	void app.call(name, input).then((result) => answer({ id, result }))
})
process.once('SIGTERM', () => {
	app.close()
	process.exit(0)
})
answer({ ready: true })
