/**
 * A process that is the shell: `main.ts` as it stands, on the stand-in, then the checks that are
 * asked for, each told as a line of JSON.
 */
import { app } from './app.ts'
import { checks, type Told } from './checks.ts'
import { endBrowser } from './window.ts'

const names = JSON.parse(process.argv[2] ?? '[]') as string[]
const tell = (told: Told): void => {
	process.stdout.write(`${JSON.stringify(told)}\n`)
}
async function tried(name: string): Promise<Told> {
	const check = checks[name]
	if (!check) return { name, fault: 'There is no such check.' }
	try {
		await check()
		return { name, fault: '' }
	} catch (error) {
		return { name, fault: error instanceof Error ? error.message : String(error) }
	}
}
// the shell tells nobody what ended it, so as not to tell of the records: here there are none
for (const event of ['uncaughtException', 'unhandledRejection'])
	process.on(event, (error: unknown) => process.stderr.write(`${error}\n`))
await import('../../../electron/window/main.ts')
for (const name of names) tell(await tried(name))
await app.firstIsTold
await endBrowser().catch(() => {})
process.exit(0)
