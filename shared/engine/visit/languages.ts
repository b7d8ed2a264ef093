/**
 * Which language a person prefers, by its BCP 47 tag (RFC 5646): a code of ISO 639 with, where it
 * matters, the script (ISO 15924) and the region (ISO 3166-1). Only the form of a tag is checked, so
 * that what was signed stays readable whatever list of names a program brings along.
 */
import { z } from 'zod'
import type { Agreement } from './agreement.ts'

/** The language in which every document is written. */
const paperLanguage = 'en'

const tagForm = /^[a-z]{2,3}(-[A-Z][a-z]{3})?(-([A-Z]{2}|\d{3}))?$/
/** Whether a text has the form of a tag: language, script, region. */
export const isLanguageTag = (text: string): boolean => tagForm.test(text)
/** A language by its tag, such as mi, zh-Hant or pt-BR. */
export const languageTag = (title: string) => z.string().regex(tagForm).meta({ title })

/** Whether a language is known and is not the one of the documents, in whatever region. */
const isOther = (tag: string | undefined): tag is string =>
	tag !== undefined && tag.split('-')[0] !== paperLanguage

/** What of a player's details tells the languages. */
export interface Speaking {
	preferredLanguage?: string | undefined
	guardian?: { preferredLanguage?: string | undefined } | undefined
}
export interface OtherLanguages {
	player?: string
	guardian?: string
}
/**
 * The preferred languages that are not the one of the documents, by person; a guardian without one
 * is taken to share the player's.
 */
export function otherLanguages({ preferredLanguage, guardian }: Speaking): OtherLanguages {
	const guardians = guardian && (guardian.preferredLanguage ?? preferredLanguage)
	return {
		...(isOther(preferredLanguage) && { player: preferredLanguage }),
		...(isOther(guardians) && { guardian: guardians }),
	}
}
/** The same of those to whom it was explained, each once. */
export function languagesTold(
	{ explainedTo = {} }: Pick<Agreement, 'explainedTo'>,
	speaking: Speaking,
): string[] {
	const { player, guardian } = otherLanguages(speaking)
	return [
		...new Set([
			...(explainedTo.player && player ? [player] : []),
			...(explainedTo.guardian && guardian ? [guardian] : []),
		]),
	]
}
