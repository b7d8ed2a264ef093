/**
 * The outbox's rules: addresses, recipients, neutral words, waits, delivery reports, states,
 * clocks.
 */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addressWarnings, oneLetterOff, skeleton } from '../../shared/desk/outbox/addresses.ts'
import { countdown, defaultBreachClock } from '../../shared/desk/outbox/breach.ts'
import {
	ageDays,
	channels,
	mayMove,
	numberOf,
	outboxKinds,
	outboxStates,
	type Recipient,
	recipientRoles,
} from '../../shared/desk/outbox/item.ts'
import { plainWords, smtpProblems } from '../../shared/desk/outbox/mail-settings.ts'
import { bodyFor, clinicalWord, fileNameFor, subjectFor } from '../../shared/desk/outbox/message.ts'
import { blockFor, kindsFor, purposesFor } from '../../shared/desk/outbox/recipients.ts'
import { givesUp, waitMs, waits } from '../../shared/desk/outbox/retry.ts'

/** Every text one edit away, by brute force. */
function neighbours(text: string): Set<string> {
	const found = new Set<string>()
	for (let at = 0; at <= text.length; at++) {
		if (at < text.length) found.add(text.slice(0, at) + text.slice(at + 1))
		for (const letter of 'ab@.') {
			found.add(text.slice(0, at) + letter + text.slice(at))
			if (at < text.length) found.add(text.slice(0, at) + letter + text.slice(at + 1))
		}
		if (at + 1 < text.length)
			found.add(text.slice(0, at) + text[at + 1] + text[at] + text.slice(at + 2))
	}
	found.delete(text)
	return found
}
test('one letter off agrees with all neighbours made by brute force, both ways', () => {
	const word = fc.string({ unit: fc.constantFrom('a', 'b', '@', '.'), minLength: 1, maxLength: 7 })
	fc.assert(
		fc.property(word, word, (a, b) => {
			expect(oneLetterOff(a, b)).toBe(neighbours(a).has(b))
			expect(oneLetterOff(a, b)).toBe(oneLetterOff(b, a))
		}),
		{ numRuns: 2000 },
	)
	fc.assert(
		fc.property(word, (a) => {
			for (const b of neighbours(a)) expect(oneLetterOff(a, b), `${a} ${b}`).toBe(true)
		}),
		{ numRuns: 100 },
	)
})
const known = [
	{ email: 'jo.m.alder@harbour-mail.example', name: 'Jo Alder', of: 'guardian' },
	{ email: 'rae@example.org', name: 'Rae Ashdown', of: 'guardian' },
]
test(
	'a missing middle initial, a swapped letter and a domain that only looks right ' + 'are named',
	() => {
		expect(addressWarnings('jo.alder@harbour-mail.example', '', known)).toEqual([])
		expect(addressWarnings('jo.m.alde@harbour-mail.example', '', known)[0]).toMatch(
			/one letter off jo\.m\.alder/,
		)
		expect(addressWarnings('JO.M.ALDRE@harbour-mail.example', '', known)[0]).toMatch(
			/one letter off/,
		)
		expect(addressWarnings('sam@harbour-rnail.example', '', known)[0]).toMatch(
			/looks like harbour-mail/,
		)
		expect(addressWarnings('sam@harb0ur-mail.example', '', known)[0]).toMatch(/looks like/)
		expect(addressWarnings('sam@harbour-mial.example', '', known)[0]).toMatch(/one letter off/)
		expect(addressWarnings('sam@example.net', '', known)[0]).toMatch(/ends otherwise/)
		expect(addressWarnings('sam@exаmple.org', '', known).join(' ')).toMatch(
			/another script.*looks like|looks like.*another script/,
		)
		expect(addressWarnings('sam@xn--exmple-4nf.org', '', known)[0]).toMatch(/another script/)
		expect(addressWarnings('rae@example.org', 'Ashdown, rae', known)).toEqual([])
		for (const whose of ['', 'Rae Ashford'])
			expect(addressWarnings('RAE@example.org ', whose, known)[0]).toMatch(
				/on record for Rae Ashdown \(guardian\) too/,
			)
		expect(addressWarnings('somebody@elsewhere.example', '', known)).toEqual([])
		expect(skeleton('c1inic.example')).toBe(skeleton('clinic.example'))
	},
)
const person = (
	role: Recipient['role'],
	email: string | undefined = `${role}@x.example`,
): Recipient => ({ recipientId: role, name: `The ${role}`, role, ...(email ? { email } : {}) })
test(
	"a minor's report is mailed to a guardian's own address only; every block says what to do " +
		'instead',
	() => {
		const everyWay = recipientRoles.flatMap((role) =>
			outboxKinds.flatMap((kind) => channels.map((channel) => ({ role, kind, channel }))),
		)
		for (const { role, kind, channel } of everyWay) {
			const recipient = person(role)
			const block = blockFor({ recipient, kind, channel, minor: true, sharedWith: [] })
			const mailed = channel === 'smtp' || channel === 'eml'
			if (!kindsFor[role].includes(kind)) expect(block).toMatch(/is not for a/)
			else if (mailed && (kind === 'player' || kind === 'guardian') && role !== 'guardian')
				expect(block).toMatch(/minor/)
			else if (kind === 'reminder' && role !== 'guardian') expect(block).toMatch(/to a guardian/)
			else expect(block).toBeUndefined()
			if (mailed) expect(purposesFor(role, channel)).toContain('email')
			else expect(purposesFor(role, channel)).not.toContain('email')
		}
		expect(
			blockFor({
				recipient: person('player'),
				kind: 'player',
				channel: 'smtp',
				minor: false,
				sharedWith: [],
			}),
		).toBeUndefined()
		expect(
			blockFor({
				recipient: person('guardian'),
				kind: 'player',
				channel: 'smtp',
				minor: true,
				sharedWith: ['coach'],
			}),
		).toMatch(/coach or club/)
		expect(
			blockFor({
				recipient: person('guardian', ''),
				kind: 'player',
				channel: 'smtp',
				minor: true,
				sharedWith: [],
			}),
		).toMatch(/No e-mail address/)
		expect(purposesFor('coach', 'print')).toEqual(['share-with-coach'])
		expect(kindsFor.coach).toEqual(['coach'])
	},
)
test('subject, file name and body carry no clinical word, no name of a player', () => {
	fc.assert(
		fc.property(fc.uuid(), (itemId) => {
			const number = numberOf(itemId)
			expect(number).toMatch(/^LW-[0-9A-F]{8}$/)
			for (const text of [
				fileNameFor(number),
				subjectFor(number, { name: '' }),
				bodyFor({ number, recipient: '', clinic: { name: '', address: [] }, withPassword: true }),
			])
				expect(clinicalWord(text), text).toBeUndefined()
		}),
	)
	expect(clinicalWord('Report on left ANKLE')).toBe('Report')
	expect(clinicalWord('fracture.pdf')).toBe('fracture')
})
test('waits double up to a limit; after five days it is given up', () => {
	for (const why of ['network', 'refusal'] as const) {
		expect(waitMs(why, 1)).toBe(waits[why].firstMs)
		expect(waitMs(why, 2)).toBe(2 * waits[why].firstMs)
		expect(waitMs(why, 500)).toBe(waits[why].mostMs)
	}
	expect(givesUp('2027-01-01T00:00:00Z', '2027-01-05T23:59:59Z')).toBe(false)
	expect(givesUp('2027-01-01T00:00:00Z', '2027-01-06T00:00:00Z')).toBe(true)
	expect(ageDays('2027-01-01T10:00:00Z', '2027-01-03T09:00:00Z')).toBe(1)
})
test('every state but closed has a way on, and nothing is sent unchecked', () => {
	expect(mayMove('to-check', 'sent')).toBe(false)
	expect(mayMove('uncertain', 'ready')).toBe(false)
	for (const state of outboxStates)
		if (state !== 'closed') expect(mayMove(state, 'closed'), state).toBe(true)
})
// written by the field rules of RFC 3464 section 2, with invented names
test(
	'without TLS only in so many words; the clocks of a breach run from the moment ' +
		'it was noticed',
	() => {
		const smtp = {
			host: 'mail.example',
			port: 587,
			security: 'none' as const,
			from: { name: 'C', email: 'c@clinic.example' },
		}
		expect(smtpProblems(smtp)[0]?.path).toBe('smtp.inSoManyWords')
		expect(smtpProblems({ ...smtp, inSoManyWords: 'yes' })).toHaveLength(1)
		expect(smtpProblems({ ...smtp, inSoManyWords: plainWords })).toEqual([])
		expect(smtpProblems({ ...smtp, security: 'tls', user: 'u' })[0]?.path).toBe('smtp.password')
		expect(
			countdown(
				{ noticedAt: '2027-01-01T00:00:00.000Z' },
				defaultBreachClock,
				'2027-01-02T00:00:00.000Z',
			),
		).toEqual({
			assessBy: '2027-01-31T00:00:00.000Z',
			authorityBy: '2027-01-04T00:00:00.000Z',
			assessDaysLeft: 29,
			authorityHoursLeft: 48,
		})
	},
)
