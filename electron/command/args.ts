/**
 * What every command shares: its arguments and its answer. It reads no schema, so that the window
 * is not kept waiting.
 */
import { writeFileSync } from 'node:fs'
import { type ParseArgsConfig, parseArgs } from 'node:util'

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

type Options = NonNullable<ParseArgsConfig['options']>
/** Each option by its own type; by a name that is not known here, by any of them. */
type Values<Given extends Options> = ReturnType<typeof parseArgs<{ options: Given }>>['values'] &
	Record<string, string | boolean | string[] | undefined>

function parsedOrRefused<Given extends Options>(args: string[], options: Given) {
	try {
		return parseArgs({ args, options, allowPositionals: true, strict: true })
	} catch (error) {
		const why = error instanceof Error ? error.message.split('. ')[0] : 'not understood'
		const allowed = Object.keys(options)
			.map((key) => `--${key}`)
			.join(', ')
		throw new BadInput([
			`arguments: ${why}, given ${args.join(' ')}, allowed: ${allowed || 'no options'}`,
		])
	}
}
/**
 * Arguments by name; an unknown option or a missing file name is bad input.
 * @param places what stands without a name, in words: `place` has as many
 */
export function readArgs<const Given extends Options>(
	args: string[],
	options: Given,
	places: readonly string[],
): { place: string[]; option: Values<Given> } {
	const { positionals, values } = parsedOrRefused(args, options)
	if (positionals.length !== places.length) {
		const given = positionals.length === 0 ? 'nothing' : positionals.join(' ')
		throw new BadInput([
			`arguments: ${places.join(' ')} expected, given ${given}, allowed: exactly ${places.length}`,
		])
	}
	return { place: positionals, option: { ...values } as Values<Given> }
}
