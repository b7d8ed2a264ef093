/**
 * Reads the fuses back from a packaged program: node electron/window/read-fuses.ts PROGRAM. Ends
 * with 0 when all are right, 1 when one is wrong, 2 when it cannot be read.
 */
import { existsSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { readFuses, wrongFuses } from './fuses.ts'

/** On macOS the wire lies in the framework inside the bundle. */
function programFile(given: string): string {
	const inside = join(given, 'Contents/Frameworks/Electron Framework.framework/Electron Framework')
	return existsSync(inside) ? inside : given
}
const given = process.argv[2]
if (given === undefined) {
	process.stderr.write(
		'PROGRAM: missing, given nothing, allowed: the packaged program, on macOS the .app folder\n',
	)
	process.exitCode = 2
} else {
	try {
		const file = programFile(given)
		if (!statSync(file).isFile()) throw new Error('It is a folder; name the program in it.')
		const wires = readFuses(readFileSync(file))
		const wrong = wrongFuses(wires)
		process.stdout.write(
			wrong.length === 0
				? `All fuses are as they must be (${wires.length} wire${wires.length === 1 ? '' : 's'}).\n`
				: `${wrong.join('\n')}\n`,
		)
		process.exitCode = wrong.length === 0 ? 0 : 1
	} catch (error) {
		process.stderr.write(`${given}: ${error instanceof Error ? error.message : String(error)}\n`)
		process.exitCode = 2
	}
}
