/**
 * Whether a passphrase is too easy to guess, by an estimate of the tries that it takes. It knows the
 * most used passphrases, words and names, keyboard rows, dates and repeats. The word lists are large:
 * hosts and screens fetch this file when it is first wanted.
 */
import { ZxcvbnFactory } from '@zxcvbn-ts/core'
import { adjacencyGraphs, dictionary as common } from '@zxcvbn-ts/language-common'
import { dictionary as english } from '@zxcvbn-ts/language-en'

/**
 * The least score that is taken, of 0 to 4: 3 is at least 10^8 tries, which the estimator's authors
 * call safe against somebody who holds the file and must stretch each try.
 */
const leastScore = 3
/** Letters that are looked at: the rest of a longer one only makes it stronger. */
const lettersLookedAt = 64
/** Shorter words of a name stand in too many other words to count. */
const leastNameWord = 4
/** What nobody needs to know the clinic for. */
const ownName = 'Lastwright'

const estimator = new ZxcvbnFactory({
	dictionary: { ...common, ...english },
	graphs: adjacencyGraphs,
})
/** What many names have in common tells a stranger nothing: these words keep their own rank. */
const inManyNames = new Set([
	...['clinic', 'clinics', 'clinician', 'centre', 'center', 'practice', 'health', 'medicine'],
	...['medical', 'podiatry', 'podiatrist', 'podiatrists', 'sport', 'sports', 'foot', 'feet'],
	...['football', 'ankle', 'care', 'owner', 'student', 'reception', 'team', 'doctor'],
])

/** Why it is weak, by what the estimator found. */
const reasons: Readonly<Record<string, string>> = {
	straightRow: 'it is a row of keys of the keyboard',
	keyPattern: 'it is a short pattern on the keyboard',
	simpleRepeat: 'it repeats one letter',
	extendedRepeat: 'it repeats a few letters',
	sequences: 'it is a row such as abc or 123',
	recentYears: 'it is little more than a year',
	dates: 'it is little more than a date',
	topTen: 'it is one of the ten most used ones',
	topHundred: 'it is one of the hundred most used ones',
	common: 'it is one of the most used ones',
	similarToCommon: 'it is almost one of the most used ones',
	wordByItself: 'it is a single word of the dictionary',
	namesByThemselves: 'it is a single name',
	commonNames: 'it is little more than a common name',
	userInputs: 'it is made of the name of the clinic or of a person here',
}
const plainReason = 'it is short, or made of what is often used'
const swapped =
	' Capital letters, and digits in the place of letters, help little: they are tried as well.'
const helps =
	'Add words that do not belong together: four plain words are easy to keep in mind and hard to ' +
	'guess.'

/** The names as a stranger would try them: whole, without spaces, and word by word. */
function tried(names: readonly string[]): string[] {
	const whole = [ownName, ...names].map((name) => name.trim().toLowerCase()).filter(Boolean)
	const joined = whole.flatMap((name) => [
		name.replace(/\s+/gu, ''),
		name.replace(/[^\p{L}\p{N}]/gu, ''),
	])
	const words = whole
		.flatMap((name) => name.split(/[^\p{L}\p{N}]+/u))
		.filter((word) => word.length >= leastNameWord && !inManyNames.has(word))
	return [...new Set([...whole, ...joined, ...words])]
}

/** Why a passphrase is too weak, and what helps, each as a sentence or part of one. */
export interface Weakness {
	why: string
	helps: string
}
/**
 * @param names of the clinic and the people: words that are guessed first
 * @returns undefined where it may be used
 */
export function weaknessOf(passphrase: string, names: readonly string[]): Weakness | undefined {
	const looked = passphrase.normalize('NFKC').slice(0, lettersLookedAt)
	const { score, feedback } = estimator.check(looked, tried(names))
	if (score >= leastScore) return undefined
	const isSwapped = feedback.suggestions.some(
		(name) => name === 'l33t' || name === 'capitalization',
	)
	return {
		why: reasons[feedback.warning ?? ''] ?? plainReason,
		helps: helps + (isSwapped ? swapped : ''),
	}
}
