/** Where rooms meet: what one of them proposes holds for the others, on every page. */
import { describe, expect, it } from 'vitest'
import { settledAsProposed } from '../../electron/command/demo/visits.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { read } from '../demo.ts'
import { swapVisit } from './mirror.ts'
import { toldLines } from './picture-lines.ts'

const foot = (heelToToeMm: number) => ({
	heelToToeMm,
	heelToBallMm: Math.round(heelToToeMm * 0.72),
	ballWidthMm: Math.round(heelToToeMm * 0.38),
	heelWidthMm: 60,
})
const asked = {
	nightPain: false,
	fever: false,
	reducedSensation: false,
	lumpOrSwelling: false,
	activeFootUlcer: false,
}
interface More {
	born?: string
	screening?: object
	[part: string]: unknown
}
/** An adult of 27 who was asked everything, or a player of another birth date. */
function visitOf({ born = '1999-03-11', screening = {}, ...more }: More = {}): Visit {
	return read({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate: born, sex: 'male' },
		visitDate: '2027-01-20',
		play: { code: 'association', surfaces: ['natural-firm'] },
		feet: { stance: 'standing', left: foot(255), right: foot(255) },
		screening: { ...asked, ...screening },
		...more,
	})
}
const has = (condition: string, side: string, status = 'current', painWorst?: number) => ({
	condition,
	side,
	status,
	...(painWorst === undefined ? {} : { painWorst }),
})
const planOf = (more: More) => assess(visitOf(more)).prescription
const told = (more: More): string => {
	const visit = visitOf(more)
	const assessment = assess(visit)
	return toldLines(visit, assessment, settledAsProposed(assessment)).join('\n')
}
const both = (of: object) => ({ left: of, right: of })
const codes = ({ priorities }: ReturnType<typeof planOf>) => priorities.map(({ code }) => code)

