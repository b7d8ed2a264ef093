/**
 * What a room states: a code and what it is filled in with. The sentence comes last, for whoever
 * reads it; nothing in this program decides by a sentence.
 */
import { canonicalJson } from '../plain/canonical.ts'
import { sentences } from './en/sentences.ts'
import type { ReleasableTopic } from './privacy.ts'
import type { Audience, Params, PrivateTopic, Sentence } from './sentence.ts'

export type StatementCode = keyof typeof sentences
/** What the sentence of a code is filled in with. */
export type ParamsOf<Code extends StatementCode> =
	(typeof sentences)[Code] extends Sentence<infer Filling> ? Filling : never
/** A code, its parameters and, for the clinician's screen and the record, its sentence. */
export interface Statement {
	/** Which sentence; one this version does not know may stand in an older record. */
	code: string
	/** JSON only; numbers in the unit of their name. */
	params: Params
	/** The sentence for the clinician, as it read when it was made. */
	says: string
}
/** A statement; what an older record says without a code has words for the clinician alone. */
export type Stated = Pick<Statement, 'says'> & Partial<Pick<Statement, 'code' | 'params'>>
const sentenceOf = (code: string): Sentence<Params> | undefined =>
	Object.hasOwn(sentences, code)
		? (sentences as unknown as Readonly<Record<string, Sentence<Params>>>)[code]
		: undefined

/** States something: the sentence for the clinician is made from the code and its parameters. */
export function state<Code extends StatementCode>(
	code: Code,
	...[params]: ParamsOf<Code> extends Readonly<Record<never, never>>
		? keyof ParamsOf<Code> extends never
			? [params?: ParamsOf<Code>]
			: [params: ParamsOf<Code>]
		: [params: ParamsOf<Code>]
): Statement {
	const filling: Params = params ?? {}
	return { code, params: filling, says: sentenceOf(code)?.clinician(filling) ?? '' }
}
/**
 * A statement in the words of one reader; undefined where there are none for that reader, so that
 * it is left out. @param released private topics that this reader may be told of
 */
export function spokenTo(
	audience: Audience,
	statement: Stated,
	released: readonly ReleasableTopic[] = [],
): string | undefined {
	if (audience === 'clinician') return statement.says
	const words = statement.code === undefined ? undefined : sentenceOf(statement.code)
	if (!words || !mayRead(words.private, released)) return undefined
	const speak = audience === 'guardian' ? (words.guardian ?? words.player) : words[audience]
	// a whole made of parts may hold none for this reader
	return speak?.(statement.params ?? {}) || undefined
}
/** Whether what is private may be read by someone who was told of these topics. */
const mayRead = (topic: PrivateTopic | undefined, told: readonly ReleasableTopic[]): boolean =>
	topic === undefined || told.some((released) => released === topic)
/** What is private about a statement. */
export const privateTopicOf = ({ code }: Stated): PrivateTopic | undefined =>
	code === undefined ? undefined : sentenceOf(code)?.private
/** Whether a statement may be read by someone who was told of these topics, in whatever words. */
export const isOpenTo = (told: readonly ReleasableTopic[], statement: Stated): boolean =>
	mayRead(privateTopicOf(statement), told)
/** One text for one content, however its sentence is worded. */
export const contentOf = ({ code, params }: Pick<Statement, 'code' | 'params'>): string =>
	canonicalJson({ code, params })
/** Each content once, in the place where it first stands. */
export const onceEach = <Said extends Pick<Statement, 'code' | 'params'>>(
	statements: readonly Said[],
): Said[] => [...new Map(statements.map((said) => [contentOf(said), said])).values()]
