/** Finding a condition by what people call it. */
import { type Condition, conditions } from '../visit/terms.ts'
import { conditionWords } from '../words/en/conditions.table.ts'

export interface FoundCondition {
	condition: Condition
	/** The name that what was typed fits: its own, the player's or another; '' for nothing typed. */
	fits: string
	/** It is that name in full. */
	whole: boolean
	/** It is the name that the condition is listed by. */
	listed: boolean
}
/** Letters without accents, small, words apart: "Sever's" and 'severs' are the same. */
const plain = (text: string): string =>
	text
		.normalize('NFD')
		.replace(/\p{Diacritic}/gu, '')
		.replace(/['’]/g, '')
		.toLowerCase()
		.replace(/[^\p{L}\p{N}]+/gu, ' ')
		.trim()
/** The clinician's name first, so that it is the one told where several fit. */
const namesOf = (condition: Condition): string[] => {
	const { name, synonyms, doctor, player } = conditionWords[condition]
	return [name, ...synonyms, ...(doctor === undefined ? [] : [doctor]), player]
}
/** 'mid portion' is also written as one word. */
const joined = (words: readonly string[]): string[] =>
	words.slice(1).map((word, at) => `${words[at]}${word}`)
/**
 * In full 0, from its beginning 1, as it stands within 2, each typed word begins one of its words 3;
 * else undefined.
 */
function rankOf(name: string, typed: string): number | undefined {
	const text = plain(name)
	if (text === typed) return 0
	if (text.startsWith(typed)) return 1
	if (` ${text}`.includes(` ${typed}`)) return 2
	const words = text.split(' ')
	const begun = [...words, ...joined(words)]
	return typed.split(' ').every((part) => begun.some((word) => word.startsWith(part)))
		? 3
		: undefined
}
interface Ranked extends FoundCondition {
	rank: number
}
function bestOf(condition: Condition, typed: string): Ranked[] {
	const ranked = namesOf(condition).flatMap((fits, at) => {
		const rank = rankOf(fits, typed)
		return rank === undefined
			? []
			: [{ condition, fits, whole: rank === 0, listed: at === 0, rank }]
	})
	const [best] = ranked.sort((name, other) => name.rank - other.rank)
	return best ? [best] : []
}
/**
 * The conditions that what was typed may mean: named so in full first, then named so from the
 * beginning, then the others, in the order of the table. @returns all of them for nothing typed
 */
export function findConditions(typed: string): FoundCondition[] {
	const wanted = plain(typed)
	if (wanted === '')
		return conditions.map((condition) => ({ condition, fits: '', whole: false, listed: true }))
	return conditions
		.flatMap((condition) => bestOf(condition, wanted))
		.sort((found, other) => found.rank - other.rank)
		.map(({ condition, fits, whole, listed }) => ({ condition, fits, whole, listed }))
}
