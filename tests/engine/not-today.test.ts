/** Tests under load of a limb that waits: which they are, why they wait, and that they are not asked for. */
import { describe, expect, it } from 'vitest'
import { notToday } from '../../renderer/parts/measure/testsWait.ts'
import { assess } from '../../shared/engine/assess.ts'
import { schemaAt } from '../../shared/engine/visit/field-meta.ts'
import { loadTests } from '../../shared/engine/visit/load-tests.table.ts'
import { limbsTested } from '../../shared/engine/visit/load-tests.ts'
import { catalogue, pathsOf } from '../../shared/engine/visit/measures/catalogue.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { askedAndNo, brokenAnkle, outcomeOf, visitOf } from './gate-visit.ts'

const held = visitOf(brokenAnkle)
const missingOf = (visit: Visit) => assess(visit).missing.map(({ path }) => path)
const lunge = 'ankles.left.lungeDeg'

describe('which fields are tests under load', () => {
	it('every one is a field of the visit', () => {
		for (const path of loadTests) {
			const placed = catalogue.find(({ group, key }) => path === `${group}.${key}`)
			const paths = placed ? pathsOf(placed) : [path]
			for (const each of paths) expect(schemaAt(visitSchema, each), each).toBeDefined()
		}
	})
	it('looking, sizing and moving the foot off the ground are none', () => {
		for (const path of ['feet.left.heelToToeMm', 'ankles.left.kneeBentDeg', 'posture.left.fpi6'])
			expect(limbsTested(path, held)).toEqual([])
	})
	it('a question about a hop loads the side of its group', () => {
		const path = 'screening.boneStress.hopPain'
		expect(limbsTested(path, visitOf({}))).toEqual([])
		const both = visitOf({ boneStress: { side: 'both' } })
		expect(limbsTested(path, both)).toEqual(['left', 'right'])
		expect(limbsTested(path, visitOf({ boneStress: { side: 'right' } }))).toEqual(['right'])
	})
})

describe('why they wait', () => {
	it('a held limb, and that one alone', () => {
		expect(assess(held).testsWait).toEqual({ left: ['screening.ottawa-met'], right: [] })
	})
	it('a sign of no place holds the tests of both', () => {
		expect(assess(visitOf({ fever: true })).testsWait).toEqual({
			left: ['screening.fever'],
			right: ['screening.fever'],
		})
	})
	it('an injury whose rules are not finished, until an outcome lets it be tested', () => {
		const open = visitOf({ injury: { side: 'right', daysAgo: 1, midfootZonePain: true } })
		expect(assess(open).testsWait).toEqual({ left: [], right: ['fresh-injury'] })
		const outcome = outcomeOf('screening.ottawa-met', ['test'], { side: 'right' })
		expect(assess({ ...open, outcomes: [outcome] }).testsWait?.right).toEqual([])
	})
	it('severe pain alone holds no test', () => {
		const sore = visitOf(askedAndNo, {
			conditions: [
				{ condition: 'achilles-insertional', side: 'left', status: 'current', painWorst: 9 },
			],
		})
		expect(assess(sore).testsWait).toEqual({ left: [], right: [] })
	})
})

describe('what is said of it', () => {
	it('the sign by its name, at the fields of its limb alone', () => {
		const { testsWait } = assess(held)
		expect(notToday(lunge, held, testsWait)).toBe('Ottawa rule met')
		expect(notToday('ankles.right.lungeDeg', held, testsWait)).toBe('')
		expect(notToday('ankles.left.kneeBentDeg', held, testsWait)).toBe('')
		expect(notToday(lunge, held, undefined)).toBe('')
	})
	it('a private answer is not named beside a measure', () => {
		const visit = visitOf({ fluoroquinolone: true })
		expect(notToday(lunge, visit, assess(visit).testsWait)).toBe('an answer on Flags')
	})
	it('what is missing does not ask for it; the other side and what only looks is asked for', () => {
		const [before, now] = [missingOf(visitOf(askedAndNo)), missingOf(held)]
		const waiting = ['lungeCm', 'lungeDeg', 'endFeel'].map((key) => `ankles.left.${key}`)
		expect(before).toEqual(expect.arrayContaining(waiting))
		expect(now).toEqual(before.filter((path) => !waiting.includes(path)))
	})
})
