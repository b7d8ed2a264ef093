/** What a page tells its reader of dangers, private reasons, medicines, and once each. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { Prescription, RolePair } from '../../shared/engine/findings/assessment.ts'
import { guardianSummary } from '../../shared/engine/report/guardian.ts'
import type { ReportInput } from '../../shared/engine/report/inputs.ts'
import { workKey } from '../../shared/engine/report/marked.ts'
import { pageOne } from '../../shared/engine/report/page-one.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { referralLetter } from '../../shared/engine/report/referral.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Screening, Visit } from '../../shared/engine/visit/visit.ts'
import { documentSentences, speakFrom } from '../../shared/engine/words/speak.ts'
import { spokenTo, state } from '../../shared/engine/words/statement.ts'
import { featureInWords } from '../../shared/engine/words/words.ts'
import { clinic, json, read } from '../demo.ts'
import { demoNames } from './demo-report.ts'

const t = speakFrom()
const [minor, adult] = demoNames.map((name) => read(json(name))) as [Visit, Visit]
const inputOf = (visit: Visit) => ({
	visit,
	assessment: assess(visit),
	decisions: noDecisions,
	clinic,
	signedAt: undefined,
	draft: true,
})
const screened = (visit: Visit, screening: Screening): ReportInput =>
	inputOf({ ...visit, screening: { ...visit.screening, ...screening } })
const pageOf = (input: ReportInput): string => textsIn(playerReport(input).blocks).join('\n')
/** The head of a page, what stands in it, and why. */
function headOf(input: ReportInput): { title: string; text: string; why: string } {
	const [alert, ...rest] = pageOne(input).blocks
	if (alert?.kind !== 'alert') throw new Error('no alert')
	const rows = rest.flatMap((block) => (block.kind === 'facts' ? block.rows : []))
	const why = rows.find(({ label }) => label === t('common.why'))?.text ?? ''
	return { title: alert.title, text: alert.text, why }
}
const told = (code: 'screening.anticoagulant-head' | 'screening.cardiacOrConcussion'): string =>
	spokenTo('player', state(code), ['medication'])!

