/**
 * What the boot holds: height at the heel, depth over the toes. What does not fit is cut, left out,
 * or kept to trainers, by the settle table, before anything is proposed.
 */
import type { InsertConflict, InsertElement } from '../findings/assessment.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import type { ElementId } from '../words/en/insert-names.ts'
import { state } from '../words/statement.ts'
import { practiceBasis } from './basis.ts'
import { conflictOn } from './conflict.ts'
import type { InsertRoom } from './facts.ts'
import type { WantedRaise } from './raised.ts'
import { stateOf } from './said.ts'
import {
	heelGiving,
	overToes,
	type ThinnerRow,
	thinner,
	toeGiving,
	underHeel,
} from './settle.table.ts'
import type { Settled } from './settle.ts'

const forefootElements: readonly string[] = [
	'forefoot-post-medial',
	'forefoot-post-lateral',
	'forefoot-stiffener',
	'forefoot-cushion',
	'first-head-aperture',
]
/** It needs an insert of full length. */
export const isUnderForefoot = ({ element }: Pick<InsertElement, 'element'>): boolean =>
	forefootElements.includes(element)
/** For both shoes, or for the shorter leg. */
export const isRaise = ({ element }: Pick<InsertElement, 'element'>): boolean =>
	element === 'heel-raise' || element === 'leg-length-raise'
/** Thickness of some elements together where they lie in a boot, mm. */
export const thicknessMm = (
	elements: readonly InsertElement[],
	names: readonly string[],
	shoe: 'boot' | 'trainer' = 'boot',
): number =>
	elements
		.filter(({ element, where }) => names.includes(element) && (where === 'both' || where === shoe))
		.reduce((sumMm, { value }) => sumMm + (value ?? 0), 0)

/** Where the thickness is added up, how much of it there may be, and what gives way. */
interface Place {
	at: 'heel' | 'toes'
	names: readonly ElementId[]
	giving: readonly (readonly ElementId[])[]
	limitMm: number
	basis: Basis
}
/** A hundredth of a millimetre is no height. */
const fits = (elements: readonly InsertElement[], { names, limitMm }: Place): boolean =>
	thicknessMm(elements, names) <= limitMm + 0.005

/** The element thinner by so much, or left out; undefined where it gives nothing. */
function cutBy(
	element: InsertElement,
	overMm: number,
	protocol: Protocol,
): { left?: InsertElement } | undefined {
	const row: ThinnerRow | undefined = thinner.find((one) => one.element === element.element)
	const { value = 0, where, range } = element
	if (!row || where === 'trainer' || value === 0) return undefined
	const leastMm = row.least === undefined ? 0 : protocol.value(row.least)
	// to tenths, downwards, so that what is left fits
	const wantedMm = Math.floor(Math.max(leastMm, value - overMm) * 10 + 1e-6) / 10
	if (wantedMm >= value) return undefined
	const leftMm = row.wholeOrNone && range && wantedMm < range[0] ? 0 : wantedMm
	return leftMm > 0 ? { left: thinned(element, leftMm) } : {}
}
/** The element with less of it; a shell says what it would have been. */
function thinned(element: InsertElement, leftMm: number): InsertElement {
	const { code, params, value } = element
	if (code !== 'insert.shell') return { ...element, value: leftMm }
	const said = { thicknessMm: leftMm, wishedMm: params?.wishedMm ?? value }
	return { ...element, value: leftMm, ...stateOf(code, said) }
}
interface Cut {
	element: ElementId
	wasMm: number
	leftMm: number
}
const cutSaid = (
	{ element, wasMm, leftMm }: Cut,
	{ at, basis }: Place,
	side: Side,
): InsertConflict =>
	conflictOn(
		side,
		state('insert.settled-room', {
			side,
			element,
			at,
			wasMm: rounded(wasMm, 1),
			leftMm: rounded(leftMm, 1),
			limitMm: basis.limit?.value,
		}),
		[element],
		basis,
		`${at}-${element}`,
	)
