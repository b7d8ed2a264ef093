/** Consent: for one purpose and one recipient, asked at the moment of use. */
import { describe, expect, test } from 'vitest'
import { type Consent, consentInForce, defaultAges } from '../../shared/desk/records/consent.ts'
import { passphrase, withPlayer } from './bench-app.ts'

describe('consent', () => {
	const given: Consent = {
		consentId: 'c1',
		recordedAt: '2027-01-01T00:00:00Z',
		purpose: 'share-with-coach',
		recipient: 'Coach Vale',
		decision: 'permit',
		grantor: { name: 'Rae', relation: 'parent' },
		method: 'written',
		given: '2027-01-01',
	}
	const asked = {
		purpose: 'share-with-coach' as const,
		recipient: 'coach vale',
		on: '2027-02-01',
		birthDate: '2011-04-17',
		ages: defaultAges,
	}
	test.each([
		['stands for its recipient', [given], {}, true],
		['is denied without a record', [], {}, false],
		['is denied for another recipient', [given], { recipient: 'Coach Other' }, false],
		['is denied for another purpose', [given], { purpose: 'email' as const }, false],
		['is denied before it was given', [given], { on: '2026-12-31' }, false],
		['stands on the last day', [{ ...given, expires: '2027-02-02' }], {}, true],
		['is denied from the day it runs out', [{ ...given, expires: '2027-02-01' }], {}, false],
		['is denied once withdrawn', [{ ...given, withdrawn: '2027-01-15' }], {}, false],
		[
			'is denied by a later refusal',
			[given, { ...given, given: '2027-01-20', decision: 'deny' as const }],
			{},
			false,
		],
		['of a guardian ends at the adult age', [given], { on: '2029-04-17' }, false],
		['of a guardian stands the day before', [given], { on: '2029-04-16' }, true],
		[
			'of a young player needs a note on capacity',
			[{ ...given, grantor: { name: 'Z', relation: 'player' as const } }],
			{},
			false,
		],
		[
			'of a young player stands with one',
			[
				{
					...given,
					grantor: { name: 'Z', relation: 'player' as const },
					capacityNote: 'understands what the coach will see',
				},
			],
			{},
			true,
		],
		[
			'of a young player counts by the local age',
			[{ ...given, grantor: { name: 'Z', relation: 'player' as const } }],
			{ ages: { adultYears: 18, ownConsentYears: 14 } },
			true,
		],
	])('%s', (_, consents, more, expected) => {
		const answer = consentInForce(consents, { ...asked, ...more })
		expect(answer.inForce).toBe(expected)
		expect(answer.because.length).toBeGreaterThan(10)
	})
	test('is recorded, asked at the moment of use and withdrawn through the host', async () => {
		const { app, playerId } = await withPlayer()
		const check = () => app.ask('consents.check', { playerId, purpose: 'photos', recipient: '' })
		expect((await check()).inForce).toBe(false)
		const consent = {
			purpose: 'photos',
			recipient: '',
			decision: 'permit',
			grantor: { name: 'Rae', relation: 'parent' },
			method: 'verbal',
			given: '2027-01-20',
			expires: '2027-06-30',
		}
		expect(
			(
				await app.refused('consents.record', {
					playerId,
					consent: { ...consent, given: '2027-02-20' },
				})
			).problems?.[0]?.path,
		).toBe('consent.given')
		expect(
			(
				await app.refused('consents.record', {
					playerId,
					consent: { ...consent, purpose: 'email' },
				})
			).problems?.[0]?.path,
		).toBe('consent.recipient')
		const { consentId } = await app.ask('consents.record', { playerId, consent })
		expect(await check()).toMatchObject({ inForce: true, consentId, expires: '2027-06-30' })
		app.clock.ms = Date.parse('2027-06-30T09:00:00Z')
		expect(
			(await app.call('consents.check', { playerId, purpose: 'photos', recipient: '' })).ok,
		).toBe(false)
		await app.ask('session.unlock', { passphrase })
		expect((await check()).inForce).toBe(false)
		await app.ask('consents.withdraw', {
			playerId,
			consentId,
			withdrawn: '2027-06-01',
			withdrawnBy: 'Rae',
		})
		expect((await check()).because).toMatch(/withdrawn on 1 June 2027/)
		app.close()
	})
})
