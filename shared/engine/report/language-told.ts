/**
 * In which language a person prefers to be spoken to, where it is not that of the papers, and how it
 * was explained: said to each reader of those it was explained to, as it was noted and no better.
 */
import { languagesTold, otherLanguages } from '../visit/languages.ts'
import { listed } from '../words/en/format.ts'
import { languageName } from '../words/en/languages.ts'
import type { Speak } from '../words/speak.ts'
import { small } from './base.ts'
import type { Block } from './document.ts'
import type { ReportInput } from './inputs.ts'

type Given = Pick<ReportInput, 'decisions' | 'visit'>

/** How it was explained; nothing where that was not noted, or concerns nobody. */
function explained({ decisions: { agreement = {} } }: Given, t: Speak): string[] {
	const { need, way, how } = agreement.interpreter ?? {}
	if (need === 'present') return [t(way ? `language.interpreter.${way}` : 'language.interpreter')]
	if (need === 'needed-but-none') return [t('language.noInterpreter')]
	const said = how?.trim()
	return need === 'not-needed' && said ? [t('language.how', { how: said })] : []
}
const preferredLine = (name: string, isOwn: boolean, t: Speak): string =>
	isOwn ? t('language.yours', { language: name }) : t('language.preferred', { languages: name })
/** The lines of the page of one who reads it at home. */
export function languageLines(input: Given, reader: 'player' | 'guardian', t: Speak): Block[] {
	const { agreement = {} } = input.decisions
	const { player } = input.visit
	const language = otherLanguages(player)[reader]
	// of a guardian only the player's may be on record: that is no preference of the guardian's
	const isOwn = reader === 'player' || player.guardian?.preferredLanguage !== undefined
	const preferred = language ? [preferredLine(languageName(language), isOwn, t)] : []
	const wasTold = agreement.explainedTo?.[reader] === true
	const sentences = [...preferred, ...(wasTold ? explained(input, t) : [])]
	return sentences.length === 0 ? [] : [small(sentences.join(' '))]
}
/** Of player and guardian, in a row: '' where both prefer the language of the papers. */
export function preferredInWords({ visit }: Pick<Given, 'visit'>, t: Speak): string {
	const { player, guardian } = otherLanguages(visit.player)
	const own = player ? languageName(player) : undefined
	if (guardian === undefined || guardian === player) return own ?? ''
	const theirs = t('language.ofGuardian', { language: languageName(guardian) })
	return listed(own === undefined ? [theirs] : [own, theirs])
}
/** What whoever sees the player next has to know: the languages, and how one spoke this time. */
export function languageForDoctor(input: Given, t: Speak): string[] {
	const preferred = preferredInWords(input, t)
	const { agreement = {} } = input.decisions
	const isNoted =
		languagesTold(agreement, input.visit.player).length > 0 ||
		agreement.interpreter?.need === 'present'
	return [
		...(preferred === '' ? [] : [t('language.preferred', { languages: preferred })]),
		...(isNoted ? explained(input, t) : []),
	]
}
