/** A condition that was entered and of which nobody said how it stands: nothing follows from it yet. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { type KindInput, kindNames, kinds } from '../../shared/engine/report/kinds.ts'
import { signingBlocks } from '../../shared/engine/report/signing.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { conditions } from '../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { clinic, json, read } from '../demo.ts'
import { wholeVisit } from './random-visit.ts'

type Entered = NonNullable<Visit['conditions']>[number]
const protocol = openProtocol()
const demoVisit = read(json('visit-adolescent.json'))
const entering = (visit: Visit, ...entered: Entered[]): Visit =>
	visitSchema.parse({ ...visit, conditions: [...(visit.conditions ?? []), ...entered] })
const bunionette: Entered = { condition: 'bunionette', side: 'left', painWorst: 8 }

it('changes nothing but what is missing, whatever else is recorded', () => {
	fc.assert(
		fc.property(wholeVisit, fc.constantFrom(...conditions), (visit, condition) => {
			const { missing, ...found } = assess(
				entering(visit, { condition, side: 'left', painWorst: 9 }),
			)
			const { missing: missingBefore, ...foundBefore } = assess(visit)
			expect(found).toEqual(foundBefore)
			const path = `conditions.${visit.conditions?.length ?? 0}.status`
			expect(missing.filter((one) => one.path === path)).toHaveLength(1)
			expect(missing.filter((one) => one.path !== path)).toEqual(missingBefore)
		}),
		{ numRuns: 50 },
	)
})
describe('the visit', () => {
	const blocksOf = (visit: Visit) =>
		signingBlocks({ visit, decisions: noDecisions, raw: {} }, assess(visit), protocol)
			.filter(({ code }) => code === 'signing.condition-without-status')
			.map(({ path, says }) => [path, says])
	const at = demoVisit.conditions?.length ?? 0
	it('is not signed, and says where', () => {
		expect(blocksOf(demoVisit)).toEqual([])
		expect(blocksOf(entering(demoVisit, { ...bunionette, status: 'past' }))).toEqual([])
		expect(blocksOf(entering(demoVisit, bunionette, bunionette))).toEqual([
			[
				`conditions.${at}.status`,
				'Conditions of which nobody said how they stand: 2. Choose current, recovering or past, ' +
					'or take the condition out.',
			],
		])
	})
	it('prints nothing of it', () => {
		const pages = (visit: Visit) => {
			const input: KindInput = {
				visit,
				earlier: [],
				decisions: noDecisions,
				signedAt: undefined,
				draft: true,
				on: visit.visitDate,
				protocol,
				assessment: assess(visit),
				clinic,
				consents: [],
			}
			// a squad's list counts what is missing, this too
			return kindNames
				.filter((kind) => kind !== 'squad')
				.filter((kind) => kinds[kind].problems(input).length === 0)
				.map((kind) => [kind, JSON.stringify(kinds[kind].compose(input))])
		}
		expect(pages(demoVisit).length).toBeGreaterThan(1)
		expect(pages(entering(demoVisit, bunionette))).toEqual(pages(demoVisit))
		expect(pages(entering(demoVisit, { ...bunionette, status: 'current' }))).not.toEqual(
			pages(demoVisit),
		)
	})
})
