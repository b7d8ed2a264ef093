/** One slip of the keyboard in a name is found; another name is not. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { likeness, nearlySame, plain } from '../../electron/services/players/names.ts'

const letters = 'abcdefghijklmnopqrstuvwxyz'
const letter = fc.constantFrom(...letters)
const name = fc.string({ unit: letter, minLength: 4, maxLength: 14 })
const place = fc.nat({ max: 13 })
const at = (text: string, where: number) => where % text.length
const mistakes: Record<string, (text: string, where: number, typed: string) => string> = {
	missing: (text, where) => text.slice(0, at(text, where)) + text.slice(at(text, where) + 1),
	extra: (text, where, typed) =>
		text.slice(0, at(text, where)) + typed + text.slice(at(text, where)),
	changed: (text, where, typed) =>
		text.slice(0, at(text, where)) + typed + text.slice(at(text, where) + 1),
	swapped: (text, where) => {
		const first = where % (text.length - 1)
		return (
			text.slice(0, first) + text.charAt(first + 1) + text.charAt(first) + text.slice(first + 2)
		)
	},
}
test.each(Object.keys(mistakes))('one letter %s is found, from either side', (kind) => {
	fc.assert(
		fc.property(name, place, letter, (text, where, typed) => {
			const wrong = mistakes[kind]?.(text, where, typed) ?? ''
			expect(nearlySame(text, wrong)).toBe(true)
			expect(nearlySame(wrong, text)).toBe(true)
		}),
		{ numRuns: 2000 },
	)
})
/** Edits between two words where a swap of neighbours counts as one, from its definition. */
function edits(a: string, b: string): number {
	const d = Array.from({ length: a.length + 1 }, (_, i) =>
		Array.from({ length: b.length + 1 }, (_, j) => (i === 0 ? j : j === 0 ? i : 0)),
	)
	for (let i = 1; i <= a.length; i++)
		for (let j = 1; j <= b.length; j++) {
			let least = Math.min(
				d[i - 1]![j]! + 1,
				d[i]![j - 1]! + 1,
				d[i - 1]![j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1),
			)
			if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
				least = Math.min(least, d[i - 2]![j - 2]! + 1)
			d[i]![j] = least
		}
	return d[a.length]![b.length]!
}
test('nothing but one mistake is taken for one', () => {
	const few = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), minLength: 1, maxLength: 7 })
	fc.assert(
		fc.property(few, few, (a, b) => {
			expect(nearlySame(a, b)).toBe(
				a === b || (Math.max(a.length, b.length) >= 4 && edits(a, b) <= 1),
			)
		}),
		{ numRuns: 20_000 },
	)
})
test('a swap together with another letter is two mistakes', () => {
	for (const [a, b] of [
		['marab', 'marbax'],
		['xaby', 'xbacy'],
		['abcd', 'bacde'],
	] as const)
		expect(nearlySame(a, b), `${a} ${b}`).toBe(false)
})
test('different common names are not taken for one another', () => {
	const common = [
		'Smith',
		'Jones',
		'Taylor',
		'Brown',
		'Williams',
		'Wilson',
		'Johnson',
		'Davies',
		'Nguyen',
		'Singh',
		'Walker',
		'Wright',
		'Robinson',
		'Thompson',
		'Hughes',
		'Edwards',
		'Green',
		'Murphy',
		'Kelly',
		'Martin',
		'Garcia',
		'Novak',
		'Oliver',
		'Amelia',
		'Isla',
		'George',
		'Harry',
		'Noah',
		'Jack',
		'Charlie',
		'Freya',
		'Leo',
		'Mia',
		'Ava',
		'Tom',
		'Tim',
	].map(plain)
	for (const a of common)
		for (const b of common) if (a !== b) expect(nearlySame(a, b), `${a} ${b}`).toBe(false)
})
const oneSlip =
	'a player typed with one slip in either name is one person, another family name is not'
test(oneSlip, () => {
	const card = {
		playerId: '',
		givenName: 'Tui',
		familyName: 'Ashdown',
		birthDate: '2013-05-02',
		sex: 'male',
		openDraft: false,
	}
	for (const familyName of ['Ashdwon', 'Ashdow', 'Ashdowne', 'Ashdawn'])
		expect(likeness(card, { ...card, familyName }), familyName).toBe('same-person')
	expect(likeness(card, { ...card, givenName: 'Mara', familyName: 'Kelly' })).toBeUndefined()
})
