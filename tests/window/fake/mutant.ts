/** One line of the shell may be another, so that it is seen which check notices. */
import { z } from 'zod'

const mutantSchema = z.strictObject({ file: z.string(), from: z.string(), to: z.string() })
/** `from` stands once in a file of the shell's folder. */
export type Mutant = z.infer<typeof mutantSchema>
const given = process.env.LASTWRIGHT_MUTANT
const mutant = given === undefined ? undefined : mutantSchema.parse(JSON.parse(given))

export const isMutated = (url: string): boolean =>
	mutant !== undefined && url.endsWith(`/electron/window/${mutant.file}`)
/** The text of a file of the shell, with the line that is another. */
export function asMutated(text: string, url: string): string {
	if (!mutant || !isMutated(url)) return text
	const { file, from, to } = mutant
	if (text.split(from).length !== 2) throw new Error(`${file} does not hold once: ${from}`)
	return text.replace(from, () => to)
}
