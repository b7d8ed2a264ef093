/**
 * What a language has to have: every code of the rooms, filled in with the same, and every sentence
 * of the documents. A table of another language ends in `satisfies` one of these, so that the
 * compiler names what it lacks.
 */
import type { sentences } from './en/documents.table.ts'
import type { Sentence } from './sentence.ts'
import type { ParamsOf, StatementCode } from './statement.ts'

/** @internal */
export type RoomSentences = { readonly [Code in StatementCode]: Sentence<ParamsOf<Code>> }
/** The {names} of each must be those of the English one: placeholdersOf() says them. @internal */
export type DocumentSentences = Readonly<Record<keyof typeof sentences, string>>
