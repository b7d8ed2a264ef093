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
/** Each option by its own type. */
type Values<Given extends Options> = ReturnType<typeof parseArgs<{ options: Given }>>['values']

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
 * @param places what stands without a name, in words: `place` has as many; the last may be meant
 * to come more often (`...`), then `place` has at least as many
 */
export function readArgs<const Given extends Options>(
	args: string[],
	options: Given,
	places: readonly string[],
): { place: string[]; option: Values<Given> } {
	const { positionals, values } = parsedOrRefused(args, options)
	const more = places.at(-1)?.endsWith('...') ?? false
	const { length } = places
	if (more ? positionals.length < length : positionals.length !== length) {
		const given = positionals.length === 0 ? 'nothing' : positionals.join(' ')
		throw new BadInput([
			`arguments: ${places.join(' ')} expected, given ${given}, allowed: ` +
				`${more ? 'at least' : 'exactly'} ${length}`,
		])
	}
	return { place: positionals, option: { ...values } as Values<Given> }
}
