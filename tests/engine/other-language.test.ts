/** Another language is another folder: the types name what it lacks, and its {names} are the same. */
import { expect, it } from 'vitest'
import type { DocumentSentences, RoomSentences } from '../../shared/engine/words/catalogue.ts'
import { documentSentences, placeholdersOf } from '../../shared/engine/words/speak.ts'
import { german as documents } from './other-language/documents.table.ts'
import { german as rooms } from './other-language/sentences.ts'

it('says its codes, filled in with what the English ones are filled in with', () => {
	const said = rooms['ankle.front-end-feel']
	expect(said.clinician({ side: 'left', rangeIsAdequate: true })).toContain('linke')
	// @ts-expect-error a side is not a number
	expect(said.clinician({ side: 1, rangeIsAdequate: false })).not.toContain('linke')
})
it('has the {names} of the English sentences', () => {
	for (const [key, sentence] of Object.entries(documents))
		expect(placeholdersOf(sentence), key).toEqual(
			placeholdersOf(documentSentences[key as keyof DocumentSentences]),
		)
})
it('is no whole language while it lacks a code or a sentence: the compiler says so', () => {
	// @ts-expect-error codes are missing
	const wholeRooms: RoomSentences = rooms
	// @ts-expect-error sentences are missing
	const wholeDocuments: DocumentSentences = documents
	expect(Object.keys(wholeRooms).length + Object.keys(wholeDocuments).length).toBe(3)
})
