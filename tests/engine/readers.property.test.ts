/** Who reads what: nothing private and nothing without words for that reader, whatever the visit. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { printedChanges } from '../../shared/desk/records/told.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import {
	type KindInput,
	type KindName,
	kindNames,
	kinds,
} from '../../shared/engine/report/kinds.ts'
import { linesFor, mayHoldPrivate, readerOf } from '../../shared/engine/report/reader.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { toldTo } from '../../shared/engine/words/privacy.ts'
import { clinic, json, read } from '../demo.ts'
import { demoNames } from './demo-report.ts'
import { massKg, planted, young } from './planted-visit.ts'
import { wholeVisit } from './random-visit.ts'

const on = '2027-03-01'
const privateWords =
	/pregnan|\bperiods?\b(?! of)|menstru|menarche|steroid|hormone|\bpills?\b|medication|blood thinner|anticoagul|floxacin|cortico|zq note|weight loss|losing weight|body mass|\bBMI\b|\bkg\b|83\.7|safeguard/i
const consent = { id: 'C-7', decision: 'permit' as const, given: '2026-01-20' }
const inputOf = (visit: Visit, decisions: Decisions, more: Partial<KindInput> = {}): KindInput => ({
	visit,
	assessment: assess(visit),
	decisions,
	clinic,
	signedAt: undefined,
	draft: true,
	on,
	plan: {
		sessions: [{ date: '2027-03-02', kind: 'match', surface: 'hall', pair: 'p1' }],
		pairs: [{ id: 'p1' }],
	},
	consents: [{ ...consent, purpose: 'coach' }],
	...more,
})
/** Every document that somebody other than clinician, doctor and laboratory reads. */
function pagesOf(visit: Visit, decisions: Decisions = noDecisions): LwDocument[] {
	const input = inputOf(visit, decisions)
	const names: readonly KindName[] = [
		...(['player', 'appointment', 'guardian', 'coach', 'squad', 'season-chart'] as const),
	]
	return [
		...names.map((kind) => [kind, input] as const),
		[
			'squad' as const,
			{
				...input,
				audience: 'club' as const,
				consents: [{ ...consent, purpose: 'squad-club' as const }],
			},
		] as const,
	]
		.filter(([kind, given]) => kinds[kind].problems(given).length === 0)
		.map(([kind, given]) => kinds[kind].compose(given))
}
const wordsOf = (document: LwDocument): string =>
	textsIn({ ...document, letterhead: undefined }).join('\n')
/** Lines that accept every finding: what a clinician may do at most. */
const accepting = ({ findings }: Assessment): Decisions => ({
	...noDecisions,
	lines: findings.map(({ id }) => ({ findingId: id, choice: 'accept' })),
})

describe('what is private', () => {
	it('is on no page of a child, a guardian, a club, a coach or a squad', () => {
		fc.assert(
			fc.property(wholeVisit, (drawn) => {
				const visit = planted(young(drawn))
				const documents = pagesOf(visit, accepting(assess(visit)))
				expect(documents.map(({ kind }) => kind)).toEqual(
					expect.arrayContaining(['player', 'guardian', 'coach', 'squad']),
				)
				for (const document of documents)
					expect(privateWords.exec(wordsOf(document))?.[0], document.kind).toBeUndefined()
			}),
			{ numRuns: 60 },
		)
	})
	it('is found by the same search where it belongs: at the clinician’s and in the order', () => {
		const visit = planted(young(read(json(demoNames[0]!))))
		expect(textsIn(assess(visit).findings).join(' ')).toMatch(privateWords)
		const order = kinds['insert-order'].compose(inputOf(visit, noDecisions))
		expect(wordsOf(order)).toContain(String(massKg))
	})
	it('of safeguarding is in no document at all', () => {
		fc.assert(
			fc.property(wholeVisit, fc.boolean(), (drawn, isYoung) => {
				const visit = planted(isYoung ? young(drawn) : drawn)
				const input = inputOf(visit, accepting(assess(visit)))
				for (const kind of kindNames)
					if (kinds[kind].problems(input).length === 0)
						expect(JSON.stringify(kinds[kind].compose(input)), kind).not.toMatch(
							/zq note|safeguard/i,
						)
			}),
			{ numRuns: 40 },
		)
	})
	it('is an adult’s own to read, and then no page for reception', () => {
		const adult = read(json(demoNames[1]!))
		const asked: Visit = { ...adult, screening: { ...adult.screening, anticoagulant: true } }
		for (const [visit, holds] of [
			[adult, false],
			[asked, true],
			[young(asked), false],
		] as const) {
			const assessment = assess(visit)
			const of = { visit, assessment, decisions: noDecisions }
			expect(mayHoldPrivate('player', of)).toBe(holds)
			expect(mayHoldPrivate('coach', of)).toBe(false)
			expect(mayHoldPrivate('referral', of)).toBe(visit !== adult)
		}
	})
	it('of body mass stands on no page of an adult either, nor in its notes', () => {
		const adult = read(json(demoNames[1]!))
		const heavy: Visit = { ...adult, body: { ...adult.body, massKg: 110.3 } }
		const bases = assess(heavy).footwear.target.seek.map(({ basis }) => basis)
		expect(bases.some(({ limit }) => limit?.unit === 'kg')).toBe(true)
		for (const document of pagesOf(heavy))
			expect(wordsOf(document), document.kind).not.toMatch(/\bkg\b|110\.3|body mass/i)
	})
	it('is counted, not told, among what an amendment changed', () => {
		const before = young(read(json(demoNames[0]!)))
		const told = printedChanges(
			{ visit: before, decisions: noDecisions },
			{ visit: planted(before), decisions: noDecisions },
		)
		expect(told.length).toBeGreaterThan(0)
		expect(told.join(' ')).not.toMatch(privateWords)
	})
	it('is told to adults of their own, to a doctor, and to guardians once released', () => {
		const released = [{ topic: 'periods', to: 'guardian' }] as const
		expect(toldTo('player')).toContain('pregnancy')
		expect(toldTo('doctor')).toContain('medication')
		for (const reader of ['coach', 'laboratory', 'guardian'] as const)
			expect(toldTo(reader, [], true)).toEqual([])
		expect(toldTo('player', [], true)).toEqual([])
		expect(toldTo('player', released, true)).toEqual(['periods'])
		expect(toldTo('guardian', released, true)).toEqual(['periods'])
		expect(toldTo('coach', released, true)).toEqual([])
	})
})

describe('what has no words for a reader', () => {
	it('does not reach that reader, unless the clinician wrote it', () => {
		const visit = read(json(demoNames[0]!))
		const assessment = assess(visit)
		const silent = assessment.findings.find(
			(finding) =>
				linesFor(readerOf('coach', { visit, decisions: noDecisions }), {
					assessment: { ...assessment, findings: [finding] },
					decisions: noDecisions,
				}).length === 0,
		)!
		const typed: Decisions = {
			...noDecisions,
			lines: [
				{ findingId: silent.id, choice: 'change', says: 'Ask Rae.' },
				{ findingId: 'own.1', choice: 'add', says: 'Bring both pairs.' },
			],
		}
		const lines = linesFor(readerOf('player', { visit, decisions: typed }), {
			assessment,
			decisions: typed,
		}).map(({ says }) => says)
		expect(lines).toContain('Ask Rae.')
		expect(lines).toContain('Bring both pairs.')
		expect(lines).not.toContain(silent.says)
	})
})
