/** Pairs in use, and the work on them: common practice, no source. */
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { judgePair } from '../../shared/engine/footwear/pairs.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { footwearRows } from '../../shared/engine/protocol/rows/footwear.table.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { visitWith } from './known-shelf.ts'

const protocol = openProtocol()
it.each([
	['sole-separated', 'replace'],
	['counter-collapsed', 'replace'],
	['studs-worn', 'replace'],
	['stud-sharp', 'change'],
	['heel-slips', 'change'],
] as const)('own pair, %s: %s', (damage, verdict) =>
	expect(
		judgePair({ id: 'p', insideLengthMm: 267, damage: [damage] }, 260, 0, true, protocol).verdict,
	).toBe(verdict),
)
// a boot shorter than the foot is not 'tight': no source needed
it.each([
	[true, 0, { shortMm: 7, withSock: false }],
	[false, 2, { shortMm: 9, withSock: true }],
])('a pair shorter than the foot, adult %s, sock %d mm', (adult, sockMm, params) =>
	expect(judgePair({ id: 'p', insideLengthMm: 255 }, 262, sockMm, adult, protocol)).toMatchObject({
		verdict: 'replace',
		code: 'pairs.pair',
		params: {
			said: [
				{ code: 'owned.stop-wearing', params: { mendable: false, held: false } },
				{ code: 'owned.touches', params },
			],
		},
	}),
)
it(
	'own pair of a growing player: replaced by the date the growth room gives, none for an adult ' +
		'without one',
	() => {
		const toeRoom = {
			id: 'p',
			toeRoomMm: 8,
			leastMm: 5,
			state: 'runs-out',
			runsOutOn: '2027-06-20',
			earliest: '2027-05-20',
		} as const
		const judged = judgePair({ id: 'p', insideLengthMm: 258 }, 250, 0, false, protocol, { toeRoom })
		expect([judged.verdict, judged.replaceBy, judged.replaceBetween]).toEqual([
			'keep',
			'2027-06-20',
			{ from: '2027-05-20' },
		])
		expect(judged.params.said).toEqual([
			{ code: 'owned.keep', params: {} },
			{ code: 'owned.room', params: { toeRoomMm: 8, leastMm: 8, mostMm: 12 } },
			{
				code: 'pairs.outgrown-by',
				params: { leastMm: 5, on: '2027-06-20', earliest: '2027-05-20' },
			},
		])
		expect(
			judgePair({ id: 'p', insideLengthMm: 270 }, 262, 0, true, protocol, {}).replaceBy,
		).toBeUndefined()
	},
)
it('modifications and lacing carry their cautions', () => {
	const found = assess(
		visitWith({
			conditions: [
				{ condition: 'plantar-heel-pain', side: 'left', status: 'current' },
				{ condition: 'patellofemoral-pain', side: 'left', status: 'current' },
				{ condition: 'achilles-midportion', side: 'left', status: 'current' },
			],
			footwear: [{ id: 'p', name: 'boots', sole: 'firm-ground', insideLengthMm: 268 }],
		}),
	)
	const cautionsOf = (id: string) =>
		[...found.footwear.modifications!, ...found.footwear.lacing!]
			.find((work) => work.id === id)!
			.stated!.cautions.map(({ code }) => code)
	expect(cautionsOf('heel-raise')).toEqual(['work.caution-raise-loads-forefoot'])
})
// common practice, no source: the lock pulls a sore heel against the counter
it.each(['achilles-insertional', 'haglund-deformity', 'calcaneal-apophysitis'] as const)(
	'a heel that slips with %s is not laced with a heel lock',
	(condition) => {
		const slips = [{ id: 'p', sole: 'firm-ground' as const, damage: ['heel-slips' as const] }]
		const laced = (conditions: Visit['conditions']) =>
			assess(visitWith({ footwear: slips, conditions })).footwear.lacing!.map(({ id }) => id)
		expect(laced([])).toContain('heel-lock')
		expect(laced([{ condition, side: 'left', status: 'recovering' }])).not.toContain('heel-lock')
		expect(laced([{ condition, side: 'left', status: 'past' }])).toContain('heel-lock')
	},
)
// legs of two lengths: what is put under the shorter one is never put under both
it('a leg-length difference is not evened out by the same raise in both shoes', () => {
	const found = assess(
		visitWith({
			body: {
				legLengthDifferenceMm: 12,
				shorterLeg: 'right',
				legLengthSymptoms: true,
				legLengthReason: 'back pain',
			},
			footwear: [{ id: 'p', name: 'boots', sole: 'firm-ground', insideLengthMm: 268 }],
		}),
	)
	const work = found.footwear.modifications!.find(({ id }) => id === 'heel-raise')
	// 12 mm x 0.7 = 8.4 (trial PMC6417033: 10 mm corrected to 7 mm), made in whole millimetres
	expect(work?.params).toEqual({
		pairs: [{ pair: 'boots', leftMm: 0, rightMm: 8, leftBy: 'none', rightBy: 'outsole' }],
	})
	expect(work?.stated?.limits.code).toBe('work.leg-length-raise.limits')
})
it('every row of the room names a source or owns the choice', () => {
	for (const [key, row] of Object.entries(footwearRows))
		expect([key, row.source.length > 8]).toEqual([key, true])
})
