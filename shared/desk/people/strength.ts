/**
 * Whether a passphrase is too easy to guess, by an estimate of the tries that it takes. It knows the
 * most used passphrases, words and names, keyboard rows, dates and repeats. The word lists are large:
 * hosts and screens fetch this file when it is first wanted.
 */
import { ZxcvbnFactory } from '@zxcvbn-ts/core'
import { adjacencyGraphs, dictionary as common } from '@zxcvbn-ts/language-common'
import { dictionary as english } from '@zxcvbn-ts/language-en'

/**
 * The fewest tries that are taken, by the estimate: the estimator's authors call them safe against
 * somebody who holds the file and must stretch each try.
 */
const fewestTries = 1e8
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

const ofNames = 'it is made of the name of the clinic or of a person here'
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
	userInputs: ofNames,
}
const plainReason = 'it is short, or made of what is often used'
const swaps = new Set(['l33t', 'capitalization'])
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

const oneSpace = (text: string) => text.replace(/\s+/gu, ' ').trim()
/** What is left without the names. @param names in small letters, the longest first */
const withoutNames = (text: string, names: readonly string[]) =>
	oneSpace(names.reduce((left, name) => left.replaceAll(name, ' '), text))
const eachWordOnce = (text: string) => [...new Set(oneSpace(text).split(' '))].join(' ')
/**
 * The estimator takes three known parts for many tries, whatever they are: names and words that are
 * repeated must not be among what makes a passphrase strong.
 * @returns why it is weak; undefined where enough is left
 */
function leavesLittle(passphrase: string, names: readonly string[]): string | undefined {
	const plain = oneSpace(passphrase.toLowerCase())
	const longestFirst = names.toSorted((left, right) => right.length - left.length)
	const left = [
		[ofNames, withoutNames(plain, longestFirst)],
		['it repeats the same word', eachWordOnce(plain)],
	] as const
	return left.find(([, text]) => text !== plain && estimator.check(text).guesses < fewestTries)?.[0]
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
	const guessed = tried(names)
	const { guesses, feedback } = estimator.check(looked, guessed)
	if (guesses < fewestTries) {
		const isSwapped = feedback.suggestions.some((name) => swaps.has(name))
		return {
			why: reasons[feedback.warning ?? ''] ?? plainReason,
			helps: helps + (isSwapped ? swapped : ''),
		}
	}
	const why = leavesLittle(looked, guessed)
	return why === undefined ? undefined : { why, helps }
}
