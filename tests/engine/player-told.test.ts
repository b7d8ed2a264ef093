/** What a page tells its reader of dangers, private reasons, medicines and marked changes. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { guardianSummary } from '../../shared/engine/report/guardian.ts'
import type { ReportInput } from '../../shared/engine/report/inputs.ts'
import { alertFor } from '../../shared/engine/report/player/actions.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { readerOf } from '../../shared/engine/report/reader.ts'
import { referralLetter } from '../../shared/engine/report/referral.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Screening, Visit } from '../../shared/engine/visit/visit.ts'
import { documentSentences, speakFrom } from '../../shared/engine/words/speak.ts'
import { spokenTo, state } from '../../shared/engine/words/statement.ts'
import { featureInWords, plainActionWords } from '../../shared/engine/words/words.ts'
import { clinic, json, read } from '../demo.ts'
import { demoNames } from './demo-report.ts'

const t = speakFrom()
const [minor, adult] = demoNames.map((name) => read(json(name))) as [Visit, Visit]
const inputOf = (visit: Visit, decisions: Decisions = noDecisions): ReportInput => ({
	visit,
	assessment: assess(visit),
	decisions,
	clinic,
	signedAt: undefined,
	draft: true,
})
const screened = (visit: Visit, screening: Screening): ReportInput =>
	inputOf({ ...visit, screening: { ...visit.screening, ...screening } })
const pageOf = (input: ReportInput): string => textsIn(playerReport(input).blocks).join('\n')
function alertOf(input: ReportInput): { title: string; text: string } {
	const [alert] = alertFor(readerOf('player', input), input, t)
	if (alert?.kind !== 'alert') throw new Error('no alert')
	return alert
}
const told = (code: 'screening.anticoagulant-head' | 'screening.cardiacOrConcussion'): string =>
	spokenTo('player', state(code), ['medication'])!

describe('the alert of a player', () => {
	const head: Screening = { anticoagulant: true, cardiacOrConcussion: true }
	it('is headed by the most urgent action, and its reason stands first', () => {
		const input = screened(adult, head)
		expect(input.assessment.screening.action).toBe('emergency')
		const { title, text } = alertOf(input)
		expect(title).toBe(t('player.first', { action: plainActionWords.emergency }))
		const places = (['screening.anticoagulant-head', 'screening.cardiacOrConcussion'] as const).map(
			(code) => text.indexOf(told(code)),
		)
		expect(places[0]).toBeGreaterThanOrEqual(0)
		expect(places[1]).toBeGreaterThan(places[0]!)
		expect(text).not.toContain(documentSentences['player.signFound'])
	})
	it('of a child keeps its urgency and gives no private reason away', () => {
		const { title, text } = alertOf(screened(minor, head))
		expect(title).toBe(t('player.first', { action: plainActionWords.emergency }))
		expect(text).toContain(documentSentences['player.signFound'])
		expect(text).toContain(told('screening.cardiacOrConcussion'))
		expect(text).not.toContain(told('screening.anticoagulant-head'))
	})
})
describe('a wish with private reasons only', () => {
	it('is printed as a feature, without its reason', () => {
		const input = inputOf(minor)
		const feature = 'wide-base'
		const wish = {
			...input.assessment.footwear.target.seek[0]!,
			feature,
			...state('footwear.heavy'),
		} as const
		const { footwear } = input.assessment
		const target = { ...footwear.target, seek: [wish] }
		const page = pageOf({
			...input,
			assessment: { ...input.assessment, footwear: { ...footwear, target } },
		})
		expect(page.toLowerCase()).toContain(featureInWords(feature))
		expect(page).not.toContain(spokenTo('player', state('footwear.heavy'), ['weight'])!)
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
describe('a marked change', () => {
	const marked = (id: string): Decisions['lines'][number] => ({
		findingId: `work.${id}`,
		choice: 'accept',
		says: 'zq as it was marked',
	})
	it('that is not asked for any more is called by its name, never as it was marked', () => {
		const lines = [marked('forefoot-plate.left'), marked('unheard-of.both')]
		const page = pageOf(inputOf(adult, { ...noDecisions, lines }))
		expect(page).not.toContain('zq')
		expect(page).toContain(spokenTo('player', state('work.forefoot-plate.name'))!)
		expect(page).toContain(documentSentences['player.workAsk'])
	})
	it('tells where it ends; a heel raise is told once, at the height that was decided', () => {
		const lines = [marked('heel-raise.both'), marked('stud-first.both')]
		const decisions = { ...noDecisions, lines }
		const raise = spokenTo('player', state('work.heel-raise', { raiseMm: 4 }))!
		const open = pageOf(inputOf(adult, decisions))
		expect(open).toContain(raise)
		expect(open).toContain(spokenTo('player', state('work.stud-first.limits'))!)
		expect(open).not.toContain(t('player.raiseSuggested', { raise: '4 mm in both shoes' }))
		const decided = pageOf(inputOf(adult, { ...decisions, heelRaiseMm: { left: 3, right: 3 } }))
		expect(decided).not.toContain(raise)
		expect(decided).toContain(t('player.raiseDecided', { raise: '3 mm in both shoes' }))
	})
})
describe('new boots of a foot at risk', () => {
	const asked = documentSentences['player.nextPair']
	const withFoot = (more: Partial<Visit>): ReportInput => inputOf({ ...adult, ...more })
	const well = withFoot({ conditions: [], screening: {} })
	const guardianPageOf = (input: ReportInput) => textsIn(guardianSummary(input).blocks).join('\n')
	const raised: Decisions = { ...noDecisions, heelRaiseMm: { left: 3, right: 3 } }
	it('are spoken of where nothing speaks against them', () => {
		expect(pageOf(well)).toContain(asked)
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
		const input = withFoot(more)
		const { screening, sizing } = input.assessment
		expect(screening.items.map(({ code }) => code)).toContain(`screening.${sign}`)
		const page = pageOf(input)
		expect(page).not.toContain(asked)
		const { min, max } = sizing.insideLengthMm!
		expect(page).not.toContain(t('player.chooseInside', { min: `${min}`, max: `${max}` }))
		const ofMinor = inputOf({ ...minor, ...more })
		expect(guardianPageOf(ofMinor)).not.toContain(t('guardian.wearBoots'))
		expect(guardianPageOf({ ...ofMinor, decisions: raised })).toContain(
			t('guardian.raise', { raise: '3 mm in both shoes' }),
		)
	})
	it('are worn in, as a guardian is told, where nothing speaks against them', () => {
		const page = guardianPageOf(inputOf({ ...minor, conditions: [], screening: {} }))
		expect(page).toContain(t('guardian.wearBoots'))
	})
})
