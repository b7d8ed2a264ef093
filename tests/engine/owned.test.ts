/** Verdicts on the pairs a player owns: danger first, and nothing bought where that is held. */
import { describe, expect, it } from 'vitest'
import { ankle } from '../../shared/engine/ankle/ankle.ts'
import { assess } from '../../shared/engine/assess.ts'
import { factsOf } from '../../shared/engine/facts/facts-of.ts'
import { openGate } from '../../shared/engine/facts/held.ts'
import { isTrainer, servesRole } from '../../shared/engine/facts/trainer.ts'
import type { Gate, RaiseInFoot, RaiseResult } from '../../shared/engine/findings/assessment.ts'
import { growth } from '../../shared/engine/growth/growth.ts'
import { posture } from '../../shared/engine/posture/posture.ts'
import {
	type OwnedContext,
	ownedPairs,
	pairsLeftOff,
} from '../../shared/engine/prescription/owned.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { screening } from '../../shared/engine/screening/screening.ts'
import { sizing } from '../../shared/engine/sizing/sizing.ts'
import { type Pair, type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { spokenTo } from '../../shared/engine/words/statement.ts'

const protocol = openProtocol()
const adult = { givenName: 'A', familyName: 'B', birthDate: '2000-01-01', sex: 'male' } as const
const child = { ...adult, birthDate: '2015-03-01' }
const visitOf = (pair: Partial<Pair>, more: Partial<Visit> = {}): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: adult,
		visitDate: '2027-01-20',
		feet: { left: { heelToToeMm: 260 }, right: { heelToToeMm: 258 } },
		footwear: [{ id: 'p', sole: 'firm-ground', insideLengthMm: 267, ...pair }],
		...more,
	})
const knownOf = (visit: Visit) =>
	factsOf(
		visit,
		{ posture: posture(visit, [], protocol), screening: screening(visit, protocol) },
		protocol,
	)
function judged(pair: Partial<Pair>, more: Partial<Visit> = {}, known: Partial<OwnedContext> = {}) {
	const visit = visitOf(pair, more)
	const facts = knownOf(visit)
	const sized = sizing(visit, [], protocol, { facts })
	const { pairs, findings } = ownedPairs(
		visit,
		{
			facts,
			gate: openGate,
			sizing: sized,
			growth: growth(visit, [], protocol, sized.fitLengthMm),
			ankle: ankle(visit, [], protocol),
			...known,
		},
		protocol,
	)
	return { pair: pairs[0]!, pairs, findings }
}
const verdict = (...of: Parameters<typeof judged>) => judged(...of).pair.verdict
const told = (...of: Parameters<typeof judged>) => spokenTo('player', judged(...of).pair)!
const held = (...whats: ('purchase' | 'raise')[]): Gate => ({
	...openGate,
	person: {
		...openGate.person,
		state: 'held',
		holds: whats.map((what) => ({
			what,
			rule: 'foot-at-risk',
			until: 'foot-protection-review',
			since: '2027-01-20',
		})),
	},
})

