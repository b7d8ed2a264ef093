/** The answer beside each step: scales drawn from readings and limits, and their words. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
	bandWords,
	differenceWords,
	isRead,
	sideLines,
} from '../../renderer/screens/assessment/results/ankleFacts.ts'
import { ankleStrips } from '../../renderer/screens/assessment/results/ankleStrips.ts'
import { stateWords, unaskedIn } from '../../renderer/screens/assessment/results/gateFacts.ts'
import {
	rateLines,
	reviewLines,
	stageLines,
	stageWords,
	withoutScale,
} from '../../renderer/screens/assessment/results/growthFacts.ts'
import { ageStrip, shareStrip } from '../../renderer/screens/assessment/results/growthStrips.ts'
import {
	conditionLines,
	hoursWords,
	loadRows,
	pairLines,
	sessionWords,
} from '../../renderer/screens/assessment/results/playFacts.ts'
import {
	indexStrip,
	indexZones,
	legWords,
	postureRows,
} from '../../renderer/screens/assessment/results/postureFacts.ts'
import { endsOf, percentAt } from '../../renderer/screens/assessment/results/strip.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { Gate } from '../../shared/engine/findings/gate.ts'
import { openProtocol, shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { json, read } from '../demo.ts'
import { askedAndNo, brokenAnkle, visitOf } from './gate-visit.ts'

const protocol = openProtocol()
const boy: Visit = read(json('visit-adolescent.json'))
const ofBoy = assess(boy)
const adult = (more: Partial<Visit>) => visitOf(askedAndNo, more)

describe('a scale', () => {
	it('holds every value that stands on it, whatever is usual', () => {
		const value = fc.double({ min: -100, max: 100, noNaN: true })
		fc.assert(
			fc.property(fc.array(value, { maxLength: 6 }), (values) => {
				const ends = endsOf([0, 20], values)
				expect(ends.low).toBeLessThanOrEqual(Math.min(0, ...values))
				expect(ends.high).toBeGreaterThanOrEqual(Math.max(20, ...values))
				for (const each of values) {
					const percent = percentAt(ends, each)
					expect(percent).toBeGreaterThanOrEqual(0)
					expect(percent).toBeLessThanOrEqual(100)
				}
			}),
		)
	})
	it('puts a value in its place, and none outside', () => {
		expect(percentAt({ low: 0, high: 20 }, 5)).toBe(25)
		expect(percentAt({ low: 0, high: 20 }, 30)).toBe(100)
		expect(percentAt({ low: 3, high: 3 }, 3)).toBe(0)
	})
})

describe('the ankles', () => {
	const tested = adult({
		ankles: {
			left: { lungeCm: [6, 7], lungeDeg: 30, kneeStraightDeg: -2, kneeBentDeg: 18 },
			right: { lungeCm: 12, endFeel: 'calf-stretch' },
		},
	})
	const { ankle } = assess(tested)
	it('one scale for each test that was taken, with the limit in force and its error', () => {
		const strips = ankleStrips(ankle, tested, protocol)
		expect(strips.map(({ key }) => key)).toEqual(['lungeCm', 'lungeDeg', 'gap'])
		expect(strips[0]?.limits).toEqual([
			{ value: protocol.value('ankle.restrictedCm'), error: protocol.value('ankle.repeatCm') },
		])
		const own = openProtocol({ ...shippedProtocol, values: { 'ankle.restrictedDeg': 34 } })
		expect(ankleStrips(ankle, tested, own)[1]?.limits[0]?.value).toBe(34)
	})
	it('says of each side which test decided', () => {
		const [cm, deg, gap] = ankleStrips(ankle, tested, protocol)
		expect(cm?.aside).toBe('decides, right')
		expect(deg?.aside).toBe('decides, left')
		expect(cm?.lanes.map(({ says }) => says)).toEqual(['6.5', '12'])
		expect(deg?.lanes.map(({ says }) => says)).toEqual(['30, below', 'not read'])
		expect(gap?.lanes.map(({ says }) => says)).toEqual(['gap 20', 'not read'])
	})
	it("a minor's distance has a cut-off by stature, and none without", () => {
		const cm = (visit: Visit) => ankleStrips(assess(visit).ankle, visit, protocol)[0]
		expect(cm(boy)?.note).toMatch(/scaled to stature/)
		const { body: _, ...short } = boy
		expect(cm(short)?.limits).toEqual([])
		expect(cm(short)?.note).toMatch(/needs a stature/)
	})
	it('nothing read draws nothing; a limb that waits is judged by nothing', () => {
		const nothing = adult({})
		expect(isRead(assess(nothing).ankle, nothing)).toBe(false)
		expect(ankleStrips(assess(nothing).ankle, nothing, protocol)).toEqual([])
		const held = visitOf(brokenAnkle, {
			ankles: { left: { lungeDeg: 30 }, right: { lungeDeg: 40 } },
		})
		const of = assess(held)
		expect(bandWords(of.ankle.left)).toBe('Not judged today')
		expect(ankleStrips(of.ankle, held, protocol)[0]?.lanes[0]?.marks[0]?.filled).toBe(false)
		expect(sideLines('left', of, held, 'Ottawa rule met')).toEqual([
			'Tests wait: Ottawa rule met',
			'Raise: held, none is proposed',
		])
	})
	it('the raise of each foot, the end feel, and the difference', () => {
		expect(sideLines('left', ofBoy, boy, '')).toContain('End feel: calf stretch')
		const { mm } = ofBoy.prescription.raise.aim
		expect(sideLines('left', ofBoy, boy, '').at(-1)).toMatch(`Raise: ${mm?.left} mm`)
		expect(differenceWords(ofBoy.ankle)).toMatch(/^Difference: 2.4 cm and 6.3 degrees, enough/)
		expect(differenceWords(ankle)).toBe('Difference: 5.5 cm, enough to look for a reason')
	})
})

describe('the posture', () => {
	it('bands of the scheme in force, next to each other, from end to end', () => {
		for (const fpiScheme of ['raw', 'trial'] as const) {
			const zones = indexZones(openProtocol({ ...shippedProtocol, fpiScheme }))
			expect(zones[0]?.from).toBe(-12.5)
			expect(zones.at(-1)?.to).toBe(12.5)
			for (const [at, zone] of zones.entries())
				if (at > 0) expect(zone.from).toBe(zones[at - 1]?.to)
			const normal = zones.filter(({ lit }) => lit)
			expect(normal).toHaveLength(1)
			const limits = fpiScheme === 'raw' ? [-0.5, 5.5] : [0.5, 7.5]
			expect([normal[0]?.from, normal[0]?.to]).toEqual(limits)
		}
	})
	it('the upper limit found in children is drawn for the young alone', () => {
		expect(indexStrip(ofBoy, boy, protocol)?.limits).toHaveLength(1)
		const grown = adult({ posture: { left: { fpi6: [1, 1, 1, 1, 1, 1] }, right: {} } })
		expect(indexStrip(assess(grown), grown, protocol)?.limits).toEqual([])
		expect(indexStrip(assess(adult({})), adult({}), protocol)).toBeUndefined()
	})
	it('what lies beyond its limit first, and the other side as it is', () => {
		const visit = adult({
			posture: {
				left: { navicularDropMm: 8, firstMtpDegNonWeightBearing: 60, heelRises: 10 },
				right: { navicularDropMm: 9, firstMtpDegNonWeightBearing: 70, heelRises: 30 },
			},
		})
		const rows = postureRows(assess(visit), visit, protocol)
		expect(rows.map(({ key }) => key)).toEqual([
			'firstMtpDegNonWeightBearing',
			'heelRises',
			'navicularDropMm',
		])
		expect(rows[0]?.left).toEqual({ says: '60, beyond', verdict: 'beyond' })
		expect(rows[0]?.right).toEqual({ says: '70', verdict: 'within' })
		expect([rows[1]?.left.verdict, rows[1]?.right.verdict]).toEqual(['beyond', 'within'])
	})
	it('a test of a limb that waits is kept and not judged', () => {
		const visit = visitOf(brokenAnkle, {
			posture: { left: { jackTestDeg: 5, heelRises: 2 }, right: { jackTestDeg: 5 } },
		})
		const [jack, rises] = postureRows(assess(visit), visit, protocol)
		expect(jack?.left).toEqual({ says: '5, not judged', verdict: 'unjudged' })
		expect(jack?.right.verdict).toBe('beyond')
		expect(rises?.left.verdict).toBe('unjudged')
	})
	it('a leg length by what is to be done', () => {
		const legs = (legLengthDifferenceMm: number) =>
			legWords(
				assess(adult({ body: { legLengthDifferenceMm, shorterLeg: 'left' } })).posture.legLength,
			)
		expect(legs(3)).toBe(
			'Leg length: 3 mm, left shorter: below the error of the test: recorded only',
		)
		expect(legs(22)).toMatch(/refer$/)
		expect(legWords(undefined)).toBe('')
	})
})

describe('growth', () => {
	const growth = ofBoy.growth!
	it('the age at the spurt with one standard error of the method that is drawn', () => {
		const strip = ageStrip(growth, boy, protocol)!
		const [, spurt] = strip.lanes
		const [mark] = spurt!.marks
		expect(mark!.high! - mark!.value).toBeCloseTo(protocol.value('growth.mirwaldErrorBoys'))
		expect(mark!.value).toBe(growth.ageAtPeakHeightVelocityYears.mirwald)
		const around = strip.zones.find(({ lit }) => lit)!
		expect(around.to - around.from).toBeCloseTo(2 * protocol.value('growth.offsetAroundYears'))
		expect(strip.low).toBeLessThan(around.from)
		expect(strip.high).toBeGreaterThan(around.to)
	})
	it('the share of adult stature with its range', () => {
		const strip = shareStrip(growth, protocol)!
		expect(strip.lanes[0]?.marks[0]).toMatchObject(growth.percentAdultStatureRange!)
		expect(strip.zones.map(({ to }) => to).slice(0, 2)).toEqual([88, 96])
	})
	it('says whether the two agree, and when to measure again', () => {
		expect(stageWords(growth)).toBe('Around the growth spurt')
		expect(stageLines(growth)[0]).toMatch(/agree$/)
		expect(reviewLines(growth, (id) => id)[0]).toMatch(/short already$/)
		const apart = { ...growth, band: 'uncertain', stageKnown: true } as const
		expect(stageLines(apart)[0]).toMatch(/disagree$/)
		expect(stageLines({ ...growth, stageKnown: false })).toEqual([])
	})
	it('what was not measured is asked for; where no estimate holds, that is said', () => {
		const { body: _, ...unmeasured } = boy
		const bare = assess(unmeasured).growth!
		expect(ageStrip(bare, unmeasured, protocol)).toBeUndefined()
		expect(shareStrip(bare, protocol)).toBeUndefined()
		expect(stageWords(bare)).toBe('Stage not established')
		expect(withoutScale(bare)).toMatch(/once stature/)
		const treated = { ...boy, body: { ...boy.body, growthOrHormoneTreatment: true } }
		expect(withoutScale(assess(treated).growth!)).toMatch(/No estimate/)
	})
	it('rates only between two visits, with their error', () => {
		expect(rateLines(growth, boy, [], protocol)).toEqual([])
		const before: Visit = {
			...boy,
			visitDate: '2026-07-15',
			body: { ...boy.body, statureCm: 154.9 },
		}
		const since = assess(boy, [before]).growth!
		expect(rateLines(since, boy, [before], protocol)[0]).toMatch(
			/^Stature: 6.8 cm a year, error 1.6 \(95 %\), since 15 July 2026$/,
		)
	})
})

describe('the player at a glance', () => {
	const busy = { ...boy, play: { ...boy.play, organisedHoursPerWeek: 15, daysOffPerWeek: 0 } }
	it('the week of the young against its limits', () => {
		const rows = loadRows(assess(busy), busy, protocol)
		const of = (key: string) => rows.find((row) => row.key === key)
		expect(of('loading.hours-over-age')).toMatchObject({
			says: '15',
			limit: '13, by age',
			beyond: true,
		})
		expect(of('loading.no-day-off')).toMatchObject({ says: '0', beyond: true })
		expect(of('loading.one-sport')).toBeUndefined()
		expect(loadRows(ofBoy, boy, protocol).some(({ beyond }) => beyond)).toBe(false)
	})
	it('an adult is held against none', () => {
		const grown = adult({ play: { organisedHoursPerWeek: 40 } })
		expect(loadRows(assess(grown), grown, protocol)).toEqual([])
		expect(hoursWords(grown, protocol)).toBe('40 hours of organised sport a week')
		expect(hoursWords(busy, protocol)).toBe('')
	})
	it('sessions, conditions and pairs as short lines', () => {
		expect(sessionWords(boy)).toBe('1 match, 2 trainings a week')
		expect(sessionWords(adult({}))).toBe('')
		expect(conditionLines(boy)[0]).toMatch(/, left: current, worst pain 5 of 10$/)
		expect(pairLines(ofBoy, boy)[0]).toMatch(/: 4.5 mm of room, replace by /)
		const unmeasured = adult({ footwear: [{ id: 'a', name: 'old boots' }] })
		expect(pairLines(assess(unmeasured), unmeasured)[0]).toMatch(/^Old boots: /)
	})
})

describe('the gate', () => {
	it('says how each part stands, and names each open question once', () => {
		const { gate } = assess(visitOf({ ...brokenAnkle, nightPain: false })).prescription
		expect(['person', 'left', 'right'].map((part) => stateWords(gate[part as keyof Gate]))).toEqual(
			['Held', 'Held', 'Not established'],
		)
		expect(unaskedIn(gate)).toEqual(['fever', 'reduced-sensation', 'weight-bearing'])
		expect(stateWords(assess(adult({})).prescription.gate.person)).toBe('Nothing found')
	})
})
