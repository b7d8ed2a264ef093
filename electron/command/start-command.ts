import { warmPdf } from '../pdf/render.ts'
import { BadInput, readArgs } from './io.ts'

/** Opens the workstation window. */
export async function startCommand(args: string[]): Promise<void> {
	const { option } = readArgs(args, { demo: { type: 'boolean' }, 'no-window': { type: 'boolean' }, data: { type: 'string' }, port: { type: 'string' } }, [])
	const port = option.port === undefined ? undefined : Number(option.port)
	if (port !== undefined && !(Number.isInteger(port) && port >= 0 && port <= 65535)) throw new BadInput([`--port: not a port, given "${option.port}", allowed: a whole number 0 to 65535`])
	const data = option.data as string | undefined
	// the pages' worker is read on another core while the workstation itself is
	warmPdf()
	const { start } = await import('./start.ts')
	await start({ demo: option.demo === true, noWindow: option['no-window'] === true, ...(data === undefined ? {} : { dataFolder: data }), ...(port === undefined ? {} : { port }) })
}
