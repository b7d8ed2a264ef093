/** What is done about the complaint: rules of a room, else the clinician's own, and nothing held. */
import { describe, expect, it } from 'vitest'
import { readLoad } from '../../renderer/screens/assessment/decide/readLoad.ts'
import { assess } from '../../shared/engine/assess.ts'
import { need } from '../../shared/engine/plain/need.ts'
import { changedTo, withAnswer } from '../../shared/engine/prescription/answers.ts'
import { settledPlan } from '../../shared/engine/prescription/settled.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { decisionsSchema, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { clinic } from '../demo.ts'

const visitWith = (more: object): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'Ines', familyName: 'Ward', birthDate: '2015-05-02', sex: 'female' },
		visitDate: '2027-01-20',
		screening: { nightPain: false, fever: false },
		...more,
	})
const growingHeel = { condition: 'calcaneal-apophysitis', side: 'left', status: 'current' } as const
const busy = {
	code: 'association',
	surfaces: ['natural-firm'],
	organisedHoursPerWeek: 14,
	daysOffPerWeek: 0,
}
const asked = (visit: Visit) => {
	const assessment = assess(visit)
	const question = assessment.prescription.questions.find(({ id }) => id === 'complaint')
	return { assessment, question }
}

describe('the complaint', () => {
	it('is asked about wherever something hurts, with no figure that has no rule', () => {
		const { question, assessment } = asked(visitWith({ conditions: [growingHeel] }))
		expect(need(question, 'complaint').params).toMatchObject({
			conditions: [{ condition: 'calcaneal-apophysitis', side: 'left' }],
			load: {},
		})
		expect(assessment.prescription.load).toEqual({ exercises: [] })
	})
	it('is not asked about where nothing is told and nothing hurts', () => {
		expect(asked(visitWith({})).question).toBeUndefined()
		const past = { ...growingHeel, status: 'past' }
		expect(asked(visitWith({ conditions: [past] })).question).toBeUndefined()
		const free = { ...growingHeel, painWorst: 0 }
		expect(asked(visitWith({ conditions: [free] })).question).toBeUndefined()
	})
	it('names hours and days off by the rules of load', () => {
		const { assessment } = asked(visitWith({ conditions: [growingHeel], play: busy }))
		expect(assessment.prescription.load).toMatchObject({ hoursPerWeek: 11, daysOffPerWeek: 1 })
	})
	it('proposes no load while sport is held', () => {
		const { assessment, question } = asked(
			visitWith({
				conditions: [{ ...growingHeel, painWorst: 9 }],
				play: busy,
				screening: { boneStress: { side: 'left', site: 'navicular', focalTenderness: true } },
			}),
		)
		expect(assessment.prescription.load).toEqual({ exercises: [] })
		expect(need(question, 'complaint').params).toMatchObject({ waits: true, load: {} })
	})
})
describe('what the clinician sets', () => {
	const visit = visitWith({ conditions: [growingHeel], play: busy })
	const { assessment, question } = asked(visit)
	const load = { sessionsPerWeek: 2, weeks: 6, steps: ['Jog on grass first'] }
	const decisions = withAnswer(noDecisions, changedTo(need(question, 'complaint'), { load }))
	it('stands in the plan and on the page of the player, in order', () => {
		expect(decisionsSchema.safeParse(decisions).error?.issues).toBeUndefined()
		expect(settledPlan(assessment, decisions).load?.own).toEqual(load)
		const page = playerReport({
			visit,
			assessment,
			decisions,
			clinic,
			signedAt: undefined,
			draft: true,
		})
		const texts = textsIn([page.blocks], new Set())
		expect(texts).toEqual(
			expect.arrayContaining([
				'How much to play',
				'Play or train 2 sessions a week at most.',
				'Do this for 6 weeks.',
				'Jog on grass first',
			]),
		)
	})
	it('is read as whole numbers within their limits, an empty field as nothing', () => {
		const none = {
			sessionsPerWeek: '',
			minutesPerSession: '',
			daysOffPerWeek: '',
			weeks: '',
			steps: '',
		}
		expect(readLoad(none)).toEqual({ load: {}, wrong: {} })
		expect(readLoad({ ...none, weeks: '6', steps: 'one\n\n two ' })).toEqual({
			load: { weeks: 6, steps: ['one', 'two'] },
			wrong: {},
		})
		expect(readLoad({ ...none, daysOffPerWeek: '8', weeks: 'x' })).toEqual({
			wrong: {
				daysOffPerWeek: "'8' is not allowed; give a whole number from 0 to 7.",
				weeks: "'x' is not allowed; give a whole number from 1 to 52.",
			},
		})
	})
})
