/**
 * What a condition asks of footwear, read off the tables, is what an assessment with that condition
 * alone says; own property, no source.
 */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { isHeld } from '../../shared/engine/facts/held.ts'
import { jointNames } from '../../shared/engine/facts/joint-risks.table.ts'
import { asksOfFootwear } from '../../shared/engine/footwear/asks.ts'
import { jointRisks } from '../../shared/engine/footwear/studs.ts'
import { conditions, statuses } from '../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'

const visitWith = (recorded: Visit['conditions'], birthDate = '1995-01-01'): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate, sex: 'male' },
		visitDate: '2027-01-20',
		conditions: recorded,
	})
const sides = ['left', 'right', 'both', 'none'] as const
const holds = (when: 'now' | 'ever', status: string) => when === 'ever' || status !== 'past'

/** Work is called for, cautioned against and left out as the tables say; what is held is not made. */
function checkWork(
	asks: ReturnType<typeof asksOfFootwear>,
	{ footwear, prescription: { gate } }: ReturnType<typeof assess>,
	status: string,
): void {
	const now = status !== 'past'
	const made = [...footwear.modifications!, ...footwear.lacing!]
	if (isHeld(gate, 'sport')) expect(made).toEqual([])
	const mayBeMade = now && !isHeld(gate, 'sport') && !isHeld(gate, 'insert')
	const called = [...asks.changes.calledFor, ...asks.lacing.calledFor]
	const isSought = (feature: string) =>
		footwear.target.seek.some((wish) => wish.feature === feature)
	// work may also be called for by what the condition wishes
	for (const { id, withSought } of mayBeMade ? called : [])
		expect(
			made.some((work) => work.id === id),
			id,
		).toBe(withSought.every(isSought))
	for (const id of now ? [...asks.changes.never, ...asks.lacing.never] : [])
		expect(made.map((work) => work.id)).not.toContain(id)
	for (const work of made)
		expect(work.stated!.cautions.map(({ code }) => code)).toEqual(
			[...asks.changes.against, ...asks.lacing.against]
				.filter(({ id }) => id === work.id && now)
				.map(({ code }) => code),
		)
}
describe.each(conditions)('%s', (condition) => {
	const asks = asksOfFootwear(condition)
	it('asks of a player who grows what it asks of those who grow', () => {
		const { footwear } = assess(
			visitWith([{ condition, side: 'left', status: 'current' }], '2015-01-01'),
		)
		const rules = new Set(
			[...footwear.target.seek, ...footwear.target.avoid].map(({ rule }) => rule),
		)
		for (const { rule, growing } of asks.shoe) if (growing) expect(rules).toContain(rule)
	})
	it.each(statuses.flatMap((status) => sides.map((side) => [status, side] as const)))(
		'%s, side %s',
		(status, side) => {
			const visit = visitWith([{ condition, side, status }])
			const { footwear, posture } = assess(visit)
			const expected = asks.shoe.filter(
				(rule) => !rule.together && !rule.growing && holds(rule.when, status),
			)
			const wished = (kind: 'seek' | 'avoid') =>
				footwear.target[kind].map(({ rule, feature }) => `${rule} ${feature}`).sort()
			for (const kind of ['seek', 'avoid'] as const)
				expect(wished(kind)).toEqual(
					expected.flatMap((rule) => rule[kind].map((feature) => `${rule.rule} ${feature}`)).sort(),
				)
			checkWork(asks, assess(visit), status)
			const risks = jointRisks(visit, posture, side === 'right' ? 'right' : 'left')
			expect(jointNames.filter((joint) => risks[joint].length > 0)).toEqual(
				jointNames.filter((joint) =>
					asks.joints.some((asked) => asked.joint === joint && holds(asked.when, status)),
				),
			)
		},
	)
})
it('a condition of one side is no caution on the other', () => {
	const { footwear } = assess(
		visitWith([
			{ condition: 'first-mtp-osteoarthritis', side: 'left', status: 'current' },
			{ condition: 'achilles-midportion', side: 'right', status: 'current' },
		]),
	)
	const plate = footwear.modifications!.find((work) => work.id === 'forefoot-plate')!
	expect([plate.side, plate.cautions]).toEqual(['left', []])
})
