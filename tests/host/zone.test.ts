/**
 * In the east the clinic's day begins before the day of UTC: what is given today is not in the
 * future.
 */
import { afterAll, beforeAll, expect, test } from 'vitest'
import { dayHere } from '../../shared/desk/workplace/local-day.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { pdf, signed, withPlayer } from './bench-app.ts'

const before = process.env.TZ
beforeAll(() => {
	process.env.TZ = 'Australia/Melbourne'
})
afterAll(() => {
	if (before === undefined) delete process.env.TZ
	else process.env.TZ = before
})
/** Half past nine in the morning of 20 January in Melbourne. */
const morning = '2027-01-19T22:30:00.000Z'
const consent = (given: string) => ({
	purpose: 'email',
	recipient: 'Zoë Marlowe-Nguyễn',
	decision: 'permit',
	grantor: { name: 'Lan Nguyễn', relation: 'parent' },
	method: 'written',
	given,
})
test('a consent of this morning is taken, one of tomorrow is not', async () => {
	expect(dayHere(new Date(morning))).toBe('2027-01-20')
	const { app, playerId } = await withPlayer(undefined, morning)
	await app.ask('consents.record', { playerId, consent: consent('2027-01-20') })
	expect(
		await app.refused('consents.record', { playerId, consent: consent('2027-01-21') }),
	).toMatchObject({ code: 'people.consent-cannot-stand', problems: [{ path: 'consent.given' }] })
	app.close()
})
test('a visit of this morning is signed on its own day, not as a late entry', async () => {
	const drawn: LwDocument[] = []
	const { app, playerId } = await withPlayer(undefined, morning, async (document) => {
		drawn.push(document)
		return pdf
	})
	const visitId = await signed(app, playerId)
	expect(await app.ask('visits.open', { visitId })).toMatchObject({
		signedAt: morning,
		signedOn: '2027-01-20',
	})
	expect(drawn.at(-1)?.blocks).toContainEqual(
		expect.objectContaining({
			kind: 'signature',
			date: 'Signed 20 January 2027, from measurements on 20 January 2027',
		}),
	)
	app.close()
})
