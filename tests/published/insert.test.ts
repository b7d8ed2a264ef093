/** From finding to element: thresholds and pictures from the trade files, dome place by arithmetic. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { InsertResult } from '../../shared/engine/findings/assessment.ts'
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

const settledIn = ({ settled = [] }: InsertResult) => settled.map(({ id }) => id)
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
			['shell', 3.5],
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
	it('high supination resistance adds a skive for trainers, and says why not in boots', () => {
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
		expect(settledIn(both)).toContain('insert.settled-skive.left')
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
		expect(settledIn(both)).toContain('insert.withheld-medial-skive.left')
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
			expect(settledIn(both)).toContain('insert.withheld-forefoot-post-lateral.left')
		},
	)
	// clinical.md 4.4, the same in running: cushioning rather than a pad (Hähni 2016: 281 against 315 kPa)
	it('metatarsalgia: the cushion stands, the dome gives way to it', () => {
		const { insert: both } = assess(visitWith({ conditions: [has('metatarsalgia')] }))
		expect(idsOf(both.left)).toContain('forefoot-cushion')
		expect(idsOf(both.left)).not.toContain('metatarsal-dome')
		expect(both.settled!.find(({ code }) => code === 'insert.settled-opposite')!.params).toEqual({
			side: 'left',
			gives: 'metatarsal-dome',
			to: 'forefoot-cushion',
			why: 'same-work',
			by: 'strength',
		})
	})
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
		expect(settledIn(varus)).toEqual(
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
	it('an adolescent without symptoms gets no leg raise', () =>
		expect(
			leftOf({
				player: { givenName: 'A', familyName: 'B', birthDate: '2013-01-01', sex: 'male' },
				body: { legLengthDifferenceMm: 12, shorterLeg: 'left' },
			}).state,
		).toBe('not-needed'))
})
