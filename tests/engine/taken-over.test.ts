/** What a player who comes back has as on the visit before: only on demand, and nothing of its day. */
import { expect, it } from 'vitest'
import {
	isUntouched,
	toTakeOver,
	withTakenOver,
} from '../../renderer/screens/assessment/takenOver.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { askedAndNo, visitOf } from './gate-visit.ts'

const pair = { id: 'p1', name: 'match boots', insideLengthMm: 254 }
const last: Visit = visitOf(askedAndNo, {
	play: { code: 'association', matchesPerWeek: 1 },
	conditions: [
		{ condition: 'bunionette', side: 'left', status: 'current', painWorst: 4, note: 'sore' },
		{ condition: 'ankle-osteoarthritis', side: 'right', status: 'past' },
	],
	footwear: [
		{ ...pair, comfort: 8, hurts: false, minutesWorn: 900, damage: ['upper-cracked'] },
		{ id: 'p2', name: 'new pair', plannedAs: 'match' },
	],
	feet: { stance: 'standing', left: { heelToToeMm: 246 } },
})
const draft = { visit: visitOf({}), raw: {}, decisions: noDecisions }

it('takes over what is played, had and owned, and nothing that is measured or asked anew', () => {
	expect(toTakeOver(last)).toEqual({
		play: last.play,
		conditions: [
			{ condition: 'bunionette', side: 'left' },
			{ condition: 'ankle-osteoarthritis', side: 'right', status: 'past' },
		],
		footwear: [pair],
	})
	const { visit } = withTakenOver(draft, last)
	expect(visit).toEqual({ ...draft.visit, ...toTakeOver(last) })
	expect([visit.feet, visit.screening]).toEqual([draft.visit.feet, draft.visit.screening])
})
it('writes over nothing that was typed', () => {
	const typed = { ...draft, raw: { 'play.matchesPerWeek': 'x' } }
	const owned = { ...draft, visit: { ...draft.visit, footwear: [pair] } }
	for (const one of [typed, owned]) {
		expect(isUntouched(one)).toBe(false)
		expect(withTakenOver(one, last)).toBe(one)
	}
})