describe('room, boots of an adult with a foot of 260 mm (band 5 to 10 mm, error 2.6)', () => {
	it.each([
		[252, 'stop-wearing'],
		[260, 'stop-wearing'],
		[260.1, 'replace'],
		[262.3, 'replace'],
		[262.4, 'keep'],
		[267, 'keep'],
		[272.6, 'keep'],
		[272.7, 'modify'],
		[276, 'modify'],
		[276.1, 'replace'],
		[285, 'replace'],
		[285.1, 'stop-wearing'],
	])('%f mm inside: %s', (insideLengthMm, expected) =>
		expect(verdict({ insideLengthMm })).toBe(expected),
	)
	it('a pair short of room is replaced by a day and may be worn until then', () => {
		expect(judged({ insideLengthMm: 261 }).pair.by).toBe('2027-02-03')
		expect(told({ insideLengthMm: 261 })).toContain('You may wear this one until then.')
	})
	it('a boot of a child 56 mm too long is not worn', () =>
		expect(verdict({ insideLengthMm: 328 }, { player: child })).toBe('stop-wearing'))
	it('trainers and everyday shoes have a band of their own', () => {
		expect(verdict({ insideLengthMm: 274, sole: 'road' })).toBe('keep')
		expect(verdict({ insideLengthMm: 266, sole: 'road' })).toBe('replace')
		const school: Partial<Pair> = { insideLengthMm: 274, sole: undefined, roles: ['everyday'] }
		expect([verdict(school), isTrainer(school)]).toEqual(['keep', true])
		expect([
			servesRole({ sole: 'road' }, 'running'),
			servesRole({ sole: 'road' }, 'match'),
		]).toEqual([true, false])
		expect(servesRole({ sole: 'turf', roles: ['training'] }, 'match')).toBe(false)
	})
	it('what is not measured is told as that, and has no verdict on its room', () => {
		const { pair } = judged({ insideLengthMm: undefined })
		expect([pair.verdict, pair.params.said]).toEqual([
			'keep',
			[
				{ code: 'owned.keep-unmeasured', params: {} },
				{ code: 'owned.not-measured', params: { lacks: 'inside-length' } },
			],
		])
	})
	it('the length to fit counts, also where heel to ball gives it: foot 262, ball 204', () => {
		const feet = { left: { heelToToeMm: 262, heelToBallMm: 204 } }
		expect(verdict({ insideLengthMm: 282.8 }, { feet })).toBe('keep')
		expect(verdict({ insideLengthMm: 270 }, { feet })).toBe('replace')
		expect(verdict({ insideLengthMm: 262 }, { feet })).toBe('stop-wearing')
	})
})
describe('a foot that suffers', () => {
	const nails: Visit['conditions'] = [
		{ condition: 'ingrown-toenail', side: 'left', status: 'current' },
	]
	it('sore nails: nothing is excused by error, and clearly short is left off', () => {
		expect(verdict({ insideLengthMm: 268 }, { conditions: nails })).toBe('keep')
		expect(verdict({ insideLengthMm: 266 }, { conditions: nails })).toBe('replace')
		expect(verdict({ insideLengthMm: 265 }, { conditions: nails })).toBe('stop-wearing')
	})
	it('hurt and discomfort', () => {
		expect(verdict({ hurts: true })).toBe('modify')
		expect(verdict({ hurts: true, insideLengthMm: 262 })).toBe('stop-wearing')
		expect([verdict({ comfort: 4 }), verdict({ comfort: 5 })]).toEqual(['modify', 'keep'])
		expect(verdict({ comfort: 4, insideLengthMm: 263 })).toBe('replace')
	})
	it('skin at risk: what rubs is not worn', () => {
		const visit = visitOf({})
		const facts = knownOf(visit)
		const atRisk = {
			...facts,
			right: { ...facts.right, footAtRisk: [{ measure: 'neuropathy', value: 'current' }] },
		}
		for (const pair of [{ hurts: true }, { damage: ['lining-worn' as const] }])
			expect(verdict(pair, {}, { facts: atRisk })).toBe('stop-wearing')
		expect(verdict({}, {}, { facts: atRisk })).toBe('keep')
	})
})
describe('damage, wear and sole', () => {
	it('a sharp stud or a loose sole is mended before the pair is worn', () => {
		const sharp = judged({ damage: ['stud-sharp'] })
		expect([sharp.pair.verdict, sharp.pair.work]).toEqual(['modify', ['smooth-stud']])
		expect(told({ damage: ['stud-sharp'] })).toContain('Do not wear this pair until it is mended.')
		const loose = judged({ damage: ['sole-separated'] })
		expect([loose.pair.verdict, loose.pair.work]).toEqual(['stop-wearing', ['mend-sole']])
		expect(told({ damage: ['sole-separated'] })).toContain(
			'Do not wear this pair until it is mended.',
		)
		expect(pairsLeftOff([...sharp.pairs, ...loose.pairs])).toEqual(['p', 'p'])
		expect(pairsLeftOff(judged({ damage: ['stud-missing'] }).pairs)).toEqual([])
	})
	it('a heel that slips is laced with a lock, never a sore one', () => {
		const slips: Partial<Pair> = { damage: ['heel-slips'] }
		expect(judged(slips).pair).toMatchObject({ verdict: 'modify', work: ['heel-lock'] })
		const sore = { condition: 'haglund-deformity', side: 'left', status: 'current' } as const
		expect(judged(slips, { conditions: [sore] }).pair).toMatchObject({
			verdict: 'modify',
			work: [],
		})
	})
	it('what is to be replaced anyway is not mended to be worn', () =>
		expect(verdict({ damage: ['stud-sharp', 'counter-collapsed'] })).toBe('stop-wearing'))
	it('worn out: replaced by a day', () => {
		expect(judged({ minutesWorn: 120 * 60 }).pair).toMatchObject({
			verdict: 'replace',
			by: '2027-02-17',
		})
		expect(verdict({ minutesWorn: 119 * 60 })).toBe('keep')
	})
	it('new boots train first; shoes for every day are as they are', () => {
		expect(verdict({ brokenIn: false })).toBe('training-only')
		expect(verdict({ brokenIn: false, sole: 'road', insideLengthMm: 274 })).toBe('keep')
	})
	it('a sole allowed on no ground that is played on', () => {
		const play = (...surfaces: NonNullable<NonNullable<Visit['play']>['surfaces']>) => ({
			play: { surfaces },
		})
		expect(verdict({ sole: 'soft-ground' }, play('artificial-3g', 'hall'))).toBe('replace')
		expect(verdict({ sole: 'soft-ground' }, play('artificial-3g', 'natural-soft'))).toBe('keep')
		expect(verdict({ sole: 'road', insideLengthMm: 274 }, play('artificial-3g'))).toBe('keep')
	})
})
describe('what is held, and raises worn inside', () => {
	it('nothing is bought, and what is not to be worn stands', () => {
		const gate = held('purchase')
		const { pair } = judged({ insideLengthMm: 261 }, {}, { gate })
		expect([pair.verdict, pair.by]).toEqual(['replace', undefined])
		const words = told({ insideLengthMm: 261 }, {}, { gate })
		expect(words).not.toMatch(/\bbuy|need another pair/i)
		expect(words).toContain('Wait with a new one')
		expect(verdict({ insideLengthMm: 250 }, {}, { gate })).toBe('stop-wearing')
		expect(verdict({ damage: ['stud-sharp'] }, {}, { gate })).toBe('modify')
	})
	const foot = { addMm: 0, madeBy: 'none', addedUnderHeelMm: 0 } as const
	/** What the raise room says of the pair: what is added, and what becomes of what is worn. */
	const raised = (left: RaiseInFoot, verdict: 'leave' | 'take-out'): RaiseResult => ({
		aim: { kind: 'none', because: [] },
		pairs: [
			{
				pair: 'p',
				offsetFrom: 'unknown',
				left,
				right: left,
				limits: [],
				worn: { raiseMm: 6, insert: false, verdict },
			},
		],
		steps: [],
		findings: [],
		workings: [],
	})
	const supple: Partial<Visit> = {
		ankles: { left: { lungeCm: 12, lungeDeg: 44 }, right: { lungeCm: 12, lungeDeg: 44 } },
	}
	it('a raise that nothing calls for is taken out', () => {
		const { pair, findings } = judged({ heelLiftMm: 6 }, supple, {
			raise: raised(foot, 'take-out'),
		})
		expect([pair.verdict, pair.work]).toEqual(['modify', ['take-out-raise']])
		expect(findings.map(({ id, topic }) => [id, topic])).toEqual([
			['footwear.raise-inside-p-1', 'footwear'],
		])
		expect(pair.because).toContain('footwear.raise-inside-p-1')
	})
	it('it stays where it is wanted, not known, or held', () => {
		expect(verdict({ heelLiftMm: 6 }, {}, { raise: raised(foot, 'leave') })).toBe('keep')
		expect(verdict({ heelLiftMm: 6 }, supple)).toBe('keep')
		const wanted = { ...foot, addMm: 4, madeBy: 'wedge' } as const
		expect(verdict({ heelLiftMm: 6 }, supple, { raise: raised(wanted, 'leave') })).toBe('keep')
		const raise = raised(foot, 'take-out')
		expect(verdict({ heelLiftMm: 6 }, {}, { raise })).toBe('modify')
		const waiting = judged({ heelLiftMm: 6 }, supple, { raise, gate: held('raise') })
		expect([waiting.pair.verdict, waiting.findings]).toEqual(['keep', []])
	})
})
describe('outside callers are told the same', () => {
	it.each([
		[{ insideLengthMm: 267 }, 'keep'],
		[{ brokenIn: false }, 'keep'],
		[{ damage: ['stud-sharp'] }, 'change'],
		[{ insideLengthMm: 261 }, 'replace'],
		[{ insideLengthMm: 250 }, 'replace'],
		[{ insideLengthMm: undefined }, 'unknown'],
	] as const)('%o: %s', (pair, expected) => {
		const assessed = assess(visitOf(pair as Partial<Pair>))
		expect(assessed.footwear.current[0]?.verdict).toBe(expected)
		const finding = assessed.findings.find(({ id }) => id === 'footwear.pair-p-1')
		expect(finding?.level).toBe(
			{ keep: undefined, unknown: undefined, change: 'caution', replace: 'advise' }[expected] &&
				(pairsLeftOff(judged(pair as Partial<Pair>).pairs).length > 0 ? 'caution' : 'advise'),
		)
	})
	it('the young: a pair within error of the band is kept, with the day it will be outgrown', () => {
		const more = { player: child }
		expect(judged({ insideLengthMm: 266 }, more).pair.params.said).toEqual([
			{ code: 'owned.keep', params: {} },
			{ code: 'owned.room-near', params: { toeRoomMm: 6, leastMm: 8, mostMm: 12 } },
			{
				code: 'pairs.outgrown-by',
				params: { leastMm: 5, on: '2027-03-03', earliest: '2027-02-17' },
			},
		])
		const short = judged({ insideLengthMm: 265.3 }, more).pair
		expect([short.verdict, short.by]).toEqual(['replace', '2027-01-28'])
	})
})
