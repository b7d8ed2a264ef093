/** The short words of the walk: what is held, what is missing, what the feet come to. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { gateInFew } from '../../renderer/screens/assessment/gateWords.ts'
import { lacksOf, shortNames } from '../../renderer/screens/assessment/missingWords.ts'
import {
	decidedWords,
	differenceWords,
	notToBuyBy,
	pairRooms,
	widthHolds,
	widthWords,
} from '../../renderer/screens/assessment/results/feetFacts.ts'
import { assess } from '../../shared/engine/assess.ts'
import { openGate } from '../../shared/engine/facts/held.ts'
import type { Gate, Hold, Holdable } from '../../shared/engine/findings/assessment.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'

const hold = (what: Holdable): Hold => ({
	what,
	rule: 'screening.nightPain',
	until: 'outcome',
	since: '2027-01-20',
})
const holding = (of: Partial<Record<keyof Gate, readonly Holdable[]>>): Gate => {
	const part = (name: keyof Gate) => {
		const holds = (of[name] ?? []).map(hold)
		return { ...openGate[name], holds, state: holds.length > 0 ? 'held' : 'nothing-found' } as const
	}
	return { person: part('person'), left: part('left'), right: part('right') }
}
describe('the gate in few words', () => {
	test('quiet where nothing is held', () => {
		expect(gateInFew(openGate)).toMatchObject({ state: 'nothing-held', says: 'Nothing held' })
	})
	test('not established is said, where nothing is held', () => {
		const gate: Gate = { ...openGate, left: { ...openGate.left, state: 'not-established' } }
		expect(gateInFew(gate).state).toBe('not-established')
	})
	test('the player, then a limb', () => {
		const gate = holding({ person: ['sport', 'match'], left: ['test'] })
		expect(gateInFew(gate).says).toBe('Held: sport, matches, left leg tests')
	})
	test('the gravest first, both limbs once, and what is held of the player is not said again', () => {
		const gate = holding({ person: ['sport'], left: ['weight', 'sport'], right: ['weight'] })
		expect(gateInFew(gate).says).toBe('Held: both legs weight-bearing, sport')
	})
	test('many are counted; the whole names each', () => {
		const gate = holding({ person: ['season', 'sport', 'match', 'impact', 'purchase', 'shelf'] })
		expect(gateInFew(gate)).toMatchObject({
			says: 'Held: sport, matches, running, buying +2',
			whole: 'Held: sport, matches, running, buying, models, season',
		})
	})
})
describe('what is missing', () => {
	const asked = ['feet.left.ballWidthMm', 'feet.right.ballWidthMm', 'feet.left.heelToBallMm']
	test('left and right are one name', () => {
		const lacks = lacksOf(
			asked,
			{},
			asked.map((path) => ({ path })),
		)
		expect(shortNames(lacks)).toEqual(['Ball width, both', 'Heel to ball, left'])
	})
	test('what cannot be read stands first, once', () => {
		const raw = { 'feet.right.ballWidthMm': '999', 'ankles.left.lungeCm': 'x' }
		const lacks = lacksOf(
			asked,
			raw,
			asked.slice(1).map((path) => ({ path })),
		)
		expect(lacks.map(({ name, unread }) => [name, unread])).toEqual([
			['Ball width, right', true],
			['Heel to ball, left', false],
		])
	})
	test('lists and questions have their own names', () => {
		const paths = ['play.surfaces', 'footwear', 'screening']
		const lacks = lacksOf(
			paths,
			{},
			paths.map((path) => ({ path })),
		)
		expect(shortNames(lacks)).toEqual(['Surfaces', 'Pairs owned', 'Warning signs'])
	})
})
const sample = (name: string): Visit =>
	visitSchema.parse(JSON.parse(readFileSync(`assets/demo/visit-${name}.json`, 'utf8')))
describe('the feet in few words', () => {
	const adolescent = assess(sample('adolescent'))
	test('what decided, the difference and the widths', () => {
		const { sizing } = adolescent
		const longer = sizing.right.lengthMm! - sizing.left.lengthMm!
		expect(decidedWords(sizing)).toBe('heel to toe, right')
		expect(differenceWords(sizing)).toContain(`right ${longer} mm longer`)
		expect(widthWords(sizing)).toBe(`left ${sizing.left.widthMm}, right ${sizing.right.widthMm} mm`)
		expect(widthHolds(adolescent)).toBe('')
	})
	test('the pair that is too short stands first', () => {
		const rooms = pairRooms(adolescent)
		expect(rooms.length).toBeGreaterThan(1)
		expect(rooms[0]).toMatchObject({ says: 'too short', unfit: true })
		expect(rooms.at(-1)!.unfit).toBe(false)
	})
	test('nothing speaks against buying, unless it is held', () => {
		const { sizing, prescription } = adolescent
		expect(notToBuyBy({ sizing, prescription: { ...prescription, gate: openGate } })).toBe('')
		const gate = holding({ person: ['purchase'] })
		expect(notToBuyBy({ sizing, prescription: { ...prescription, gate } })).toContain('held')
		expect(
			notToBuyBy({
				sizing: { ...sizing, usableForBuying: false },
				prescription: { ...prescription, gate: openGate },
			}),
		).toContain('Not usable')
	})
	test('one foot alone has no difference', () => {
		const { feet, ...rest } = sample('adolescent')
		const { right: _, ...left } = feet!
		expect(differenceWords(assess({ ...rest, feet: left }).sizing)).toBe('')
	})
})
