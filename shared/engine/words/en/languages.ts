/** Languages by name: what is shown and printed of a tag, and the tag of what somebody typed. */
import { folded } from '../../plain/folded.ts'
import { isLanguageTag } from '../../visit/languages.ts'
import { furtherNames, offeredLanguages } from './languages.table.ts'

const names = new Intl.DisplayNames(['en'], { type: 'language', fallback: 'none' })
/** The name of a language; undefined where none is known for the tag. */
const knownName = (tag: string): string | undefined => furtherNames[tag] ?? names.of(tag)
/** The name of a language; the tag itself where none is known. @param tag BCP 47 */
export const languageName = (tag: string): string => knownName(tag) ?? tag
/** Whether a name is known for a tag. */
export const hasLanguageName = (tag: string): boolean => knownName(tag) !== undefined

/** What is offered, in the order of the names. */
export const languageNames: readonly string[] = offeredLanguages.map(languageName).toSorted()
const tags: ReadonlyMap<string, string> = new Map(
	offeredLanguages.map((tag) => [folded(languageName(tag)), tag]),
)
/** A tag as BCP 47 writes it; undefined where the text is none. */
function canonical(text: string): string | undefined {
	try {
		return Intl.getCanonicalLocales(text)[0]
	} catch {
		return undefined
	}
}
/**
 * The tag of a language that somebody typed: its name, with or without its marks, or its tag in any
 * case. @returns undefined where it is neither
 */
export function languageTyped(typed: string): string | undefined {
	const named = tags.get(folded(typed.trim()))
	if (named !== undefined) return named
	const tag = canonical(typed.trim())
	return tag !== undefined && isLanguageTag(tag) ? tag : undefined
}
/** What stands in a field for a tag: the name where it is read back as that tag, else the tag. */
export function languageEntry(tag: string): string {
	const name = languageName(tag)
	return languageTyped(name) === tag ? name : tag
}
