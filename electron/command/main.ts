/**
 * The command line: assess, report, plan, schema, start. Exit 0 done, 2 bad input (one line per
 * problem), 1 anything else.
 */
import { enableCompileCache } from 'node:module'
import { placeOf } from '../place.ts'
import { BadInput, say } from './args.ts'

// the program's own compiled text, so that the next start need not read it anew; where the folder
// cannot be written it goes without
enableCompileCache(placeOf('build/compiled'))

const usage = [
	'lastwright assess VISIT.json [--shelf SHELF.json] [--protocol P.json] [--earlier V.json ...]',
	'lastwright report VISIT.json --kind KIND --out FILE.pdf|FILE.html [--clinic CLINIC.json] ' +
		'[--protocol P.json] [--earlier V.json ...]',
	'lastwright report A.json B.json ... --kind KIND --out-dir FOLDER [--format pdf|html] ' +
		'[--clinic CLINIC.json]',
	'lastwright plan VISIT.json --out PLAN.json [--ics PLAN.ics] [--protocol P.json] ' +
		'[--from DATE] [--earlier PLAN.json] [--zone ZONE] [--time-limit SECONDS]',
	'lastwright schema NAME',
	'lastwright start [--demo [--day DATE] [--full]] [--no-window] [--data FOLDER] [--port N]',
	'- in place of VISIT.json reads standard input',
].join('\n')

/** Each command is loaded only when called, so that assess does not wait for the window's parts. */
const commands: Record<string, () => Promise<(args: string[]) => Promise<void>>> = {
	assess: async () => (await import('./assess.ts')).assessCommand,
	report: async () => (await import('./report.ts')).reportCommand,
	plan: async () => (await import('./plan.ts')).planCommand,
	schema: async () => (await import('./schema.ts')).schemaCommand,
	start: async () => (await import('./start-command.ts')).startCommand,
}

const [name, ...args] = process.argv.slice(2)
try {
	if (name === '--help' || name === '-h' || name === 'help') say(`${usage}\n`)
	else {
		const load = Object.hasOwn(commands, name ?? '') ? commands[name ?? ''] : undefined
		if (!load)
			throw new BadInput([
				`command: unknown, given ${name === undefined ? 'nothing' : JSON.stringify(name)}, ` +
					`allowed: ${Object.keys(commands).join(', ')}`,
			])
		await (await load())(args)
	}
} catch (error) {
	if (error instanceof BadInput) {
		process.stderr.write(`${error.lines.join('\n')}\n`)
		process.exitCode = 2
	} else if ((error as NodeJS.ErrnoException).code === 'EPIPE') {
		// whoever reads the answer has seen enough
	} else {
		process.stderr.write(`lastwright: ${error instanceof Error ? error.message : String(error)}\n`)
		process.exitCode = 1
	}
}
