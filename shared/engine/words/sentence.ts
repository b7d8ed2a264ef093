/** What a language says for one code, to each reader that has words of its own for it. */
import type { PrivateTopic } from '../visit/private-topics.ts'

export type { PrivateTopic }

/** Who reads. A guardian reads what the player reads, unless there are words for guardians. */
export type Audience = 'clinician' | 'player' | 'guardian' | 'doctor' | 'laboratory' | 'coach'

/** What a sentence is filled in with: numbers in the unit of their name, terms, days, typed words. */
export type Params = Readonly<Record<string, unknown>>
export type NoParams = Readonly<Record<never, never>>

/** The words of one code. Where a reader has none, what it says never reaches that reader. */
export type Sentence<Filling extends Params = NoParams> = {
	readonly [Reader in Exclude<Audience, 'clinician'>]?: (filling: Filling) => string
} & {
	readonly clinician: (filling: Filling) => string
	readonly private?: PrivateTopic
}
/**
 * A sentence of the catalogue; what it is filled in with is written down here, once for every
 * language. `sentence<{ side: Side; lungeCm: number }>({ clinician: ({ side }) => ... })`
 */
export const sentence = <Filling extends Params = NoParams>(
	words: Sentence<Filling>,
): Sentence<Filling> => words
/** The words of several codes that read alike for the clinician and for one more reader. */
export const alsoTo = <Filling extends Params>(
	words: Sentence<Filling>,
	...readers: Exclude<Audience, 'clinician'>[]
): Sentence<Filling> => ({
	...words,
	...Object.fromEntries(readers.map((reader) => [reader, words[reader] ?? words.clinician])),
})
