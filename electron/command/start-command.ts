import { BadInput, readArgs } from './args.ts'
import { start } from './start.ts'

/** Opens the workstation window. */
export async function startCommand(args: string[]): Promise<void> {
	const { option } = readArgs(
		args,
		{
			demo: { type: 'boolean' },
			'no-window': { type: 'boolean' },
			data: { type: 'string' },
			port: { type: 'string' },
		},
		[],
	)
	const port = option.port === undefined ? undefined : Number(option.port)
	if (port !== undefined && !(Number.isInteger(port) && port >= 0 && port <= 65535))
		throw new BadInput([
			`--port: not a port, given "${option.port}", allowed: a whole number 0 to 65535`,
		])
	await start({
		demo: option.demo === true,
		noWindow: option['no-window'] === true,
		dataFolder: option.data,
		port,
	})
}
