/**
 * What every command shares: its arguments and its answer. It reads no schema, so that the window
 * is not kept waiting.
 */
import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'

/** The person's input is wrong: one line per problem, exit code 2. */
export class BadInput extends Error {
	readonly lines: string[]
	constructor(lines: string[]) {
		super(lines.join('\n'))
		this.lines = lines
	}
}

export function say(text: string | Uint8Array): void {
	writeFileSync(1, text)
}

type Options = Record<string, { type: 'string' | 'boolean'; multiple?: boolean }>
/** Arguments by name; an unknown option or a missing file name is bad input. */
export function readArgs(
	args: string[],
	options: Options,
	places: readonly string[],
): { place: string[]; option: Record<string, string | boolean | string[] | undefined> } {
	let parsed: { values: object; positionals: string[] }
	try {
		parsed = parseArgs({ args, options, allowPositionals: true, strict: true })
	} catch (error) {
		throw new BadInput([
			`arguments: ${error instanceof Error ? error.message.split('. ')[0] : 'not understood'}, given ${args.join(' ')}, allowed: ${
				Object.keys(options)
					.map((key) => `--${key}`)
					.join(', ') || 'no options'
			}`,
		])
	}
	if (parsed.positionals.length !== places.length)
		throw new BadInput([
			`arguments: ${places.join(' ')} expected, given ` +
				`${parsed.positionals.length === 0 ? 'nothing' : parsed.positionals.join(' ')}, allowed: ` +
				`exactly ${places.length}`,
		])
	return { place: parsed.positionals, option: { ...parsed.values } }
}
