import { addDays } from '../../shared/engine/plain/days.ts'
import { BadInput, readArgs } from './args.ts'
import { start } from './start.ts'

/** A date of the calendar, written YYYY-MM-DD. */
const isDay = (given: string): boolean =>
	/^\d{4}-\d{2}-\d{2}$/.test(given) && addDays(given, 0) === given

/** Opens the workstation window. */
export async function startCommand(args: string[]): Promise<void> {
	const { option } = readArgs(
		args,
		{
			demo: { type: 'boolean' },
			day: { type: 'string' },
			full: { type: 'boolean' },
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
	if (option.day !== undefined && !(option.demo && isDay(option.day)))
		throw new BadInput([
			`--day: the day on which the demo is told, given "${option.day}", allowed: a date such as ` +
				'2027-01-27, with --demo',
		])
	if (option.full && !option.demo)
		throw new BadInput(['--full: the demo with more players, given alone, allowed: with --demo'])
	await start({
		demo: option.demo === true,
		day: option.day,
		isFull: option.full === true,
		noWindow: option['no-window'] === true,
		dataFolder: option.data,
		port,
	})
}