describe('the head of page one', () => {
	const head: Screening = { anticoagulant: true, cardiacOrConcussion: true }
	it('of danger stops sport, and its most urgent reason stands first', () => {
		const input = screened(adult, head)
		expect(input.assessment.screening.action).toBe('emergency')
		const { title, text, why } = headOf(input)
		expect(title).toBe(t('pageOne.stop', { sport: t('pageOne.sport.football') }))
		const places = (['screening.anticoagulant-head', 'screening.cardiacOrConcussion'] as const).map(
			(code) => why.indexOf(told(code)),
		)
		expect(places[0]).toBeGreaterThanOrEqual(0)
		expect(places[1]).toBeGreaterThan(places[0]!)
		expect(text).not.toContain(documentSentences['player.signFound'])
	})
	it('of a child keeps its urgency and gives no private reason away', () => {
		const { title, text, why } = headOf(screened(minor, head))
		expect(title).toBe(t('pageOne.stop', { sport: t('pageOne.sport.football') }))
		expect(text).toContain(documentSentences['player.signFound'])
		expect(why).toContain(told('screening.cardiacOrConcussion'))
		expect(why).not.toContain(told('screening.anticoagulant-head'))
	})
})
/** The same visit with other parts of its plan. */
const planned = (input: ReturnType<typeof inputOf>, more: Partial<Prescription>): ReportInput => {
	const { assessment } = input
	const prescription = { ...assessment.prescription, ...more }
	return { ...input, assessment: { ...assessment, prescription } }
}
const pairFor = (more: Partial<RolePair>): RolePair => ({
	id: 'match',
	role: 'match',
	surfaces: [],
	seek: [],
	avoid: [],
	settled: [],
	shelf: [],
	means: 'buy',
	...more,
})
describe('a wish with private reasons only', () => {
	it('is printed as a feature, without its reason', () => {
		const input = inputOf(minor)
		const finding = {
			...input.assessment.findings[0]!,
			id: 'zq-heavy',
			...state('footwear.heavy'),
		}
		const questions = input.assessment.prescription.questions.map((question) =>
			question.id === 'pair.match'
				? { ...question, because: [...question.because, finding.id] }
				: question,
		)
		const page = pageOf(
			planned(
				{ ...input, assessment: { ...input.assessment, findings: [finding] } },
				{ questions, pairs: [pairFor({ seek: ['wide-base'] })] },
			),
		)
		expect(page.toLowerCase()).toContain(featureInWords('wide-base'))
		expect(page).not.toContain(spokenTo('player', state('footwear.heavy'), ['weight'])!)
	})
})
describe('what is said twice', () => {
	const footwear = inputOf(adult).assessment.footwear
	const [work] = footwear.modifications!.filter(({ id }) => id !== 'heel-raise')
	it('is the reason of a pair once, under its table', () => {
		const page = pageOf(inputOf(adult))
		const told = inputOf(adult).assessment.findings.flatMap(
			(finding) => spokenTo('player', finding, []) ?? [],
		)
		for (const says of told.filter((one) => page.includes(one)))
			expect(page.split(says), says).toHaveLength(2)
	})
	it('is a change with where it ends, and a heel raise at its one height', () => {
		const raised = { addMm: 3, madeBy: 'wedge', addedUnderHeelMm: 3 } as const
		const page = pageOf(
			planned(inputOf(adult), {
				changes: [workKey(work!), 'heel-raise.both'],
				raise: {
					aim: { kind: 'range', because: [] },
					pairs: [
						{ pair: 'role.match', offsetFrom: 'unknown', left: raised, right: raised, limits: [] },
					],
					steps: [],
				},
			}),
		)
		expect(page).toContain(spokenTo('player', work!.stated!.limits))
		expect(page).toContain(
			t('raise.inPairs', { pairs: t('role.match'), raise: t('player.raiseBoth', { mm: 3 }) }),
		)
		expect(page).not.toContain(spokenTo('player', state('work.heel-raise', { raiseMm: 3 }))!)
	})
})
describe('the letter', () => {
	const letterOf = (screening: Screening, handedTo?: 'player') =>
		textsIn(
			referralLetter({
				...screened(minor, screening),
				...(handedTo ? { letter: { handedTo } } : {}),
			}).blocks,
		).join('\n')
	const [asked] = documentSentences['referral.medicinesAsked'].split('{') as [string]
	it('tells what was answered about medicines, or that nothing was asked', () => {
		expect(letterOf({ anticoagulant: false })).toContain(asked)
		expect(letterOf({})).not.toContain(asked)
		expect(letterOf({})).toContain(documentSentences['referral.medicinesNotAsked'])
	})
	it('leaves them out, whatever they are, in the hands of a child', () => {
		const letters = [true, false].map((anticoagulant) => letterOf({ anticoagulant }, 'player'))
		for (const letter of letters)
			expect(letter).toContain(documentSentences['referral.medicinesKept'])
		expect(letterOf({}, 'player')).toContain(documentSentences['referral.medicinesKept'])
	})
})
describe('new boots of a foot at risk', () => {
	const asked = documentSentences['pageOne.shop']
	const stopped = documentSentences['player.stopWearing']
	const withPlan = (visit: Visit, more: Partial<Visit>): ReportInput => {
		const input = inputOf({ ...visit, ...more })
		const pair = { id: 'p1', because: [], work: [], ...state('owned.pair', { said: [] }) }
		return planned(input, {
			pairs: [pairFor({ seek: ['wide-base'], shelf: ['zq-model'] })],
			owned: [{ ...pair, verdict: 'replace' }],
		})
	}
	const guardianPageOf = (input: ReportInput) => textsIn(guardianSummary(input).blocks).join('\n')
	const well = { conditions: [], screening: {} }
	it('are spoken of where nothing speaks against them', () => {
		const page = pageOf(withPlan(adult, well))
		expect(page).toContain(asked)
		expect(page).toContain(documentSentences['player.size'])
		expect(page).not.toContain(stopped)
		expect(page).not.toContain(documentSentences['player.untilReview'])
	})
	it.each<[string, Partial<Visit>]>([
		['reducedSensation', { conditions: [], screening: { reducedSensation: true } }],
		[
			'condition-neuropathy',
			{
				conditions: [{ condition: 'neuropathy', side: 'both', status: 'current' }],
				screening: {},
			},
		],
		[
			'condition-previous-foot-ulcer',
			{
				conditions: [{ condition: 'previous-foot-ulcer', side: 'left', status: 'past' }],
				screening: {},
			},
		],
	])('wait for the review that %s asks for', (sign, more) => {
		const input = withPlan(adult, more)
		expect(input.assessment.screening.items.map(({ code }) => code)).toContain(`screening.${sign}`)
		const page = pageOf(input)
		expect(page).not.toContain(asked)
		expect(page).not.toContain(documentSentences['player.size'])
		// what never waits: what to wear, the care of the skin, and what is not to be worn
		expect(page).toContain(documentSentences['player.untilReview'])
		expect(page).toContain(documentSentences['player.skinLook'])
		expect(page).toContain(stopped)
		const ofMinor = guardianPageOf(withPlan(minor, more))
		expect(ofMinor).not.toContain(t('guardian.wearBoots'))
		expect(ofMinor).not.toContain(documentSentences['guardian.buy'])
		expect(ofMinor).toContain(documentSentences['guardian.untilReview'])
		expect(ofMinor).toContain(stopped)
	})
	it('are worn in, as a guardian is told, where nothing speaks against them', () => {
		const page = guardianPageOf(withPlan(minor, well))
		expect(page).toContain(t('guardian.wearBoots'))
		expect(page).toContain(documentSentences['guardian.buy'])
	})
})
