/** What is private stays marked: on the question, and on whatever follows from its answer. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { screening } from '../../shared/engine/screening/screening.ts'
import { fieldMeta } from '../../shared/engine/visit/field-meta.ts'
import { privatePaths, privateTopicAt } from '../../shared/engine/visit/private.ts'
import { type Screening, type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { sentences } from '../../shared/engine/words/en/sentences.ts'
import { privateTopicOf, type Statement, spokenTo } from '../../shared/engine/words/statement.ts'
import { wholeVisit as randomVisit } from './random-visit.ts'

const protocol = openProtocol()
const read = (answers: Screening, of: Visit) => screening({ ...of, screening: answers }, protocol)
const others = ['player', 'guardian', 'doctor', 'laboratory', 'coach'] as const

describe('the one list', () => {
	it('has every topic, and each path is a field of the form that says the same', () => {
		expect(privatePaths.map(({ path, topic }) => `${path}: ${topic}`).sort()).toEqual([
			'body.massKg: weight',
			'screening.anticoagulant: medication',
			'screening.corticosteroidInjection: medication',
			'screening.corticosteroidLongTerm: medication',
			'screening.fluoroquinolone: medication',
			'screening.injury.pregnant: pregnancy',
			'screening.limp.weightLossOrSweats: weight',
			'screening.lowEnergy.offGrowthCurve: weight',
			'screening.lowEnergy.periodsMissed: periods',
			'screening.lowEnergy.periodsNotBegun: periods',
			'screening.periodsAbsent: periods',
			'screening.pregnant: pregnancy',
			'screening.safeguardingNote: safeguarding',
			'screening.unintendedWeightLoss: weight',
		])
		for (const { path, topic } of privatePaths) {
			expect(fieldMeta(visitSchema, path).private).toBe(topic)
			expect(privateTopicAt(path)).toBe(topic)
		}
	})
	it('leaves every other field alone', () => {
		for (const path of ['screening.fever', 'screening.lowEnergy', 'feet.left.heelToToeMm', 'notes'])
			expect(privateTopicAt(path)).toBeUndefined()
	})
})

/**
 * Urgent sentences that private answers can bring about and that give nothing away: a reader who may
 * not be told why must still read that it is urgent.
 */
const urgentWithoutReason = [
	'screening.wells',
	'screening.wells-incomplete',
	'screening.ottawa-not-applicable',
	'screening.limp-signs',
]
/** The answers before; what it means that a group of questions was opened is not private. */
const opened = (given: Screening): Screening => ({
	...given,
	limp: { side: 'left', ...given.limp },
	injury: { side: 'left', ...given.injury },
})
const answersYes: readonly ((given: Screening) => Screening)[] = [
	...(
		[
			'pregnant',
			'fluoroquinolone',
			'corticosteroidLongTerm',
			'corticosteroidInjection',
			'anticoagulant',
			'periodsAbsent',
			'unintendedWeightLoss',
		] as const
	).map(
		(key) =>
			(given: Screening): Screening => ({ ...given, [key]: true }),
	),
	(given) => ({ ...given, lowEnergy: { ...given.lowEnergy, periodsMissed: 6 } }),
	(given) => ({ ...given, lowEnergy: { ...given.lowEnergy, offGrowthCurve: true } }),
	(given) => ({ ...given, limp: { side: 'left', ...given.limp, weightLossOrSweats: true } }),
	(given) => ({ ...given, injury: { side: 'left', ...given.injury, pregnant: true } }),
]
const contentOf = ({ code, params }: Partial<Statement>): string => JSON.stringify([code, params])
it('whatever a private answer adds is private, or urgent without giving it away', () => {
	fc.assert(
		fc.property(randomVisit, fc.constantFrom(...answersYes), (visit, answer) => {
			const before = read(visit.screening ?? {}, visit)
			const after = read(answer(visit.screening ?? {}), visit)
			const asked = read(opened(visit.screening ?? {}), visit)
			const known = new Set(
				[before, asked].flatMap(({ findings, items }) => [...findings, ...items]).map(contentOf),
			)
			const added = [...after.findings, ...after.items]
				.filter((said) => !known.has(contentOf(said)))
				// what only counts open questions, or that a group was opened
				.filter((said) => !('state' in said) || said.state === 'yes')
				.filter(({ code }) => code !== 'screening.nothing-recorded')
				.filter((said) => !('level' in said) || said.level !== 'note')
				.map((said) => said as typeof said & Statement)
			for (const said of added)
				if (!urgentWithoutReason.includes(said.code) && said.code !== 'screening.ottawa-incomplete')
					expect(privateTopicOf(said), said.code).toBeDefined()
		}),
		{ numRuns: 300 },
	)
})
it('pregnancy is in no word of the urgent sentences to others', () => {
	const bars = { side: 'left', part: 'ankle', minYears: 6, maxDays: 10 } as const
	const told = (because: readonly string[]) =>
		others.map((reader) =>
			spokenTo(reader, {
				code: 'screening.ottawa-not-applicable',
				params: { ...bars, because },
				says: '',
			}),
		)
	expect(told(['pregnant'])).toEqual(told([]))
	const clot = (score: string) =>
		others.map((reader) =>
			spokenTo(reader, {
				code: 'screening.wells',
				params: { score, minorBelowYears: 18 },
				says: '',
			}),
		)
	expect(clot('pregnant')).toEqual(clot('used'))
})
it('a private sentence reaches nobody to whom its topic was not released', () => {
	fc.assert(
		fc.property(randomVisit, (visit) => {
			for (const said of screening(visit, protocol).findings) {
				const topic = privateTopicOf(said as Statement)
				if (topic)
					for (const reader of others) expect(spokenTo(reader, said), said.code).toBeUndefined()
			}
		}),
		{ numRuns: 200 },
	)
})
it('a coach reads of a warning sign only that no sport is played', () => {
	const screened = Object.entries(sentences).filter(([code]) => code.startsWith('screening.'))
	const toCoach = new Set(
		screened.flatMap(([, words]) =>
			'coach' in words && words.coach ? [words.coach({ sport: true } as never)] : [],
		),
	)
	expect(screened.length).toBeGreaterThan(80)
	expect(toCoach.size).toBe(1)
})
it('every item and finding has a code, and reads whole to whoever reads it', () => {
	fc.assert(
		fc.property(randomVisit, (visit) => {
			const { items, findings } = screening(visit, protocol)
			expect(new Set(items.map(({ id }) => id)).size).toBe(items.length)
			expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length)
			for (const said of [...items, ...findings]) {
				expect(Object.keys(sentences)).toContain(said.code)
				for (const reader of ['clinician', ...others] as const)
					expect(
						spokenTo(reader, said, ['pregnancy', 'periods', 'medication', 'weight']) ?? 'none',
					).not.toMatch(/undefined|NaN|\[object|\{|\}/)
			}
		}),
		{ numRuns: 200 },
	)
})
