/** Months by their names, whole or shortened. */
import { monthName } from './days.ts'

const monthNumbers = Array.from({ length: 12 }, (_, index) => index + 1)
const leastLetters = 3

/** The month (1 to 12) that a word of three letters or more begins; undefined where none does. */
export function monthOfWord(word: string): number | undefined {
	const typed = word.toLowerCase()
	if (typed.length < leastLetters) return undefined
	return monthNumbers.find((month) => monthName(month).toLowerCase().startsWith(typed))
}
