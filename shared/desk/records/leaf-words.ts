/** A value of a signed visit as it is read there: terms as words, and what is kept by its id. */
import { termWords } from '../../engine/visit/terms.ts'
import { coreQuestionNames, signInWords } from '../../engine/words/en/gate.ts'
import { languageName } from '../../engine/words/en/languages.ts'
import { metaOf, valueWords } from './told.ts'

/** What a number without a unit of its own is called in the schema. */
const unitless = ['count', 'label']
/** The sign of an outcome, a core question. */
function nameOfId(path: string, id: string): string | undefined {
	if (/^outcomes\.\d+\.rule$/.test(path)) return signInWords(id.replace(/^screening\./, ''))
	return /^coreSetAside\.\d+\.question$/.test(path) ? coreQuestionNames[id] : undefined
}
/** @param path of the visit */
export function leafWords(path: string, value: unknown): string {
	const meta = metaOf(path)
	if (typeof value === 'string') {
		if (path.endsWith('preferredLanguage')) return languageName(value)
		const name = nameOfId(path, value)
		if (name !== undefined) return name
		if (meta?.kind === 'choice') return termWords(value)
	}
	return valueWords(value, unitless.includes(meta?.unit ?? '') ? '' : meta?.unit)
}
