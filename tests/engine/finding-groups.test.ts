/** What says one thing stands once; caveats stand apart; the way to a measure to be repeated. */
import { describe, expect, it } from 'vitest'
import { footnotesOf, groupsOf } from '../../renderer/screens/assessment/decide/findingGroups.ts'
import { measureAgain } from '../../renderer/screens/assessment/decide/measureAgain.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import type { Finding } from '../../shared/engine/findings/finding.ts'
import { footnotes } from '../../shared/engine/findings/footnotes.table.ts'
import { strongestReason } from '../../shared/engine/prescription/strongest.ts'
import { sentences } from '../../shared/engine/words/en/sentences.ts'
import { json, read } from '../demo.ts'

const assessment = assess(read(json('visit-adult.json')))
const found = (id: string, side: Finding['side'], params: object): Finding =>
	({
		id: `${id}.${side}`,
		code: id,
		params: { side, ...params },
		says: `${side} ${JSON.stringify(params)}`,
		topic: 'ankle',
		side,
		level: 'caution',
		because: [],
		basis: { rule: 'r', source: 's', strength: 'practice' },
	}) as Finding

describe('findings', () => {
	it('of left and right stand once, each figure told', () => {
		const two = [
			found('ankle.restricted', 'left', { deg: 30 }),
			found('ankle.restricted', 'right', { deg: 31 }),
		]
		expect(groupsOf(two)).toMatchObject([
			{ says: ['left {"deg":30}', 'right {"deg":31}'], findings: two },
		])
		const alike = [found('a.b', 'left', { deg: 30 }), found('a.b', 'right', { deg: 30 })]
		expect(groupsOf(alike)[0]?.says).toEqual(['left {"deg":30}', 'The same on the right.'])
	})
	it('that ask the same of a pair stand once, with each reason', () => {
		const two = [found('footwear.one', 'none', {}), found('footwear.two', 'none', {})]
		const reasons = two.map(({ id }) => ({
			finding: id,
			seek: ['raised-heel' as const],
			avoid: ['low-heel' as const],
		}))
		const [group, ...others] = groupsOf(two, reasons)
		expect(others).toEqual([])
		expect(group?.says).toEqual(['Raised heel:', 'none {}', 'none {}'])
		const [first] = reasons
		expect(groupsOf(two, first ? [first] : [])).toHaveLength(2)
	})
	it('are each shown once, as a line or as a footnote', () => {
		const shown = [
			...groupsOf(assessment.findings).flatMap(({ findings }) => findings),
			...footnotesOf(assessment.findings),
		].map(({ id }) => id)
		expect(shown.sort()).toEqual(assessment.findings.map(({ id }) => id).sort())
	})
	it('that are footnotes have codes that are said', () => {
		expect([...footnotes].filter((code) => !Object.hasOwn(sentences, code))).toEqual([])
	})
})
describe('the strongest reason', () => {
	const of = (id: string, { prescription }: Assessment = assessment) => {
		const read = prescription.questions.find((one) => one.id === id)?.because ?? []
		return strongestReason(id, read, { ...prescription, size: {} }, assessment)
	}
	it('is a reading of the room that decides', () => {
		expect(of('size')).toMatchObject({ measure: 'fitLengthMm' })
		expect(of('raise')).toEqual(assessment.prescription.raise.aim.because[0])
		expect(of('insert')?.measure).toBe('firstRay')
	})
	it('is none where nothing speaks for it', () => {
		expect(strongestReason('later', [], { ...assessment.prescription, size: {} }, assessment)).toBe(
			undefined,
		)
	})
})
describe('the measure that would make a proposal surer', () => {
	const firm = (path: string) => ({ firmness: 'near-a-limit' as const, decidedBy: [path] })
	it('is found on its step', () => {
		expect(measureAgain(firm('feet.right.heelToToeMm'))).toEqual({
			path: 'feet.right.heelToToeMm',
			step: 'Feet',
		})
		expect(measureAgain(firm('ankles.left.lungeDeg.0'))?.step).toBe('Ankles')
		expect(measureAgain(firm('nowhere'))).toBeUndefined()
		expect(measureAgain({ firmness: 'steady', decidedBy: [] })).toBeUndefined()
		expect(measureAgain(undefined)).toBeUndefined()
	})
})
