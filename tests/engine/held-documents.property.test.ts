/**
 * What is held stands in no document: whatever the visit, and even where a plan proposed it all the
 * same. Headings and fixed sentences are looked for by their keys.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { isHeld } from '../../shared/engine/facts/held.ts'
import {
	type Assessment,
	actions,
	type Prescription,
} from '../../shared/engine/findings/assessment.ts'
import { settleAll } from '../../shared/engine/prescription/answers.ts'
import { type Block, blocksIn } from '../../shared/engine/report/document.ts'
import { type KindInput, kinds } from '../../shared/engine/report/kinds.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { perSide } from '../../shared/engine/visit/sides.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { state } from '../../shared/engine/words/statement.ts'
import { clinic, json, read } from '../demo.ts'
import { demoNames } from './demo-report.ts'
import { buyingIsHeld, composedOf, heldInDocuments, isStop, startOf } from './laws/printed.ts'
import { wholeVisit } from './random-visit.ts'

const on = '2027-03-01'
const consent = { id: 'C-7', decision: 'permit' as const, given: '2026-01-20' }
const plan = {
	sessions: [{ date: '2027-03-02', kind: 'match' as const, surface: 'hall', pair: 'p1' }],
	pairs: [{ id: 'p1', replaceBy: '2027-03-20' }],
}
const inputOf = (visit: Visit, assessment: KindInput['assessment'], draft = true): KindInput => ({
	visit,
	assessment,
	decisions: noDecisions,
	clinic,
	signedAt: draft ? undefined : '2027-03-01T09:00:00.000Z',
	draft,
	on,
	plan,
	consents: [{ ...consent, purpose: 'coach' }],
})
const young = (visit: Visit): Visit => ({
	...visit,
	player: { ...visit.player, birthDate: '2013-05-02', guardian: { name: 'Rae Ashdown' } },
})
/** Everything that can be proposed, whatever the gate says. */
const proposing = (assessment: Assessment): Assessment => {
	const { prescription } = assessment
	const raised = { addMm: 4, madeBy: 'wedge', addedUnderHeelMm: 4 } as const
	const pairs: Prescription['pairs'] = [
		{
			id: 'match',
			role: 'match',
			surfaces: ['hall'],
			insideLengthMm: { min: 251, target: 253, max: 255 },
			seek: ['wide-base'],
			avoid: ['long-studs'],
			settled: [],
			shelf: ['zq-model'],
			means: 'buy',
		},
	]
	return {
		...assessment,
		sizing: { ...assessment.sizing, insideLengthMm: { min: 251, target: 253, max: 255 } },
		prescription: {
			...prescription,
			pairs,
			priorities: [
				{
					rank: 1,
					who: 'player',
					when: on,
					because: [],
					...state('priority.buy', { role: 'match' }),
				},
			],
			raise: {
				aim: { kind: 'range', because: [] },
				pairs: [
					{ pair: 'role.match', offsetFrom: 'unknown', left: raised, right: raised, limits: [] },
				],
				steps: [],
			},
			insert: perSide((side) => ({
				state: 'proposed',
				elements: assessment.insert[side].elements.map(({ element }) => element),
				pairs: ['role.match'],
			})),
		},
	}
}
/** Signs that hold each in another way, answered yes. */
const signs = fc.constantFrom<NonNullable<Visit['screening']>>(
	{},
	{ breathlessOrChestPain: true },
	{ boneStressHighRisk: true },
	{ cardiacOrConcussion: true },
	{ reducedSensation: true },
	{ activeFootUlcer: true },
	{ nightPain: true },
	{ suddenLegLengthDifference: true },
	{ rigidFlatFoot: true },
	{ unintendedWeightLoss: true },
)
const visits = fc
	.tuple(wholeVisit, signs, fc.boolean())
	.map(([visit, screening, isYoung]): Visit => {
		const signed = { ...visit, screening: { ...visit.screening, ...screening } }
		return isYoung ? young(signed) : signed
	})
const headingsIn = (blocks: readonly Block[]): string[] =>
	blocksIn(blocks).flatMap((block) => (block.kind === 'heading' ? [block.text] : []))

