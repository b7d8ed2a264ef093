/** How the screening room reads: to a player short and plain, to every reader without a gap. */
import { expect, it } from 'vitest'
import { countsOf, fleschKincaid } from '../../shared/engine/report/readability.ts'
import { screeningSentences } from '../../shared/engine/words/en/screening.ts'
import type { Params } from '../../shared/engine/words/sentence.ts'

/** Everything that a sentence of the room may be filled in with. */
const filling: Params = {
	hours: 48,
	weeks: 2,
	days: 7,
	day: 5,
	side: 'left',
	part: 'ankle',
	because: ['too-late', 'pregnant'],
	minYears: 6,
	maxDays: 10,
	fromDays: 5,
	toDays: 7,
	found: 91,
	left: 1.4,
	site: 'navicular',
	signs: ['fever', 'night-waking'],
	unassessedDays: 7,
	undiagnosedDays: 14,
	seenWeeks: [6, 8],
	reviewMonths: [3, 6],
	care: 'family',
	belowYears: 12,
	minorBelowYears: 18,
	risk: 'moderate',
	score: 'used',
	notAsked: 2,
	all: 10,
	condition: 'blister',
	limit: 0.9,
	minutes: 30,
	unasked: 3,
	highRisk: 9,
	listed: 14,
}
type Words = Partial<Record<string, (given: Params) => string>>
const rows = Object.entries(screeningSentences).flatMap(([code, words]) =>
	[true, false].map((minor) => ({
		code,
		words: words as unknown as Words,
		given: { ...filling, minor },
	})),
)
const readers = ['clinician', 'player', 'doctor', 'coach']
it('every sentence is whole for every reader who has one', () => {
	for (const { code, words, given } of rows)
		for (const reader of readers) {
			const says = words[reader]?.(given)
			if (says !== undefined) expect(says, `${code}, ${reader}`).toMatch(/^[A-Z0-9].*[.]$/)
			expect(says ?? '', `${code}, ${reader}`).not.toMatch(/undefined|NaN|null|\[object/)
		}
})
it('no sentence clears anyone', () => {
	for (const { code, words, given } of rows)
		for (const reader of readers)
			expect(words[reader]?.(given) ?? '', `${code}, ${reader}`).not.toMatch(
				/\bcleared\b|\bis clear\b|all clear|no fracture|no clot|ruled out/i,
			)
})
// Kincaid 1975: grade 7 or less; fifteen words a sentence is the house's own limit.
it('a player of thirteen can read it', () => {
	let read = 0
	for (const { code, words, given } of rows) {
		const says = words.player?.(given)
		const counts = says === undefined ? undefined : countsOf(says)
		if (says === undefined || !counts) continue
		read += 1
		expect(fleschKincaid(counts), code).toBeLessThanOrEqual(7)
		for (const one of says.split(/(?<=\.) /))
			expect(one.split(' ').length, `${code}: ${one}`).toBeLessThanOrEqual(15)
	}
	expect(read).toBeGreaterThan(100)
})
it('whatever stops sport is said to player and coach', () => {
	for (const { code, words } of rows) if (words.coach) expect(words.player, code).toBeDefined()
})