describe('a leg-length correction and painful heels in one boot', () => {
	const more: More = {
		body: { massKg: 70, legLengthDifferenceMm: 8, shorterLeg: 'left', legLengthSymptoms: true },
		conditions: [has('achilles-midportion', 'right', 'current', 5)],
	}
	it('the correction goes on the outsole where the heels would be left without', () => {
		const boot = planOf(more).raise.pairs.find(({ pair }) => pair === 'role.match')!
		expect([boot.left.addMm, boot.right.addMm]).toEqual([11, 6])
		expect([boot.left.madeBy, boot.right.madeBy]).toEqual(['outsole', 'wedge'])
		expect([boot.left.addedUnderHeelMm, boot.right.addedUnderHeelMm]).toEqual([6, 6])
	})
	it('and stays inside where both have room', () => {
		const shoe = planOf(more).raise.pairs.find(({ pair }) => pair === 'role.everyday')!
		expect(shoe.left.madeBy).toBe('wedge')
		expect(shoe.right.addMm).toBeGreaterThan(0)
	})
	it('left and right are alike', () => {
		const swapped = assess(swapVisit(visitOf(more))).prescription.raise.pairs
		expect(swapped.map(({ left, right }) => [right, left])).toEqual(
			planOf(more).raise.pairs.map(({ left, right }) => [left, right]),
		)
	})
})
describe('the steps of a raise', () => {
	const { raise } = planOf({ conditions: [has('achilles-midportion', 'right', 'current', 5)] })
	const inPair = (id: string) => raise.pairs.find(({ pair }) => pair === id)!
	it.each([
		['everyday', 'role.everyday'],
		['training', 'role.training'],
		['match', 'role.match'],
	])('%s: the height of its own pairs', (when, pair) => {
		const { addMm } = raise.steps.find((step) => step.when === when)!
		expect(addMm).toEqual({ left: inPair(pair).left.addMm, right: inPair(pair).right.addMm })
	})
	it('everyday shoes that get none are no step', () => {
		const plan = planOf({
			conditions: [
				has('achilles-midportion', 'right', 'current', 5),
				has('first-mtp-osteoarthritis', 'left', 'current', 4),
			],
		})
		const [first] = plan.raise.steps
		expect(first).toMatchObject({ when: 'training', from: 'P0D', params: { first: true } })
	})
})
describe('what lifts one heel alone', () => {
	const flat = {
		body: { massKg: 70 },
		posture: both({ fpi6: [2, 2, 2, 2, 1, 1] }),
		conditions: [has('posterior-tibial-tendinopathy', 'left', 'current', 5)],
	}
	it('a shell under one foot is said, and the other heel is laid level', () => {
		const { findings, prescription } = assess(visitOf(flat))
		const [said, ...more] = findings.filter(({ code }) => code === 'insert.one-sided')
		expect(said).toMatchObject({ side: 'left', params: { mm: 4.5, other: 'right', waits: false } })
		expect(more).toEqual([])
		for (const { left, right } of prescription.raise.pairs)
			expect(right.addedUnderHeelMm).toBe(left.addedUnderHeelMm)
	})
	it('inserts in both shoes are level by themselves', () => {
		const conditions = [has('posterior-tibial-tendinopathy', 'both', 'current', 5)]
		const { findings } = assess(visitOf({ ...flat, conditions }))
		expect(findings.filter(({ code }) => code === 'insert.one-sided')).toEqual([])
	})
	it.each(['left', 'right', 'both'])('a growing heel, %s: both shoes or neither', (side) => {
		const more: More = {
			born: '2016-06-21',
			conditions: [has('calcaneal-apophysitis', side, 'current', 5)],
		}
		const open = planOf(more).insert
		expect(open.left.elements).toEqual(open.right.elements)
		const limp = { side: 'right', days: 10, examinedBefore: false, hipThighKneePain: true }
		const { left, right } = planOf({ ...more, screening: { limp } }).insert
		expect(right.state).toBe('held')
		expect(left.elements).toEqual([])
	})
})
describe('done once', () => {
	it('a plate of the insert is not laid under the liner as well', () => {
		const plan = planOf({
			posture: { left: { firstMtpDegNonWeightBearing: 35, jackTestDeg: 8 } },
			conditions: [has('first-mtp-osteoarthritis', 'left', 'current', 6)],
		})
		expect(plan.insert.left.elements).toContain('forefoot-stiffener')
		expect(plan.changes.filter((id) => id.startsWith('forefoot-plate'))).toEqual([])
	})
	it('a boot is laced in one way', () => {
		const wide = { ...foot(250), ballWidthMm: 106 }
		const conditions = [has('interdigital-neuroma', 'left', 'current', 4)]
		const ways = (feet: object) =>
			planOf({ feet: { stance: 'standing', ...both(feet) }, conditions }).lacing
		expect(ways({ ...wide, heelWidthMm: 55 })).toEqual(['two-zone.both'])
		expect(ways({ ...wide, heelWidthMm: 75 })).toEqual(['parallel.both'])
	})
	it('outer studs stay in where the ankle gives way', () => {
		const healed = has('bunionette', 'right', 'current', 3)
		const page = (conditions: object[]) => told({ conditions })
		expect(page([healed])).toContain('Have it taken out or lowered')
		const unsteady = page([healed, has('lateral-ankle-instability', 'right', 'current', 3)])
		expect(unsteady).toContain('leave the outer studs in')
		expect(unsteady).not.toMatch(/outer edge of your foot\? Have it taken out/)
	})
	it('a pair that is given up is not outgrown as well', () => {
		const boot = (insideLengthMm: number) =>
			assess(
				visitOf({
					born: '2016-05-02',
					feet: { stance: 'standing', left: foot(232), right: foot(232) },
					footwear: [{ id: 'b', sole: 'firm-ground', insideLengthMm }],
				}),
			).prescription.owned[0]!
		const parts = (owned: ReturnType<typeof boot>) => JSON.stringify(owned.params)
		expect(boot(242).verdict).toBe('keep')
		expect(parts(boot(242))).toContain('pairs.outgrown-by')
		expect(boot(262).verdict).toBe('stop-wearing')
		expect(parts(boot(262))).not.toContain('pairs.outgrown-by')
	})
})
describe('held without a referral', () => {
	const healing: More = {
		conditions: [has('second-metatarsal-stress-fracture', 'right', 'recovering')],
	}
	it.each([
		['a bone that heals', healing, 'treating-doctor'],
		['severe pain', { conditions: [has('calf-strain', 'left', 'current', 8)] }, 'outcome'],
	])('%s: first who allows it, and a day to look again', (_, more: More, until) => {
		const plan = planOf(more)
		const clear = plan.priorities.find(({ code }) => code === 'priority.clear')
		expect(clear?.params).toEqual({ what: ['match', 'impact'], until })
		expect(codes(plan)).not.toContain('priority.buy')
		expect(plan.review?.date).toBe('2027-02-03')
	})
	it('the player reads of matches and of running, the doctor why', () => {
		const pages = told(healing)
		expect(pages).toContain('Play no match until a doctor says you may.')
		expect(pages).toContain('Do not run or jump until a doctor says you may.')
		expect(pages).not.toContain('We found a sign that a doctor has to look at.')
		expect(pages).toContain('please say when matches, running and jumping are allowed')
		expect(pages).not.toContain('No warning sign was recorded')
	})
	it('no step of a raise leads into a match', () => {
		const page = told({
			conditions: [
				has('fifth-metatarsal-stress-fracture', 'right', 'recovering'),
				has('achilles-insertional', 'left', 'current', 3),
			],
		})
		expect(page).toContain('Everyday shoes first')
		expect(page).not.toContain('In a match once')
		expect(page).not.toContain('for a part of training')
	})
})
describe('a foot measured while freshly injured', () => {
	const allNo = {
		malleolarZonePain: false,
		midfootZonePain: false,
		tenderLateralMalleolus: false,
		tenderMedialMalleolus: false,
		tenderNavicular: false,
		tenderFifthMetatarsalBase: false,
		unableToBearWeightThen: false,
		unableToBearWeightNow: false,
	}
	const injured = (answers: object): More => ({
		ankles: { left: { lungeDeg: 42 }, right: { lungeDeg: 25, endFeel: 'calf-stretch' } },
		screening: { injury: { side: 'right', daysAgo: 1, ...allNo, ...answers } },
	})
	const { midfootZonePain: _, ...oneZone } = allNo
	it.each([
		['sprained, the rules not met', injured({ malleolarZonePain: true })],
		[
			'one zone not asked',
			{
				...injured({}),
				screening: { injury: { side: 'right', daysAgo: 1, ...oneZone } },
			},
		],
	])('%s: nothing is bought by it, and no ankle treated', (_, more: More) => {
		const plan = planOf(more)
		expect(plan.gate.person.holds.map(({ what }) => what)).toEqual(['purchase', 'shelf'])
		expect(plan.pairs).toEqual([])
		expect(codes(plan)).not.toContain('priority.buy')
		expect(plan.raise.aim.kind).toBe('none')
		expect(told(more)).not.toContain('What to buy')
	})
	it('the next visit, unhurt, measures anew and may buy', () => {
		const first = visitOf(injured({ malleolarZonePain: true }))
		const next = { ...visitOf(), visitDate: '2027-02-10' }
		expect(assess(next, [first]).prescription.gate.person.holds).toEqual([])
	})
	it('a negative rule is looked at again within the week that the player is told', () => {
		expect(planOf(injured({ malleolarZonePain: true })).review?.date).toBe('2027-01-27')
	})
	it.each([
		['hallux-valgus', false],
		['calf-strain', false],
		['turf-toe', true],
		['syndesmosis-sprain', true],
	])('%s that hurts badly swells the foot: %s', (condition, isSwollen) => {
		const { findings, prescription } = assess(
			visitOf({ conditions: [has(condition, 'left', 'current', 8)] }),
		)
		const told = findings.map(({ code }) => code).includes('sizing.not-for-buying')
		expect(told).toBe(isSwollen)
		expect(prescription.pairs.some(({ means }) => means === 'buy')).toBe(!isSwollen)
	})
})
it('possible bone stress is looked at again when the player was told', () => {
	const boneStress = {
		side: 'right',
		site: 'metatarsal-shaft',
		focalTenderness: true,
		loadPain: true,
	}
	expect(planOf({ screening: { boneStress } }).review?.date).toBe('2027-02-03')
})
it('nobody waits for boots until the feet are measured again in half a year', () => {
	const plan = planOf({ born: '2009-06-01' })
	const buy = plan.priorities.find(({ code }) => code === 'priority.buy')
	expect(plan.review?.date).toBe('2027-07-20')
	expect(buy?.when).toBe('2027-03-03')
})
it('a healthy girl of 13 has nothing to decide about methods, and five questions at the most', () => {
	const visit = visitOf({
		born: '2013-09-01',
		body: {
			statureCm: 158,
			sittingHeightCm: 82,
			massKg: 46,
			motherStatureCm: 166,
			fatherStatureCm: 179,
		},
		feet: { stance: 'standing', left: foot(240), right: foot(240) },
		play: { code: 'association', position: 'winger', surfaces: ['natural-firm', 'artificial-3g'] },
	})
	const girl: Visit = { ...visit, player: { ...visit.player, sex: 'female' } }
	const { findings, prescription } = assess(girl)
	expect(findings.filter(({ level }) => level === 'caution' || level === 'stop')).toEqual([])
	expect(prescription.questions.map(({ id }) => id)).toHaveLength(5)
})
