/** From finding to element: thresholds and pictures from the trade files, dome place by arithmetic. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { insert } from '../../shared/engine/insert/insert.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import {
	amountOf,
	type Conditions,
	flat,
	has,
	high,
	idsOf,
	leftOf,
	visitWith,
} from './known-insert.ts'

const protocol = openProtocol()
describe('from finding to element', () => {
	it('a pronated foot without pain calls for nothing', () =>
		expect(leftOf({ posture: { left: { fpi6: flat } } }).state).toBe('not-needed'))
	it('with pain: prefabricated device, medial post with its height, shell by mass, three-quarter', () => {
		const proposed = leftOf({
			posture: { left: { fpi6: flat } },
			conditions: [has('flexible-flatfoot-pain')],
			body: { massKg: 70 },
			feet: { left: { heelWidthMm: 60 } },
		})
		expect(
			proposed.elements.map((element) => [element.element, element.value ?? element.choice]),
		).toEqual([
			['device', 'prefabricated, modified'],
			['shell', 4],
			['heel-cup', 9],
			['cover', 1],
			['length', 'three-quarter'],
			['rearfoot-post-medial', 4],
		])
		// 60 mm times the tangent of 4 degrees
		expect(
			proposed.elements.find((element) => element.element === 'rearfoot-post-medial')!.params,
		).toEqual({ side: 'left', heelWidthMm: 60, heightMm: 4.2 })
	})
	it('the other foot is left alone', () =>
		expect(
			assess(
				visitWith({
					posture: { left: { fpi6: flat }, right: { fpi6: flat } },
					conditions: [has('flexible-flatfoot-pain')],
				}),
			).insert.right.state,
		).toBe('not-needed'))
	it('high supination resistance adds a skive for trainers, and the cup conflict is shown', () => {
		const { insert: both } = assess(
			visitWith({
				posture: { left: { fpi6: flat, supinationResistance: 'high' } },
				conditions: [has('flexible-flatfoot-pain')],
				body: { massKg: 70 },
			}),
		)
		expect(both.left.elements.find((element) => element.element === 'medial-skive')).toMatchObject({
			value: 4,
			where: 'trainer',
		})
		expect(amountOf(both.left, 'heel-cup')).toBe(14)
		expect(both.conflicts.map((conflict) => conflict.id)).toContain('insert.skive-cup.left')
	})
	it('heel pain takes the skive out and says so', () => {
		const { insert: both } = assess(
			visitWith({
				posture: { left: { fpi6: flat, supinationResistance: 'high' } },
				conditions: [has('flexible-flatfoot-pain'), has('plantar-heel-pain')],
				body: { massKg: 70 },
			}),
		)
		expect(idsOf(both.left)).not.toContain('medial-skive')
		expect(both.conflicts.map((conflict) => conflict.id)).toContain(
			'insert.withheld-medial-skive.left',
		)
	})
	it(
		'supinated with ankle trouble: lateral post; with fifth metatarsal history no lateral ' +
			'forefoot post',
		() => {
			const both = assess(
				visitWith({
					posture: { left: { fpi6: high, firstRay: 'plantarflexed' } },
					conditions: [
						has('lateral-ankle-instability'),
						has('fifth-metatarsal-stress-fracture', 'left', 'past'),
					],
					body: { massKg: 70 },
				}),
			).insert
			expect(idsOf(both.left)).toContain('rearfoot-post-lateral')
			expect(idsOf(both.left)).not.toContain('forefoot-post-lateral')
			expect(both.conflicts.map((conflict) => conflict.id)).toContain(
				'insert.withheld-forefoot-post-lateral.left',
			)
		},
	)
	it('metatarsalgia: dome edge 5 mm behind the heads', () =>
		expect(
			leftOf({
				conditions: [has('metatarsalgia')],
				feet: { left: { heelToBallMm: 190 } },
			}).elements.find((element) => element.element === 'metatarsal-dome')!.params,
		).toEqual({ side: 'left', behindHeadsMm: 5, edgeMm: 185 }))
	it('stiff painful first joint: plate, no cut-out', () => {
		const proposed = leftOf({
			conditions: [has('first-mtp-osteoarthritis'), has('metatarsalgia')],
			posture: { left: { firstMtpDegNonWeightBearing: 60, jackTestDeg: 5 } },
		})
		expect(idsOf(proposed)).toContain('forefoot-stiffener')
		expect(idsOf(proposed)).not.toContain('first-ray-cutout')
	})
	// clinical.md 4.4: a cut-out not with a forefoot varus; a medial forefoot post not where the
	// first joint is held or limited.
	it('what was measured speaks against an element as a condition does', () => {
		const of = (more: NonNullable<Visit['posture']>['left'], ...conditions: Conditions) =>
			assess(
				visitWith({ posture: { left: { fpi6: flat, ...more } }, conditions, body: { massKg: 70 } }),
			).insert
		const varus = of(
			{ forefoot: 'varus-flexible', firstMtpDegNonWeightBearing: 70, jackTestDeg: 5 },
			has('plantar-heel-pain'),
			has('flexible-flatfoot-pain'),
		)
		expect(idsOf(varus.left)).not.toContain('first-ray-cutout')
		expect(idsOf(varus.left)).not.toContain('forefoot-post-medial')
		expect(varus.conflicts.map((conflict) => conflict.id)).toEqual(
			expect.arrayContaining([
				'insert.withheld-first-ray-cutout.left',
				'insert.withheld-forefoot-post-medial.left',
			]),
		)
		expect(
			idsOf(
				of(
					{ forefoot: 'neutral', firstMtpDegNonWeightBearing: 70, jackTestDeg: 5 },
					has('plantar-heel-pain'),
				).left,
			),
		).toContain('first-ray-cutout')
		expect(
			idsOf(
				of(
					{ forefoot: 'varus-flexible', firstMtpDegNonWeightBearing: 70, jackTestDeg: 20 },
					has('flexible-flatfoot-pain'),
				).left,
			),
		).toContain('forefoot-post-medial')
	})
	// clinical.md 2.4 and 2.5: what is for both shoes is equal, the rest is the leg-length raise; one
	// figure in the ankle's proposal and in the insert.
	it('a leg-length correction is counted once', () => {
		const body = {
			legLengthDifferenceMm: 8,
			shorterLeg: 'left' as const,
			legLengthReason: 'back pain',
			legLengthSymptoms: true,
		}
		for (const [ankles, raises] of [
			[undefined, [0, 5.6, 0]],
			[{ left: { lungeDeg: 30 } }, [4, 2, 4]],
		] as const) {
			const assessment = assess(visitWith({ body, ...(ankles ? { ankles } : {}) }))
			const amount = (side: 'left' | 'right', element: string) =>
				amountOf(assessment.insert[side], element) ?? 0
			expect([
				amount('left', 'heel-raise'),
				amount('left', 'leg-length-raise'),
				amount('right', 'heel-raise'),
			]).toEqual(raises)
			expect(amount('left', 'heel-raise') + amount('left', 'leg-length-raise')).toBe(
				assessment.ankle.heelRaiseMm!.left,
			)
			expect(amount('right', 'heel-raise')).toBe(assessment.ankle.heelRaiseMm!.right)
		}
		// Recorded symptoms are enough; a recorded no stands against the condition.
		expect(
			amountOf(
				leftOf({ body: { legLengthDifferenceMm: 6, shorterLeg: 'left', legLengthSymptoms: true } }),
				'leg-length-raise',
			),
		).toBe(3.6)
		expect(
			leftOf({
				body: { legLengthDifferenceMm: 6, shorterLeg: 'left', legLengthSymptoms: false },
				conditions: [has('leg-length-difference')],
			}).state,
		).toBe('not-needed')
	})
	it('growing heel: 5 mm raise and cushion on both sides, no shell', () => {
		const both = assess(
			visitWith({
				player: { givenName: 'A', familyName: 'B', birthDate: '2015-01-01', sex: 'male' },
				conditions: [has('calcaneal-apophysitis')],
			}),
		).insert
		for (const side of ['left', 'right'] as const) {
			expect(amountOf(both[side], 'heel-raise')).toBe(5)
			expect(idsOf(both[side])).not.toContain('shell')
		}
	})
	it.each([
		[4, 'current', undefined],
		[6, 'current', 3.6],
		[6, 'past', undefined],
		[10, 'past', 6],
		[20, 'current', undefined],
	] as const)('leg difference %i mm, %s: raise %s', (legLengthDifferenceMm, status, raise) =>
		expect(
			amountOf(
				leftOf({
					body: { legLengthDifferenceMm, shorterLeg: 'left' },
					conditions: [has('leg-length-difference', 'left', status)],
				}),
				'leg-length-raise',
			),
		).toBe(raise),
	)
	it('an adolescent without symptoms gets no leg raise', () =>
		expect(
			leftOf({
				player: { givenName: 'A', familyName: 'B', birthDate: '2013-01-01', sex: 'male' },
				body: { legLengthDifferenceMm: 12, shorterLeg: 'left' },
			}).state,
		).toBe('not-needed'))
	it('all raises together stay at 6 mm', () => {
		const both = assess(
			visitWith({
				body: { legLengthDifferenceMm: 8, shorterLeg: 'left' },
				conditions: [has('leg-length-difference'), has('achilles-midportion', 'right')],
			}),
		).insert
		expect(
			(amountOf(both.left, 'heel-raise') ?? 0) + amountOf(both.left, 'leg-length-raise')!,
		).toBeCloseTo(6, 9)
		expect(both.conflicts.map((conflict) => conflict.id)).toContain('insert.raise-total.left')
		// the leg-length raise must still be the difference between the sides
		expect(
			amountOf(both.left, 'leg-length-raise')! +
				(amountOf(both.left, 'heel-raise') ?? 0) -
				(amountOf(both.right, 'heel-raise') ?? 0),
		).toBeCloseTo(4.8, 9)
	})
	it('the liner that comes out gives its room back', () => {
		const given = visitWith({
				posture: { left: { fpi6: flat } },
				conditions: [has('flexible-flatfoot-pain'), has('achilles-midportion')],
				body: { massKg: 70 },
			}),
			rooms = assess(given)
		const volume = (room?: { removableLiner: boolean; linerMm: number }) =>
			insert(given, { ...rooms, ...(room ? { room } : {}) }, protocol).conflicts.some(
				(conflict) => conflict.id === 'insert.volume.left',
			)
		expect([volume(), volume({ removableLiner: true, linerMm: 5 })]).toEqual([true, false])
	})
})
