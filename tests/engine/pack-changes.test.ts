/** What a file for the way back changes is said in sentences, whatever it holds. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
	detailsLines,
	draftLine,
	recordLine,
	toldChanges,
} from '../../shared/desk/outreach/changes.ts'

const player = { givenName: 'Tui', familyName: 'Ashdown', birthDate: '2013-05-02', sex: 'male' }

test('details are told field by field: what came, what went, what is another one, what is asked', () => {
	const before = {
		...player,
		club: 'Harrow Rovers',
		guardian: { name: 'Rae Ashdown', email: 'rae@example.org' },
	}
	const after = {
		...player,
		birthDate: '2013-05-03',
		phone: '555-0101',
		guardian: { name: 'Rae Ashdown', email: 'rae@example.net' },
	}
	expect(detailsLines(before, { ...after, email: null }, [])).toEqual([
		'Birth date: 3 May 2013 instead of 2 May 2013.',
		'Club: taken off; it was Harrow Rovers.',
		'Guardian e-mail: rae@example.net instead of rae@example.org.',
		'Phone: 555-0101, where nothing stood.',
	])
	const asked = {
		field: 'guardian',
		values: [
			{ isHere: false, value: after.guardian },
			{ isHere: true, value: before.guardian },
			{ isHere: false, value: null },
		],
	}
	expect(detailsLines(before, { ...before, guardian: after.guardian }, [asked])).toEqual([
		'The guardian was changed in two places (at home Rae Ashdown, rae@example.org; away Rae Ashdown, ' +
			'rae@example.net; away nothing): it is asked under To answer.',
	])
	expect(detailsLines(before, before, [])).toEqual([])
})
test('visits, consents and drafts by their days and names', () => {
	const visit = { signedBy: { name: 'A. Example' }, visit: { visitDate: '2027-01-20' } }
	expect(recordLine('visit', visit)).toBe('New visit of 20 January 2027, signed by A. Example.')
	expect(recordLine('visit', { ...visit, version: 2, amends: { reason: 'wrong side' } })).toBe(
		'The visit of 20 January 2027 is amended (version 2) by A. Example: wrong side.',
	)
	const consent = {
		consentId: 'c',
		recordedAt: '2027-01-20T09:00:00.000Z',
		purpose: 'share-with-coach',
		recipient: 'Coach Invented',
		decision: 'permit',
		grantor: { name: 'Rae Ashdown', relation: 'parent' },
		method: 'verbal',
		given: '2027-01-20',
	}
	const what = 'Consent to sharing with a coach or club for Coach Invented is'
	expect(recordLine('consent', consent)).toBe(`${what} given by Rae Ashdown on 20 January 2027.`)
	expect(recordLine('consent', { ...consent, decision: 'deny' })).toBe(
		`${what} refused by Rae Ashdown on 20 January 2027.`,
	)
	expect(recordLine('consent', { ...consent, withdrawn: '2027-01-21' })).toBe(
		`${what} withdrawn on 21 January 2027.`,
	)
	expect(draftLine('both', '2027-01-20')).toMatch(/changed in both places: both are kept/)
	expect(recordLine('report', {})).toBeUndefined()
})
test('much is told as much as can be read, and the rest is counted', () => {
	const lines = Array.from({ length: 40 }, (_, index) => `Line ${index}.`)
	const { players, more } = toldChanges([
		...Array.from({ length: 230 }, (_, index) => ({
			playerId: `p${index}`,
			name: `Player ${index}`,
			isNew: false,
			lines: ['One.', 'One.'],
		})),
		{ playerId: 'long', name: 'A Long One', isNew: true, lines },
		{ playerId: 'none', name: 'Nothing', isNew: false, lines: [] },
	])
	expect(more).toBe(31)
	expect(players[0]).toMatchObject({ name: 'A Long One', more: 28 })
	expect(players[0]?.lines).toHaveLength(12)
	expect(players[1]?.lines).toEqual(['One. (2 times)'])
})
test('whatever a value is, there is a sentence or none, and never a failure', () => {
	const kinds = fc.constantFrom(
		'visit',
		'visit-note',
		'consent',
		'hold',
		'season',
		'squad',
		'sending',
	)
	fc.assert(
		fc.property(kinds, fc.anything(), (kind, value) => {
			const line = recordLine(kind, value)
			expect(line === undefined || line.length > 0).toBe(true)
		}),
	)
})
