/**
 * The host of `npm run dev`, as a process that is replaced when a file of it is saved. It answers
 * calls that come as messages, from demo records in the folder that is its one argument.
 */
import { readdirSync } from 'node:fs'
import { type App, createApp } from '../../app.ts'
import { renderPdf } from '../../pdf/render.ts'
import { demoPassphrase } from '../demo.ts'
import { openDemo } from '../demo-records.ts'
import type { HostAnswer, HostCall } from './messages.ts'

const note = (text: string) => process.stderr.write(`lastwright: ${text}\n`)

/** What was typed before the restart is still there: the same folder is opened again. */
async function open(folder: string): Promise<App> {
	if (readdirSync(folder).length === 0) return openDemo(folder, new Date().toDateString(), note)
	const app = createApp({ dataFolder: folder, renderPdf, demo: true, scryptCost: 1024, note })
	const unlocked = await app.call('session.unlock', { passphrase: demoPassphrase })
	if (!unlocked.ok) throw new Error(`the demo could not be unlocked: ${unlocked.message}`)
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
