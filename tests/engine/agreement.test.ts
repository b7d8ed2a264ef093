/** What was explained and agreed to: its form, what a signature needs of it, and how it is read. */
import { describe, expect, it } from 'vitest'
import { settledAsProposed } from '../../electron/command/demo/visits.ts'
import { differences } from '../../shared/desk/records/amendment.ts'
import { printedChanges, toldDifferences } from '../../shared/desk/records/told.ts'
import { assess } from '../../shared/engine/assess.ts'
import { agreementBlocks } from '../../shared/engine/report/agreement-blocks.ts'
import { type KindInput, kinds, unnamedClinic } from '../../shared/engine/report/kinds.ts'
import {
	type Agreement,
	agreementSchema,
	interpreterRelations,
	isConsentNoted,
	mayNeverInterpret,
	usualAgreement,
} from '../../shared/engine/visit/agreement.ts'
import { decisionsSchema, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { agreementInWords } from '../../shared/engine/words/en/agreement.ts'
import { agreed } from '../agreed.ts'
import { visitWith } from '../published/known-insert.ts'

const codesOf = (agreement: Agreement | undefined, minor = false, urgent = false) =>
	agreementBlocks(agreement, { minor, urgent, player: {} }).map(({ path, code }) => [
		path.replace('decisions.agreement.', ''),
		code.replace('signing.', ''),
	])
const usualOfAdult = usualAgreement({}, false)!
const usualOfMinor = agreed.agreement

describe('the form of an agreement', () => {
	it('is bounded, and knows no other key', () => {
		expect(agreementSchema.safeParse({}).success).toBe(true)
		expect(agreementSchema.safeParse({ consent: true }).success).toBe(false)
		expect(agreementSchema.safeParse({ notAgreed: 'x'.repeat(501) }).success).toBe(false)
		expect(agreementSchema.safeParse({ notAgreed: '  ' }).success).toBe(false)
		expect(agreementSchema.safeParse({ answer: 'perhaps' }).success).toBe(false)
	})
	it('stands beside the tick of older records, and either notes consent', () => {
		const older = decisionsSchema.parse({ ...noDecisions, consentNoted: true })
		expect(isConsentNoted(older)).toBe(true)
		expect(isConsentNoted(decisionsSchema.parse({ ...noDecisions, ...agreed }))).toBe(true)
		const toldOnly = { ...noDecisions, agreement: { explainedTo: { player: true } } }
		expect(isConsentNoted(decisionsSchema.parse(toldOnly))).toBe(false)
	})
})

describe('a signature', () => {
	it('needs to whom, what, which answer and whose', () => {
		const all = [
			['explainedTo', 'told-nobody'],
			['explained', 'told-nothing'],
			['answer', 'no-answer'],
			['by', 'answer-by-nobody'],
		]
		expect(codesOf(undefined)).toEqual(all)
		expect(codesOf({ explainedTo: { player: false }, explained: { plan: false } })).toEqual(all)
	})
	it('has enough in the usual answers: of an adult alone, of a minor with the guardian', () => {
		expect(codesOf(usualOfAdult)).toEqual([])
		expect(codesOf(usualOfMinor, true)).toEqual([])
		expect(usualAgreement({}, true)).toBeUndefined()
		expect(usualOfMinor.guardianName).toBe('Rae Ashdown')
	})
	it('asks what was declined, in part or whole', () => {
		for (const answer of ['agreed-in-part', 'declined'] as const) {
			expect(codesOf({ ...usualOfAdult, answer })).toEqual([['notAgreed', 'declined-what']])
			expect(codesOf({ ...usualOfAdult, answer, notAgreed: 'the insert' })).toEqual([])
		}
	})
	it('asks for names, and for what gives the right to consent', () => {
		const { guardianName: _, ...unnamed } = usualOfMinor
		expect(codesOf(unnamed, true)).toEqual([['guardianName', 'guardian-unnamed']])
		expect(codesOf({ ...usualOfAdult, explainedTo: { other: true } })).toEqual([
			['explainedTo', 'told-unnamed'],
		])
		const by = { other: true, otherName: 'Jo Weatherall' }
		expect(codesOf({ ...usualOfAdult, by })).toEqual([['by', 'answer-by-unnamed']])
		const holder = { ...by, otherRight: 'foster carer' }
		expect(codesOf({ ...usualOfAdult, by: holder }, true)).toEqual([])
	})
	it('asks whether a minor is competent who decides alone or against the guardian', () => {
		const alone: Agreement = { ...usualOfAdult, by: { player: true } }
		expect(codesOf(alone, true)).toEqual([['competence', 'competence-not-judged']])
		const judged = (competence: Agreement['competence']) => codesOf({ ...alone, competence }, true)
		expect(judged({ judged: 'competent' })).toEqual([['competence', 'competence-not-judged']])
		const grounds = 'says back plan, options and risks in own words'
		expect(judged({ judged: 'competent', grounds })).toEqual([])
		expect(judged({ judged: 'not-competent', grounds })).toEqual([['by', 'not-competent-alone']])
		const against: Agreement = { ...usualOfMinor, by: { guardian: true }, playerDisagrees: true }
		expect(codesOf(against, true)).toEqual([['competence', 'competence-not-judged']])
		expect(codesOf({ ...against, competence: { judged: 'not-competent', grounds } }, true)).toEqual(
			[],
		)
		// of an adult nobody asks
		expect(codesOf({ ...alone, playerDisagrees: true })).toEqual([])
	})
	it('is refused with an interpreter under 18, or a child, brother or sister of the player', () => {
		const through = (relation: (typeof interpreterRelations)[number]) =>
			codesOf({ ...usualOfAdult, interpreter: { need: 'present', who: 'no. 417', relation } })
		expect(interpreterRelations.filter(mayNeverInterpret)).toHaveLength(2)
		for (const relation of interpreterRelations)
			expect(through(relation), relation).toEqual(
				mayNeverInterpret(relation) ? [['interpreter', 'interpreter-child']] : [],
			)
	})
	it('asks for what an interpreter or a chaperone is known by, or why there was none', () => {
		const withMore = (more: Agreement) => codesOf({ ...usualOfAdult, ...more })
		expect(withMore({ interpreter: { need: 'present' } })).toEqual([
			['interpreter', 'interpreter-unnamed'],
		])
		expect(withMore({ interpreter: { need: 'needed-but-none' } })).toEqual([
			['interpreter', 'interpreter-why'],
		])
		expect(withMore({ interpreter: { need: 'not-needed' } })).toEqual([])
		expect(withMore({ chaperone: { offer: 'accepted' } })).toEqual([
			['chaperone', 'chaperone-unnamed'],
		])
		expect(withMore({ chaperone: { offer: 'not-offered' } })).toEqual([
			['chaperone', 'chaperone-why'],
		])
		expect(withMore({ chaperone: { offer: 'declined' } })).toEqual([])
	})
	it('needs no more than who was told where sport is held', () => {
		expect(codesOf(undefined, true, true)).toEqual([['explainedTo', 'told-nobody']])
		expect(codesOf({ explainedTo: { player: true } }, true, true)).toEqual([])
	})
})

describe('the usual answers', () => {
	it('keep what was noted of interpreter, chaperone and company', () => {
		const noted: Agreement = { interpreter: { need: 'not-needed' }, cameWith: 'nobody' }
		expect(usualAgreement({}, false, noted)).toMatchObject(noted)
	})
})

describe('the agreement in words', () => {
	it('says what was noted, and what was not explained', () => {
		const rows = agreementInWords({
			...usualOfMinor,
			explained: { plan: true, risks: true },
			answer: 'agreed-in-part',
			notAgreed: 'no insert in school shoes',
			interpreter: {
				need: 'present',
				language: 'Arabic',
				who: 'number 417',
				way: 'by-telephone',
				relation: 'professional',
			},
			chaperone: { offer: 'declined' },
			cameWith: 'guardian',
		}).map(({ title, says }) => `${title}: ${says}`)
		expect(rows).toEqual([
			'Explained to: The player and the guardian, Rae Ashdown',
			'Explained: The plan and risks and what to expect',
			'Not explained: Other options and doing nothing',
			'Answer: Agreed in part',
			'Not agreed to: No insert in school shoes',
			'Answered by: The player and the guardian, Rae Ashdown',
			'Interpreter: Present, Arabic, number 417, professional interpreter, by telephone',
			'Chaperone: Offered, declined',
			'Came with: The guardian, Rae Ashdown',
		])
		expect(agreementInWords({})).toEqual([])
	})
	it('is told of two versions by the names of its fields, and is on no page as a change', () => {
		const visit = visitWith({})
		const before = { visit, decisions: { ...noDecisions, ...agreed } }
		const declined: Agreement = { ...agreed.agreement, answer: 'declined', notAgreed: 'all of it' }
		const after = { visit, decisions: { ...noDecisions, agreement: declined } }
		expect(
			toldDifferences(differences(before, after)).map(({ title, before, after }) => [
				title,
				before,
				after,
			]),
		).toEqual([
			['Answer to the plan', 'agreed', 'declined'],
			['Not agreed to', 'not there', 'all of it'],
		])
		expect(printedChanges(before, after)).toEqual([])
	})
})

describe('a plan that was declined', () => {
	const visit = visitWith({
		conditions: [{ condition: 'plantar-heel-pain', side: 'left', status: 'current' }],
		screening: { nightPain: true },
	})
	const assessment = assess(visit)
	const inputOf = (agreement: Agreement): KindInput => ({
		visit,
		assessment,
		decisions: { ...settledAsProposed(assessment), agreement },
		clinic: unnamedClinic,
		signedAt: '2027-01-20T09:00:00.000Z',
		draft: false,
		on: '2027-01-20',
	})
	const declined: Agreement = { ...usualOfAdult, answer: 'declined', notAgreed: 'the insert.' }
	const letter = (agreement: Agreement) =>
		JSON.stringify(kinds.referral.compose(inputOf(agreement)))
	it('orders nothing, and the doctor reads that it was declined', () => {
		const problems = kinds['insert-order'].problems
		expect(problems(inputOf(declined))).toEqual([
			expect.stringMatching(/^decisions\.agreement\.answer: the plan was declined/),
		])
		expect(problems(inputOf(usualOfAdult)).join()).not.toContain('declined')
		expect(letter(declined)).toContain('What was advised here was declined: the insert.')
		expect(letter(usualOfAdult)).not.toContain('declined')
	})
	it('and an interpreter are told to the doctor, with the language', () => {
		const through = (interpreter: Agreement['interpreter']) =>
			letter({ ...usualOfAdult, interpreter })
		expect(through({ need: 'present', language: 'Arabic' })).toContain(
			'An interpreter is needed: Arabic.',
		)
		expect(through({ need: 'needed-but-none' })).toContain('An interpreter is needed.')
		expect(through({ need: 'not-needed' })).not.toContain('interpreter')
	})
})