describe('a document of a visit with holds', () => {
	it('holds nothing that is held, though a plan proposed it', () => {
		const seen = { sport: 0, purchase: 0, raise: 0, insert: 0, open: 0 }
		fc.assert(
			fc.property(visits, fc.boolean(), (visit, draft) => {
				const assessment = proposing(assess(visit))
				const { gate } = assessment.prescription
				const settled = settleAll(noDecisions, assessment.prescription, 'asked elsewhere')
				const input = inputOf(visit, assessment, draft)
				for (const what of ['sport', 'purchase', 'raise', 'insert'] as const)
					seen[what] += Number(isHeld(gate, what))
				seen.open += Number(!buyingIsHeld(gate))
				const documents = composedOf(draft ? input : { ...input, decisions: settled })
				expect(heldInDocuments(documents, gate, ['zq-model'])).toEqual([])
			}),
			{ numRuns: 120, seed: 16 },
		)
		for (const [what, times] of Object.entries(seen)) expect(times, what).toBeGreaterThan(3)
	})
	it('says all of it where nothing is held: the search finds what it looks for', () => {
		const visit = read({ ...json(demoNames[0]), screening: {}, conditions: [] })
		const documents = composedOf(inputOf(visit, proposing(assess(visit))))
		const text = [...documents.values()].flatMap(({ blocks }) => textsIn(blocks)).join('\n')
		for (const key of [
			'player.size',
			'pageOne.shop',
			'player.raise',
			'guardian.buy',
			'guardian.raise',
			'guardian.wearBoots',
			'player.lookFor',
		] as const)
			expect(text, key).toContain(startOf(key))
	})
	it('is composed of a record without a prescription, and as silent', () => {
		fc.assert(
			fc.property(visits, (visit) => {
				const { prescription: _, ...before } = assess(visit)
				const documents = composedOf(inputOf(visit, before, false))
				expect([...documents.keys()]).toEqual(expect.arrayContaining(['player', 'coach', 'squad']))
				const isStopped = actions.indexOf(before.screening.action) > actions.indexOf('letter')
				const player = documents.get('player')!
				expect(isStop(player.blocks[0])).toBe(isStopped)
				if (isStopped) expect(headingsIn(player.blocks)).not.toContain(sentences['player.size'])
			}),
			{ numRuns: 40, seed: 17 },
		)
	})
})

describe('a letter of referral', () => {
	it('cuts no reason that asks for anything, most urgent first', () => {
		const many = {
			breathlessOrChestPain: true,
			cardiacOrConcussion: true,
			boneStressHighRisk: true,
			nightPain: true,
			newWeakness: true,
			coldPaleFoot: true,
			fever: true,
			hotSwollenJoint: true,
			reducedSensation: true,
		}
		const visit = read({ ...json(demoNames[1]), screening: many })
		const assessment = assess(visit)
		const { blocks } = kinds.referral.compose(inputOf(visit, assessment))
		const list = blocks.find((block) => block.kind === 'list')
		const asking = assessment.screening.items.filter(
			({ state: found, action }) => found === 'yes' && action !== 'proceed',
		)
		expect(asking.length).toBeGreaterThan(7)
		expect(list?.kind === 'list' && list.items.length).toBeGreaterThanOrEqual(asking.length)
		const urgencies = asking
			.map(({ action }) => actions.indexOf(action))
			.toSorted((one, other) => other - one)
		expect(urgencies[0]).toBe(actions.indexOf('emergency'))
		expect(textsIn(blocks).join('\n')).toContain(sentences['referral.holds'])
	})
	it('names an Ottawa rule that cannot be used, and the score for a clot', () => {
		const [before] = sentences['referral.ottawa.incomplete'].split('{')
		const textOf = (screening: object) => {
			const visit = read({ ...json(demoNames[1]), screening })
			return textsIn(kinds.referral.compose(inputOf(visit, assess(visit))).blocks).join('\n')
		}
		expect(textOf({ injury: { side: 'left' } })).toContain(before)
		const [score] = sentences['referral.wells'].split('{')
		const suspected = textOf({ wells: { entireLegSwollen: true, deepVeinTenderness: true } })
		expect(suspected).toContain(score)
		expect(suspected).not.toContain(before)
	})
	it('is none where there is no reason for one', () => {
		const visit = read(json(demoNames[1]))
		expect(kinds.referral.problems(inputOf(visit, assess(visit)))).toEqual([
			expect.stringMatching(/^referral: no reason/),
		])
		const input = inputOf(visit, assess(visit))
		const letter = { question: 'May she run?' }
		const asked = { ...input, decisions: { ...input.decisions, letter } }
		expect(kinds.referral.problems(asked)).toEqual([])
	})
})
