/** The table of conditions: complete, and what follows of one that is recorded. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { withoutRow } from '../../renderer/screens/assessment/listRows.ts'
import { assess } from '../../shared/engine/assess.ts'
import { ageDoubt } from '../../shared/engine/conditions/ages.ts'
import { conditionFindings } from '../../shared/engine/conditions/findings.ts'
import { conditionReading, type RecordedCondition } from '../../shared/engine/conditions/query.ts'
import { conditionRow, questionsOf } from '../../shared/engine/conditions/registry.ts'
import { conditionWishes } from '../../shared/engine/conditions/wishes.ts'
import { openGate } from '../../shared/engine/facts/held.ts'
import type { Gate } from '../../shared/engine/findings/assessment.ts'
import { footwearRules } from '../../shared/engine/footwear/rules/rules.ts'
import { need } from '../../shared/engine/plain/need.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { countsOf, fleschKincaid } from '../../shared/engine/report/readability.ts'
import { askedAlways, complaints } from '../../shared/engine/screening/complaints.table.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { schemaAt } from '../../shared/engine/visit/field-meta.ts'
import { parseVisit } from '../../shared/engine/visit/parse.ts'
import { type Condition, conditions, termWords } from '../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { conditionWords } from '../../shared/engine/words/en/conditions.table.ts'
import { readingInWords } from '../../shared/engine/words/reading.ts'
import { spokenTo } from '../../shared/engine/words/statement.ts'
import { conditionInWords } from '../../shared/engine/words/words.ts'
import { wholeVisit } from './random-visit.ts'

type Recorded = RecordedCondition
const protocol = openProtocol()
const quiet = openGate
const current = (condition: Condition, more: Partial<Recorded> = {}): Recorded => ({
	condition,
	side: 'left',
	status: 'current',
	...more,
})
const visitWith = (recorded: readonly Recorded[], birthDate = '2000-05-02'): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate, sex: 'female' },
		visitDate: '2027-01-20',
		conditions: recorded,
	})
const found = (...recorded: Recorded[]) => conditionFindings(visitWith(recorded), quiet, protocol)
const codesOf = (...recorded: Recorded[]) => found(...recorded).map(({ code }) => code)

describe('the table is complete', () => {
	it('no two conditions have the same name for a reader', () => {
		for (const reader of ['name', 'player'] as const) {
			const names = conditions.map((condition) => conditionWords[condition][reader].toLowerCase())
			expect(new Set(names).size).toBe(names.length)
		}
	})
	it('every condition has a name of its own, and another', () => {
		for (const condition of conditions) {
			const { name, synonyms } = conditionWords[condition]
			expect(synonyms.length, condition).toBeGreaterThan(0)
			expect(synonyms).not.toContain(name)
			expect(termWords(condition)).toBe(name)
		}
	})
	it('words exist for what a row asks, and for nothing else', () => {
		for (const condition of conditions) {
			const { shoe, caution } = conditionRow(condition)
			const words = conditionWords[condition]
			expect([condition, words.shoe === undefined, words.caution === undefined]).toEqual([
				condition,
				shoe === undefined,
				caution === undefined,
			])
		}
	})
	it('every question that a condition opens stands in the visit file', () => {
		const paths = conditions.flatMap((condition) => questionsOf(condition))
		expect(paths.length).toBeGreaterThan(20)
		for (const path of paths) expect(() => schemaAt(visitSchema, path)).not.toThrow()
		const onTheScreen = [...askedAlways, ...complaints.flatMap(({ opens }) => opens)]
		expect(paths.filter((path) => !onTheScreen.includes(path))).toEqual([])
		expect(questionsOf('tarsal-coalition')).toContain('screening.rigidFlatFoot')
	})
	it('nothing is sought and avoided by the same condition', () => {
		for (const condition of conditions) {
			const { seek = [], avoid = [] } = conditionRow(condition).shoe ?? {}
			expect(seek.filter((feature) => avoid.some((other) => other === feature))).toEqual([])
		}
	})
})
describe('the usual ages', () => {
	const born = { child6: '2020-06-01', child12: '2014-06-01', adult: '2000-06-01' }
	const ageNote = (birthDate: string, recorded: Recorded) =>
		conditionFindings(visitWith([recorded], birthDate), quiet, protocol).filter(
			({ code }) => code === 'conditions.unusual-age',
		)
	it('outside them a note says so, with the ages and the source', () => {
		const [note] = ageNote(born.adult, current('calcaneal-apophysitis'))
		expect(note).toMatchObject({
			level: 'note',
			params: { ageYears: 26, fromYears: 7, toYears: 15 },
		})
		expect(ageNote(born.child6, current('calcaneal-apophysitis'))).toHaveLength(1)
		expect(ageNote(born.child12, current('calcaneal-apophysitis'))).toEqual([])
	})
	it('a past one is of another age', () =>
		expect(ageNote(born.adult, current('calcaneal-apophysitis', { status: 'past' }))).toEqual([]))
	it('follow the protocol of the clinic', () => {
		const file = {
			...protocol.file,
			values: { 'conditions.calcaneal-apophysitis.ageMaxYears': 30 },
		}
		expect(ageDoubt('calcaneal-apophysitis', 26, protocol)?.toYears).toBe(15)
		expect(ageDoubt('calcaneal-apophysitis', 26, openProtocol(file))).toBeUndefined()
	})
	it('are never a reason to refuse', () =>
		expect(parseVisit(visitWith([current('knee-osteoarthritis')], born.child6)).ok).toBe(true))
})
describe('after surgery', () => {
	const surgery = (more: Partial<Recorded>) => current('foot-or-ankle-surgery', more)
	it.each<[string, Partial<Recorded>, boolean]>([
		['not recorded', {}, true],
		['recovering, not recorded', { status: 'recovering' }, true],
		['not allowed yet, though past', { status: 'past', clearedBySurgeon: false }, true],
		['long past', { status: 'past' }, false],
		['allowed', { clearedBySurgeon: true }, false],
	])('clearance %s: caution %s', (_, more, cautioned) =>
		expect(codesOf(surgery(more)).includes('conditions.surgery-clearance')).toBe(cautioned),
	)
	it('tells the operation to clinician and doctor, not to the player', () => {
		const operation = 'Lateral ligament repair'
		const caution = found(surgery({ operation, operationDate: '2026-11-03' }))[0]!
		const read = (['clinician', 'doctor', 'player'] as const).map((reader) =>
			spokenTo(reader, caution)?.includes(operation),
		)
		expect(read).toEqual([true, true, false])
	})
	it('an operation after the visit is refused, naming the field', () => {
		const parsed = parseVisit(visitWith([surgery({ operationDate: '2027-02-01' })]))
		expect(parsed.ok ? [] : parsed.problems.map(({ path }) => path)).toEqual([
			'conditions.0.operationDate',
		])
	})
})
describe('what a condition asks of a shoe', () => {
	const wishes = (...recorded: Recorded[]) => conditionWishes(visitWith(recorded))
	it.each(conditions.filter((condition) => conditionRow(condition).shoe))(
		'%s: its row, with a sentence for clinician and player',
		(condition) => {
			const [wish, another] = wishes(current(condition))
			expect(wish).toMatchObject({
				rule: condition,
				seek: conditionRow(condition).shoe?.seek,
			})
			expect(another).toBeUndefined()
			for (const reader of ['clinician', 'player'] as const)
				expect(wish && spokenTo(reader, wish.statement)).toBeTruthy()
		},
	)
	it('reaches the target and the findings, under a name that no footwear rule has', () => {
		const { footwear, findings } = assess(visitWith([current('plantar-plate-injury')]))
		const wanted = footwear.target.seek.filter(({ rule }) => rule === 'plantar-plate-injury')
		expect(wanted.map(({ feature }) => feature)).toContain('stiff-forefoot')
		expect(findings.map(({ id }) => id)).toContain('footwear.condition.plantar-plate-injury.none')
		const asking = conditions.filter((condition) => conditionRow(condition).shoe)
		expect(footwearRules.filter(({ id }) => asking.some((name) => name === id))).toEqual([])
	})
	it('past ones count only where the row says so', () => {
		expect(wishes(current('ankle-osteoarthritis', { status: 'past' }))).toEqual([])
		expect(wishes(current('tarsal-coalition', { status: 'past' }))).toHaveLength(1)
	})
	it('of one outside the list, what the clinician picked', () => {
		const own = current('other-condition', {
			inWords: 'Os naviculare',
			seek: ['soft-upper'],
			avoid: ['bladed-studs'],
		})
		expect(wishes(own)).toMatchObject([
			{ seek: ['soft-upper'], avoid: ['bladed-studs'], basis: { strength: 'clinic' } },
		])
		expect(wishes(current('other-condition', { inWords: 'Os naviculare' }))).toEqual([])
	})
})
describe('exercise', () => {
	const heldOn = (part: keyof Gate): Gate => ({
		...openGate,
		[part]: {
			...openGate[part],
			state: 'held',
			holds: [{ what: 'exercise', rule: 'r', until: 'outcome', since: '2027-01-20' }],
		},
	})
	const isTold = (gate: Gate, side: Recorded['side'] = 'left') =>
		conditionFindings(visitWith([current('achilles-midportion', { side })]), gate, protocol).some(
			({ code }) => code === 'conditions.exercises',
		)
	it('is named unless it is held on the limb, or of the player as a whole', () => {
		expect(isTold(openGate)).toBe(true)
		expect([isTold(heldOn('left')), isTold(heldOn('person'))]).toEqual([false, false])
		expect(isTold(heldOn('right'))).toBe(true)
		// of both limbs, or of none: either may be the one that is held
		expect([isTold(heldOn('right'), 'both'), isTold(heldOn('right'), 'none')]).toEqual([
			false,
			false,
		])
	})
	it('is silent where a tendon may be torn', () => {
		const visit = visitSchema.parse({
			...visitWith([current('achilles-midportion')]),
			screening: { achilles: { side: 'left', noMovementOnSqueeze: true } },
		})
		expect(assess(visit).findings.map(({ code }) => code)).not.toContain('conditions.exercises')
	})
})
describe('one outside the list', () => {
	const own = current('other-condition', { inWords: 'Os naviculare' })
	it('asks for words where it has none', () => {
		expect(codesOf(current('other-condition'))).toContain('conditions.unnamed')
		expect(codesOf(own)).not.toContain('conditions.unnamed')
	})
	it('the typed words reach clinician and doctor alone', () => {
		expect(conditionInWords(own, 'doctor')).toBe('Os naviculare')
		expect(conditionInWords(own, 'player')).toBe(conditionWords['other-condition'].player)
		expect(readingInWords(conditionReading(own))).not.toContain('Os naviculare')
	})
})
it('whatever is recorded: findings of their own id, with words and a basis for every reader', () => {
	fc.assert(
		fc.property(wholeVisit, (visit) => {
			const findings = conditionFindings(visit, quiet, protocol)
			expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length)
			for (const finding of findings) {
				expect(finding.says).not.toBe('')
				expect(finding.because.length).toBeGreaterThan(0)
				expect(spokenTo('player', finding)).not.toBe('')
				expect(spokenTo('doctor', finding)).not.toBe('')
				expect(spokenTo('coach', finding)).toBeUndefined()
			}
			const rules = conditionWishes(visit).map(({ rule }) => rule)
			expect(new Set(rules).size).toBe(rules.length)
		}),
	)
})
it('stands in the assessment', () =>
	expect(assess(visitWith([current('tarsal-coalition')])).findings.map(({ id }) => id)).toContain(
		'conditions.caution.tarsal-coalition.left',
	))
it('a row taken out of a list leaves what was typed in the others', () => {
	const visit = visitWith([current('blister'), current('shin-pain'), current('bunionette')])
	const draft = {
		visit: { ...visit, notMeasured: { 'conditions.2.painWorst': 'refused', 'body.massKg': 'x' } },
		raw: { 'conditions.0.painWorst': 'a', 'conditions.2.note': 'b', 'feet.left.heelToToeMm': 'c' },
		decisions: noDecisions,
	}
	const left = withoutRow(draft, 'conditions', 0)
	expect(left.visit.conditions?.map(({ condition }) => condition)).toEqual([
		'shin-pain',
		'bunionette',
	])
	expect(left.raw).toEqual({ 'conditions.1.note': 'b', 'feet.left.heelToToeMm': 'c' })
	expect(left.visit.notMeasured).toEqual({
		'conditions.1.painWorst': 'refused',
		'body.massKg': 'x',
	})
})
it("a player's sentence about a condition has fewer than 15 words, grade 7 at the most", () => {
	// grade: Kincaid et al. 1975, Flesch-Kincaid grade level
	for (const condition of conditions) {
		const { shoe, caution } = conditionWords[condition]
		for (const said of [shoe?.player, caution?.player].filter((text) => text !== undefined)) {
			expect(fleschKincaid(need(countsOf(said), said))).toBeLessThanOrEqual(7)
			for (const sentence of said.split(/[.?]/))
				expect(sentence.trim().split(/\s+/).length).toBeLessThan(15)
		}
	}
})
