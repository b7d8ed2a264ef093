/** Laws of the gate: more danger never lowers it, acts lift nothing, sides are alike. */
import type { Gate } from '../../../shared/engine/findings/gate.ts'
import { actions } from '../../../shared/engine/findings/screening-result.ts'
import { flagRows } from '../../../shared/engine/screening/flags.table.ts'
import { bothSides, otherSide, perSide } from '../../../shared/engine/visit/sides.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { swapVisit } from '../mirror.ts'
import { assessed, type Case, type Law, unless } from './case.ts'

const parts = ['person', 'left', 'right'] as const
const held = (gate: Gate): string[] =>
	parts.flatMap((part) => gate[part].holds.map(({ what }) => `${part} ${what}`))
const gateWith = (visit: Visit, { earlier }: Case): Gate =>
	assessed(visit, earlier).prescription.gate
/** One sign for each case: over many visits each is met. */
const signOf = ({ visit }: Case): string => {
	const text = JSON.stringify(visit)
	return flagRows[text.length % flagRows.length]?.key ?? 'fever'
}
const moreDanger: Law = (one) => {
	const sign = signOf(one)
	const screening = { ...one.visit.screening, [sign]: true }
	const gate = gateWith({ ...one.visit, screening }, one)
	const before = one.assessment.prescription.gate
	const now = new Set(held(gate))
	return [
		...held(before)
			.filter((hold) => !now.has(hold))
			.map((hold) => `${hold} let go by ${sign}`),
		...parts.flatMap((part) =>
			unless(
				actions.indexOf(gate[part].action) >= actions.indexOf(before[part].action),
				`${part}: ${before[part].action} lowered by ${sign}`,
			),
		),
	]
}
const actsLiftNothing: Law = (one) => {
	const { visit, assessment } = one
	const gate = assessment.prescription.gate
	const rules = new Set(parts.flatMap((part) => gate[part].holds.map(({ rule }) => rule)))
	const acts = [...rules].slice(0, 20).map((rule) => ({
		rule,
		side: 'both' as const,
		result: 'excluded' as const,
		found: 'sent, advised, letter written',
		how: 'letter',
		by: 'clinician',
		on: visit.visitDate,
		treatingDoctorClears: true,
		lifts: [],
	}))
	if (acts.length === 0) return []
	const outcomes = [...(visit.outcomes ?? []), ...acts]
	const now = new Set(held(gateWith({ ...visit, outcomes }, one)))
	return held(gate)
		.filter((hold) => !now.has(hold))
		.map((hold) => `${hold} lifted by an act`)
}
/** What of a plan has sides, without words and ids. */
function seen({ assessment: { prescription: plan, insert, sizing } }: Case, swap: boolean) {
	const of = <Value>(sides: Readonly<Record<'left' | 'right', Value>>) =>
		perSide((side) => sides[swap ? otherSide(side) : side])
	return {
		gate: perSide((side) => held(plan.gate).filter((hold) => hold.startsWith(side)).length),
		states: of(perSide((side) => plan.gate[side].state)),
		lengths: of(perSide((side) => sizing[side].lengthMm ?? 0)),
		fit: sizing.fitLengthMm,
		raise: plan.raise.pairs.map((pair) => [pair.pair, of(perSide((side) => pair[side]))]),
		insert: of(
			perSide((side) => [
				insert[side].state,
				insert[side].elements.map(({ element, value, where }) => [element, value, where]),
			]),
		),
		pairs: plan.pairs.map(({ id, sole, seek, avoid, shelf, means, ownedPair }) => [
			id,
			sole,
			seek.toSorted(),
			avoid.toSorted(),
			shelf,
			means,
			ownedPair,
		]),
		owned: plan.owned.map(({ id, verdict, by }) => [id, verdict, by]),
		questions: plan.questions.map(({ id, held: waits, unchanged }) => [id, waits, unchanged]),
		review: plan.review?.date,
		priorities: plan.priorities.map(({ code, who, when }) => [code, who, when]),
	}
}
const mirror: Law = (one) => {
	const visit = swapVisit(one.visit)
	const earlier = one.earlier.map(swapVisit)
	const other = { visit, earlier, assessment: assessed(visit, earlier) }
	const [mine, turned] = [seen(one, false), seen(other, true)]
	const { gate, ...rest } = mine
	const { gate: turnedGate, ...turnedRest } = turned
	return [
		...bothSides.flatMap((side) =>
			unless(gate[side] === turnedGate[otherSide(side)], `${side} holds another number`),
		),
		...Object.entries(rest).flatMap(([part, value]) => {
			const [first, second] = [value, turnedRest[part as keyof typeof rest]].map((of) =>
				JSON.stringify(of),
			)
			return unless(first === second, `${part}: ${first} is ${second} in the mirror`)
		}),
	]
}
export const danger: Readonly<Record<string, Law>> = {
	'more danger never lowers the gate': moreDanger,
	'an outcome that lifts nothing lifts nothing': actsLiftNothing,
	'mirror in, mirror out': mirror,
}