/** The elements with some of them thinner or out, as far as it needs; in the order named. */
function given(
	elements: readonly InsertElement[],
	giving: readonly ElementId[],
	place: Place,
	protocol: Protocol,
): { elements: InsertElement[]; cut: Cut[] } {
	let kept = [...elements]
	const cut: Cut[] = []
	for (const name of giving) {
		const overMm = thicknessMm(kept, place.names) - place.limitMm
		const found = kept.find(({ element }) => element === name)
		const less = found && overMm > 0 ? cutBy(found, overMm, protocol) : undefined
		if (!found || !less) continue
		kept = kept.flatMap((element) => (element === found ? (less.left ?? []) : [element]))
		cut.push({ element: name, wasMm: found.value ?? 0, leftMm: less.left?.value ?? 0 })
	}
	return { elements: kept, cut }
}
/** The first set of the table whose giving way makes the rest fit; undefined where none does. */
function fitting(
	elements: readonly InsertElement[],
	place: Place,
	side: Side,
	protocol: Protocol,
): Settled | undefined {
	if (fits(elements, place)) return { elements: [...elements], settled: [] }
	for (const giving of place.giving) {
		const { elements: left, cut } = given(elements, giving, place, protocol)
		if (!fits(left, place)) continue
		return {
			elements: left,
			settled: cut.map((one) => cutSaid(one, place, side)),
		}
	}
	return undefined
}
/** With some elements kept to trainers; the boot goes without them. */
function toTrainers(
	elements: readonly InsertElement[],
	isOut: (element: InsertElement) => boolean,
	place: Place,
	side: Side,
): { elements: InsertElement[]; said: InsertConflict } {
	const out = elements.filter((element) => element.where !== 'trainer' && isOut(element))
	const names = out.map(({ element }) => element as ElementId)
	return {
		elements: elements.map((element) =>
			out.includes(element) ? { ...element, where: 'trainer' as const } : element,
		),
		said: conflictOn(
			side,
			state('insert.settled-trainers', {
				side,
				elements: names,
				at: place.at,
				totalMm: rounded(thicknessMm(elements, place.names), 1),
				limitMm: rounded(place.limitMm, 1),
			}),
			names,
			place.basis,
			place.at,
		),
	}
}
/** What cushions pain now gives way to a raise for pain only. */
const withoutCushion = (names: readonly ElementId[]): boolean => !names.includes('heel-cushion')
const isCover = ({ element }: InsertElement): boolean => element === 'cover'
/** Everything that may give way does, and the raise makes do with what is left. */
function mostGiven(
	elements: readonly InsertElement[],
	place: Place,
	side: Side,
	protocol: Protocol,
): Settled {
	const { elements: left, cut } = given(elements, place.giving.at(-1) ?? [], place, protocol)
	return { elements: left, settled: cut.map((one) => cutSaid(one, place, side)) }
}
/**
 * @param raise what is wanted besides; where it does not fit whole it is given what the rest leaves,
 * which is the raise room's to say
 */
function heelSettled(
	elements: readonly InsertElement[],
	raise: WantedRaise,
	place: Place,
	side: Side,
	protocol: Protocol,
): Settled {
	const alone = fitting(elements, place, side, protocol)
	const withRaise = {
		...place,
		limitMm: Math.max(0, place.limitMm - raise.mm),
		giving: raise.forPain ? place.giving : place.giving.filter(withoutCushion),
	}
	const whole = fitting(elements, withRaise, side, protocol)
	if (whole) return whole
	const most = mostGiven(elements, withRaise, side, protocol)
	if (fits(most.elements, place)) return most
	if (alone) return alone
	const isOut = (element: InsertElement) => !isCover(element)
	const { elements: left, said } = toTrainers(elements, isOut, place, side)
	return { elements: left, settled: [said] }
}
function toesSettled(
	elements: readonly InsertElement[],
	place: Place,
	side: Side,
	protocol: Protocol,
): Settled {
	const whole = fitting(elements, place, side, protocol)
	if (whole) return whole
	const isThick = ({ element }: InsertElement) => (overToes as readonly string[]).includes(element)
	const { elements: left, said } = toTrainers(elements, isThick, place, side)
	return { elements: left, settled: [said] }
}
/**
 * The elements as a boot holds them.
 * @param room the boot: its liner comes out and gives its room back; over the toes nothing is said
 * where the depth is not known
 * @param raise the heel raise that is wanted in boots besides
 */
export function asTheBootHolds(
	elements: readonly InsertElement[],
	room: InsertRoom | undefined,
	raise: WantedRaise,
	side: Side,
	protocol: Protocol,
): Settled {
	const linerMm = room?.removableLiner ? (room.linerMm ?? 0) : 0
	const heel: Place = {
		at: 'heel',
		names: underHeel,
		giving: heelGiving,
		limitMm: protocol.value('insert.raiseMaxMm') + linerMm,
		basis: protocol.basis('height added at the heel', 'insert.raiseMaxMm'),
	}
	const high = heelSettled(elements, raise, heel, side, protocol)
	const depthMm = room?.depthOverToesMm
	const full = high.elements.some(isUnderForefoot)
	if (depthMm === undefined || !full) return high
	const toes: Place = {
		at: 'toes',
		names: overToes,
		giving: toeGiving,
		limitMm: Math.max(0, depthMm),
		basis: practiceBasis('room over the toes'),
	}
	const deep = toesSettled(high.elements, toes, side, protocol)
	return { elements: deep.elements, settled: [...high.settled, ...deep.settled] }
}
