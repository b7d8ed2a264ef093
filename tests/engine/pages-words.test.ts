/** No page contradicts the plan or itself: what gave way, waits or is not in the plan is not said. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { settledAsProposed } from '../../electron/command/demo/visits.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import { kinds } from '../../shared/engine/report/kinds.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { bothSides } from '../../shared/engine/visit/sides.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { workSentences } from '../../shared/engine/words/en/work.ts'
import { clinic } from '../demo.ts'
import { wholeVisit } from './random-visit.ts'

const folder = new URL('./pictures/', import.meta.url)
const pictured = (name: string): Visit =>
	visitSchema.parse(JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8')))
const inputOf = (
	visit: Visit,
	assessment: Assessment,
	decisions = settledAsProposed(assessment),
) => ({
	visit,
	assessment,
	decisions,
	clinic,
	signedAt: '2027-01-20T09:00:00.000Z',
	draft: false,
	on: visit.visitDate,
})
const pageOf = (kind: 'player' | 'guardian' | 'referral' | 'insert-order', visit: Visit): string =>
	textsIn(kinds[kind].compose(inputOf(visit, assess(visit))).blocks).join('\n')
const startOf = (key: keyof typeof sentences): string => sentences[key].split('{')[0] ?? ''

describe('words of changes and lacing', () => {
	const numbers = { mostMm: 3, leastMm: 1, raiseMm: 4, pairs: [] }
	const limits = {
		freeWeeksLeast: 2,
		freeWeeksMost: 4,
		stepLeastMm: 1,
		stepMostMm: 2,
		stepWeeks: 2,
	}
	it('speak of no insert and of no purchase, which may be held', () => {
		const said = Object.values(workSentences).flatMap((words) =>
			Object.values(words).flatMap((speak) =>
				typeof speak === 'function'
					? [(speak as (p: object) => string)({ ...numbers, ...limits })]
					: [],
			),
		)
		expect(said.length).toBeGreaterThan(50)
		for (const words of said)
			expect(words).not.toMatch(/insert|longer one|another sole|a sole with/)
	})
	it('say once what holds of every way to lace', () => {
		const page = pageOf('player', pictured('15-old-hand'))
		expect(page.split(sentences['player.lacing'])).toHaveLength(2)
		expect(page.match(/goes numb/g)).toHaveLength(1)
	})
})
describe('a reason of which a part gave way', () => {
	it('is not told: nothing is asked for that the page tells to stay away from', () => {
		const visit = pictured('17-impingement')
		const { pairs } = assess(visit).prescription
		for (const { avoid } of pairs) {
			expect(avoid).toContain('raised-heel')
			expect(avoid).not.toContain('low-heel')
		}
		const page = pageOf('player', visit)
		expect(page).not.toMatch(/heel higher than the front (eases|asks)/)
		expect(page).toMatch(/sore at the back/)
		expect(page).not.toMatch(/lighter, lower pair/)
	})
	it('is told behind the name of its condition, with what is left', () => {
		const page = pageOf('player', pictured('20-heels'))
		expect(page).toMatch(
			/Pain under the heel, left side: \w+\. Look for a middle that does not twist/,
		)
		expect(page).not.toMatch(/Look for a firm heel cup/)
	})
	it('leaves the other reasons where the clinician takes out one feature', () => {
		const visit = pictured('15-old-hand')
		const assessment = assess(visit)
		const settled = settledAsProposed(assessment)
		const without = (question: string) => {
			const pair = assessment.prescription.pairs.find(({ id }) => `pair.${id}` === question)!
			return {
				choice: 'changed' as const,
				fields: { seek: pair.seek.filter((one) => one !== 'firm-heel-counter') },
				why: 'rubs',
			}
		}
		const answers = settled.answers!.map((answer) =>
			answer.question.startsWith('pair.') ? { ...answer, ...without(answer.question) } : answer,
		)
		const input = inputOf(visit, assessment, { ...settled, answers })
		const page = textsIn(kinds.player.compose(input).blocks).join('\n')
		expect(page).not.toMatch(/in a firm cup/)
		expect(page).toMatch(/Your foot is broad for its length/)
		expect(page).toMatch(/Worn knee joint.*wear studs that turn easily/)
	})
	it('names no studs of a sole that another took the place of', () => {
		const visit = pictured('22-stiff-midfoot')
		const { pairs } = assess(visit).prescription
		const boots = pairs.filter(({ sole }) => sole === 'firm-ground')
		expect(boots.length).toBeGreaterThan(0)
		for (const { seek } of boots) expect(seek).not.toContain('long-studs')
		expect(pageOf('player', visit)).not.toMatch(/wear soft-ground boots with long studs/)
		const [match] = pairs
		expect(match!.settled.map(({ code }) => code)).toEqual(['settled.sole-left'])
	})
})
describe('a foot that was hurt when it was measured', () => {
	const visit = pictured('19-first-and-back')
	it('gives no size to buy by, and no purchase as the first thing to do', () => {
		const injury = { side: 'right', daysAgo: 1, malleolarZonePain: true } as const
		const fresh = { ...visit, screening: { ...visit.screening, injury } }
		const { prescription } = assess(fresh)
		for (const pair of prescription.pairs) expect(pair.insideLengthMm).toBeUndefined()
		expect(prescription.gate.person.holds.map(({ rule }) => rule)).toContain('swollen-foot')
		expect(prescription.priorities.map(({ code }) => code)).not.toContain('priority.buy')
		const page = pageOf('player', fresh)
		expect(page).not.toContain(startOf('player.lookFor'))
	})
	it('has its reason on the page and in the letter', () => {
		expect(pageOf('player', visit)).not.toContain(sentences['player.signFound'])
		expect(pageOf('player', visit)).toMatch(/With pain this bad/)
		const letter = pageOf('referral', visit)
		expect(letter).toMatch(/Severe pain now, right/)
		expect(letter).not.toContain(sentences['referral.noReasons'])
	})
	it('wears nothing in by training or matches while those wait', () => {
		expect(pageOf('player', visit)).toMatch(/hours in your everyday shoes/)
		expect(pageOf('player', visit)).not.toMatch(/First training|Third training|Match: after/)
	})
})
describe('a guardian', () => {
	it('takes the card of the player to the shop, and wears boots in where boots are bought', () => {
		const cardOf = (kind: 'player' | 'guardian', visit: Visit) =>
			kinds[kind]
				.compose(inputOf(visit, assess(visit)))
				.blocks.find((block) => block.kind === 'facts' && block.boxed)
		const [girl, child] = [pictured('21-knees-of-a-girl'), pictured('13-child-of-five')]
		for (const visit of [girl, child]) {
			expect(cardOf('guardian', visit)).toBeDefined()
			expect(cardOf('guardian', visit)).toEqual(cardOf('player', visit))
		}
		expect(pageOf('guardian', girl)).not.toContain(sentences['guardian.wearBoots'])
		expect(pageOf('guardian', child)).toContain(sentences['guardian.wearBoots'])
	})
	it('is not sent back for tight shoes while none may be bought', () => {
		const page = pageOf('guardian', pictured('14-hip-of-a-boy'))
		expect(page).not.toMatch(/shoes feel tight/)
		expect(page).toMatch(/new pain or a sore spot/)
	})
	it('reads of the doctor of the player', () =>
		expect(pageOf('guardian', pictured('22-stiff-midfoot'))).not.toMatch(/your doctor/))
})
describe('a pair at hand', () => {
	it('that is not worn any more is not told when it will be outgrown', () => {
		expect(pageOf('player', pictured('13-child-of-five'))).not.toMatch(/If your feet grow/)
	})
	it('that hurts may not be worn on as if it did not', () => {
		const page = assess(pictured('18-two-forefeet')).prescription.owned[0]!.says
		expect(page).not.toMatch(/may be worn until then/)
	})
	it('says why it does not serve where another is bought', () => {
		const visit = pictured('12-well-player')
		const footwear = [
			{
				id: 'x',
				name: 'red boots',
				sole: 'firm-ground' as const,
				hurts: true,
				roles: ['match' as const],
			},
		]
		const { pairs } = assess({ ...visit, footwear }).prescription
		const match = pairs.find(({ role }) => role === 'match')!
		expect(match.means).toBe('buy')
		expect(match.beside!.map(({ says }) => says)).toEqual([
			'Red boots: it hurts, so it does not serve for matches.',
		])
		expect(pageOf('player', { ...visit, footwear })).toMatch(/your red boots hurt/)
	})
	it('to be replaced is not bought a second time', () => {
		const { priorities } = assess(pictured('18-two-forefeet')).prescription
		expect(priorities.map(({ code }) => code)).toEqual([
			'priority.act',
			'priority.replace',
			'priority.review',
		])
	})
})
describe('a raise', () => {
	it('has its figures in one list: what is built on the sole is told apart', () => {
		for (const kind of ['player', 'insert-order'] as const)
			expect(pageOf(kind, pictured('20-heels'))).toMatch(
				/left 6 mm inside and 8 mm on the outsole, right 6 mm/i,
			)
		const page = pageOf('player', pictured('20-heels'))
		expect(page).toContain(sentences['player.raiseOnSole'])
		expect(page).not.toMatch(/everyday shoes first, for 7 days: \d/)
	})
	it('is worn in where it is worn alone', () => {
		fc.assert(
			fc.property(wholeVisit, (visit) => {
				const { raise } = assess(visit).prescription
				const whens = raise.steps.map(({ when }) => when)
				const raised = raise.pairs.filter((pair) => bothSides.some((side) => pair[side].addMm > 0))
				const all = raised.map(({ pair }) => pair)
				if (whens.includes('match')) expect(all).not.toEqual(['role.everyday'])
				for (const step of raise.steps.filter(
					({ when }) => when !== 'free-of-pain' && when !== 'range-regained',
				))
					expect(step.params).not.toHaveProperty('mm')
			}),
			{ numRuns: 60 },
		)
	})
})
describe('a label', () => {
	it('to try where the closest is too tight is another one', () => {
		for (let length = 150; length <= 300; length += 3) {
			const visit = pictured('12-well-player')
			const feet = { left: { heelToToeMm: length }, right: { heelToToeMm: length } }
			const { blocks } = kinds.player.compose(
				inputOf({ ...visit, feet }, assess({ ...visit, feet })),
			)
			const rows = blocks.flatMap((block) => (block.kind === 'facts' ? block.rows : []))
			const said = (name: string): string[] =>
				rows.find(({ label }) => label === name)?.text.split(', ') ?? []
			const closest = said(sentences['player.nearest'])
			const next = said(sentences['player.between'])
			expect(closest, `labels for ${length} mm`).toHaveLength(4)
			for (const [at, label] of closest.entries()) expect(next[at], `${length} mm`).not.toBe(label)
		}
	})
})
it('a draft without decisions says so once', () => {
	const visit = pictured('20-heels')
	const input = { ...inputOf(visit, assess(visit), noDecisions), draft: true, signedAt: undefined }
	const page = textsIn(kinds.player.compose(input).blocks).join('\n')
	expect(page.match(/has not decided yet/g)).toHaveLength(1)
})
