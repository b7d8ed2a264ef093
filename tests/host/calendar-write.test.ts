/** The calendar given out, with ical.js as the other side. */
import fc from 'fast-check'
import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { foldLine, writeCalendar } from '../../electron/calendar/write.ts'
import { icalZone, knownZone } from '../../electron/calendar/zones.ts'
import { planSeason } from '../../electron/solver/plan.ts'
import { seasonVisit } from '../engine/random-season.ts'
import { starts } from './calendar-text.ts'

describe('writing a calendar', () => {
	const sessions = [
		{
			id: 'x',
			date: '2027-04-03',
			start: '14:00',
			minutes: 90,
			kind: 'match' as const,
			surface: 'natural-firm' as const,
		},
		{
			id: 'y',
			date: '2027-04-10',
			start: '14:00',
			minutes: 90,
			kind: 'match' as const,
			surface: 'natural-firm' as const,
		},
	]
	const plan = (list = sessions) =>
		planSeason(
			seasonVisit([{ id: 'p1', name: 'boots', sole: 'firm-ground', minutesWorn: 900 }], list, {
				conditions: [{ condition: 'blister', side: 'left', status: 'current' }],
			}),
		)
	const options = { zone: 'Australia/Melbourne', stamp: new Date('2027-01-10T00:00:00Z') }
	it('ical.js reads the instants back', async () => {
		const text = writeCalendar(await plan(), options)
		ICAL.TimezoneService.reset()
		const root = new ICAL.Component(ICAL.parse(text))
		for (const zone of root.getAllSubcomponents('vtimezone')) ICAL.TimezoneService.register(zone)
		const events = root.getAllSubcomponents('vevent').map((component) => new ICAL.Event(component))
		expect(events.map(({ startDate }) => startDate.toJSDate().toISOString())).toEqual([
			'2027-04-03T03:00:00.000Z',
			'2027-04-10T04:00:00.000Z',
		])
		expect(events.map(({ duration }) => duration.toSeconds())).toEqual([5400, 5400])
		expect([
			text.endsWith('END:VCALENDAR\r\n'),
			text.replaceAll('\r\n', '').includes('\n'),
			text.includes('CLASS:PRIVATE'),
			/blister|boots/i.test(text),
		]).toEqual([true, false, true, false])
		expect(
			Math.max(...text.split('\r\n').map((line) => Buffer.byteLength(line))),
		).toBeLessThanOrEqual(75)
	})
	it('what we write we read, and again without change', async () => {
		const text = writeCalendar(await plan(), options)
		expect(starts(text)).toEqual(['2027-04-03 14:00', '2027-04-10 14:00'])
	})
	it('ids stay, SEQUENCE grows only with a change, what is gone is cancelled', async () => {
		const first = writeCalendar(await plan(), options)
		const uids = (text: string) => [...text.matchAll(/^UID:(.*)\r$/gm)].map(([, value]) => value)
		const again = writeCalendar(await plan(), {
			...options,
			stamp: new Date('2027-02-01T00:00:00Z'),
			previous: first,
		})
		expect([uids(again), again.includes('SEQUENCE:1')]).toEqual([uids(first), false])
		const moved = writeCalendar(await plan([{ ...sessions[0]!, start: '15:00' }]), {
			...options,
			previous: first,
		})
		expect([...moved.matchAll(/SEQUENCE:(\d)/g)].map(([, value]) => value)).toEqual(['1', '1'])
		expect([uids(moved), moved.match(/STATUS:CANCELLED/g)?.length]).toEqual([uids(first), 1])
	})
	it('folds between characters, at 75 octets', () =>
		fc.assert(
			fc.property(
				fc.string({
					unit: fc.constantFrom('a', 'è', '–', '日', '🙂'),
					minLength: 1,
					maxLength: 300,
				}),
				(text) => {
					const folded = foldLine(`SUMMARY:${text}`)
					expect(folded.split('\r\n').every((line) => Buffer.byteLength(line) <= 75)).toBe(true)
					expect(folded.replaceAll('\r\n ', '')).toBe(`SUMMARY:${text}`)
				},
			),
		))
	it.each([
		'Australia/Melbourne',
		'Europe/London',
		'America/New_York',
		'Asia/Kolkata',
		'Pacific/Auckland',
	])('the rules written for %s agree with the machine all year', (zone) => {
		const rules = icalZone(zone, 2026, 2028)
		for (let day = 0; day < 365; day++) {
			const time = ICAL.Time.fromJSDate(
				new Date(Date.UTC(2027, 0, 1 + day, 11)),
				true,
			).convertToZone(rules)
			const [, hour] = new Intl.DateTimeFormat('en-GB', {
				timeZone: zone,
				hour: '2-digit',
				minute: '2-digit',
				day: '2-digit',
			})
				.format(Date.UTC(2027, 0, 1 + day, 11))
				.split(', ')
			expect(`${String(time.hour).padStart(2, '0')}:${String(time.minute).padStart(2, '0')}`).toBe(
				hour,
			)
		}
	})
	it('knows its zones', () =>
		expect([knownZone('Europe/Paris'), knownZone('Clubland')]).toEqual([true, false]))
})
