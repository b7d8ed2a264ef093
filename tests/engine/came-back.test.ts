/** What changed between a backup and what stood before a restore, and what is decided of it. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { decideLine, lineOf, openLines } from '../../shared/desk/backups/came-back.ts'
import {
	mustBeChecked,
	type Standing,
	type StandingPerson,
	whatCameBack,
	whoCanOpen,
} from '../../shared/desk/backups/compare.ts'
import { choiceWords, lineWords } from '../../shared/desk/backups/words.ts'
import type { OutboxItem } from '../../shared/desk/outbox/item.ts'
import type { Consent } from '../../shared/desk/records/consent.ts'

const person = (change: Partial<StandingPerson> = {}): StandingPerson => ({
	...{ personId: 'b', name: 'B. Example', registration: 'R2', role: 'clinician', active: true },
	...change,
})
const consent = (change: Partial<Consent> = {}): Consent => ({
	...{ consentId: 'c', purpose: 'email', recipient: 'Rae', decision: 'permit' },
	...{ grantor: { name: 'Rae', relation: 'parent' }, method: 'written' },
	...{ given: '2027-01-20', recordedAt: '2027-01-20T09:00:00.000Z' },
	...change,
})
const item = (change: Partial<OutboxItem> = {}): OutboxItem => ({
	...{ itemId: 'i', playerId: 'p', visitId: 'v', documentId: 'd', kind: 'player', version: 1 },
	...{ sha256: '', channel: 'smtp', protection: 'open', state: 'ready', due: '2027-01-22' },
	recipient: { recipientId: 'player', name: 'Rae', role: 'player' },
	...{
		owner: { personId: 'a', name: 'A' },
		createdAt: '',
		messageId: '',
		attempts: 0,
		history: [],
	},
	...change,
})
const standing = (change: Partial<Standing> = {}): Standing => ({
	...{ people: [], consents: [], items: [] },
	...change,
})
const held = (value: Consent) => ({ playerId: 'p', record: 'r', consent: value })
const subjects = (
	before: Partial<Standing>,
	backup: Partial<Standing>,
	passphrases: string[] = [],
) =>
	whatCameBack(standing(before), standing(backup), passphrases).map(({ subject, allowed }) => ({
		...subject,
		allowed,
	}))

describe('people', () => {
	test.each([
		['retired', [person({ active: false })], [person()], ['as-before', 'as-in-backup']],
		['added', [person()], [], ['as-before', 'as-in-backup']],
		['changed', [person({ role: 'student' })], [person()], ['as-before', 'as-in-backup']],
		['came-back', [], [person()], ['as-before', 'as-in-backup']],
	] as const)('%s', (change, before, backup, allowed) => {
		expect(subjects({ people: before }, { people: backup })).toEqual([
			expect.objectContaining({ what: 'person', personId: 'b', change, allowed }),
		])
	})
	test('the same, or taken off on both sides, is no line', () => {
		expect(subjects({ people: [person()] }, { people: [person()] })).toEqual([])
		const off = person({ active: false })
		expect(subjects({ people: [off] }, { people: [off] })).toEqual([])
	})
	test('a changed passphrase is a line of who is in both, and never decided otherwise', () => {
		const both = { people: [person()] }
		expect(subjects(both, both, ['b', 'gone'])).toEqual([
			{ what: 'passphrase', personId: 'b', allowed: ['as-before'] },
		])
	})
	test('after a move everybody who can open is listed; the owner cannot be taken off', () => {
		const lines = whoCanOpen([
			person({ personId: 'a', role: 'owner' }),
			person(),
			person({ personId: 'c', active: false }),
		])
		expect(lines.map(({ allowed }) => allowed)).toEqual([
			['as-in-backup'],
			['as-in-backup', 'take-off'],
		])
	})
})
describe('consents', () => {
	const withdrawn = consent({ withdrawn: '2027-01-21' })
	test('one withdrawn since may be noted anew; one given or refused since stays', () => {
		expect(subjects({ consents: [held(withdrawn)] }, { consents: [held(consent())] })).toEqual([
			expect.objectContaining({ change: 'withdrawn', allowed: ['as-before', 'as-in-backup'] }),
		])
		expect(subjects({ consents: [held(consent())] }, {})).toEqual([
			expect.objectContaining({ change: 'given', allowed: ['as-before'] }),
		])
		expect(subjects({ consents: [held(consent({ decision: 'deny' }))] }, {})).toEqual([
			expect.objectContaining({ change: 'refused' }),
		])
	})
	test('one withdrawn in the backup already, or given and withdrawn since, is no line', () => {
		const both = { consents: [held(withdrawn)] }
		expect(subjects(both, both)).toEqual([])
		expect(subjects(both, {})).toEqual([])
	})
})
describe('the outbox', () => {
	test('what was sent since is a line', () => {
		const sent = item({ state: 'sent', sentAt: '2027-01-21T09:00:00.000Z' })
		expect(subjects({ items: [sent] }, { items: [item()] })).toEqual([
			expect.objectContaining({ what: 'sending', itemId: 'i', at: sent.sentAt }),
		])
		expect(subjects({ items: [sent] }, { items: [sent] })).toEqual([])
	})
	test.each([
		['ready', item(), 'ready'],
		['leaving', item({ handing: true }), 'leaving'],
		['uncertain', item({ state: 'uncertain' }), 'uncertain'],
		['to check', item({ state: 'to-check' }), undefined],
		['sent', item({ state: 'sent' }), undefined],
		['closed', item({ state: 'closed' }), undefined],
	] as const)('%s', (_, given, stood) => {
		expect(mustBeChecked(given)).toBe(stood)
	})
})
describe('deciding', () => {
	const lines = [
		lineOf({ what: 'person', personId: 'b', change: 'retired' }, ['as-in-backup']),
		lineOf({ what: 'passphrase', personId: 'a' }),
	]
	const list = {
		...{ restoreId: 'l', at: '', how: 'restore' as const, backup: 'f', backupAt: '' },
		lines,
	}
	const decided = { by: 'A. Example', at: '2027-01-21T09:00:00.000Z' }
	test('takes each line once, and only as it may go', () => {
		const [first = '', second = ''] = lines.map(({ lineId }) => lineId)
		const one = decideLine(list, first, { ...decided, choice: 'as-in-backup' })
		expect(openLines(one).map(({ lineId }) => lineId)).toEqual([second])
		expect(() => decideLine(one, first, { ...decided, choice: 'as-before' })).toThrow(/already/)
		expect(() => decideLine(list, second, { ...decided, choice: 'as-in-backup' })).toThrow(
			/that way/,
		)
		expect(() => decideLine(list, 'other', { ...decided, choice: 'as-before' })).toThrow(
			/not in the list/,
		)
	})
	test('every line says a sentence, also of what is gone from the records', () => {
		const what = fc.constantFrom(
			...lines.map(({ subject }) => subject),
			...(['given', 'refused', 'withdrawn'] as const).map((change) => ({
				...{ what: 'consent' as const, consentId: 'c', playerId: 'p', change },
			})),
			{ what: 'destroyed' as const, records: 3 },
			{ what: 'sending' as const, itemId: 'i-1', playerId: 'p', at: '' },
			{ what: 'to-check' as const, itemId: 'i-1', playerId: 'p', stood: 'leaving' as const },
		)
		fc.assert(
			fc.property(what, (subject) => {
				const says = lineWords(subject, { time: (at) => at })
				expect(says).toMatch(/^[A-Z0-9].*\.$/)
				expect(says).not.toMatch(/undefined|NaN/)
				expect(choiceWords(subject, 'as-in-backup')).toMatch(/^As in the backup/)
			}),
		)
	})
})
