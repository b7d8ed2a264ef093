/** The signs of one visit as the gate reads them: from the answers and from the facts alike. */
import { recordedConditions, unclearedSurgery } from '../conditions/query.ts'
import { acute } from '../facts/acute.ts'
import { isMinor } from '../facts/age.ts'
import { footAtRisk } from '../facts/foot-at-risk.ts'
import { noInsertReasons } from '../facts/no-insert.ts'
import { severePain } from '../facts/severe-pain.ts'
import { swollenReasons } from '../facts/swollen.ts'
import type { Action, ScreeningResult } from '../findings/screening-result.ts'
import { addDays } from '../plain/days.ts'
import { holdRows } from '../protocol/holds.table.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type Holdable, type HoldUntil, heldOfLimb } from '../visit/holdables.ts'
import { bothSides } from '../visit/sides.ts'
import type { Condition } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { actsFrom, placesOf } from './placed.ts'

/** One thing held by a sign; `limb` where it is held on a limb only. */
export interface OpenHold {
	what: Holdable
	until: HoldUntil
	limb?: Side
}
/** A sign with what it still holds. */
export interface OpenSign {
	rule: string
	/** The limb that it is on; absent where it has no place. */
	side?: Side
	action: Action
	holds: OpenHold[]
	/** Ids of findings of the visit at which it was found. */
	because: string[]
	/** The day of the visit at which it was found. */
	since: string
	/** From this day on an outcome can be about it: that of the injury, else of the visit. */
	from: string
}

const healing: readonly Condition[] = [
	'navicular-stress-fracture',
	'fifth-metatarsal-stress-fracture',
	'second-metatarsal-stress-fracture',
]
/** Rules of the facts that hold on a limb. */
function factRules(visit: Visit, screening: ScreeningResult, side: Side, protocol: Protocol) {
	const recovering = recordedConditions(visit, healing, { side }).filter(
		({ status }) => status === 'recovering',
	)
	const rules: [rule: string, holds: boolean][] = [
		['foot-at-risk', footAtRisk(visit, screening, side).length > 0],
		['uncleared-surgery', unclearedSurgery(visit, { side }).length > 0],
		['severe-pain', severePain(visit, side, protocol).length > 0],
		['bone-stress-recovering', recovering.length > 0],
	]
	return rules.filter(([, holds]) => holds).map(([rule]) => rule)
}
const isOfLimb = (what: Holdable): boolean => (heldOfLimb as readonly string[]).includes(what)
/** What the rows of a rule hold; on both limbs where the sign has no place. */
function holdsOf(rule: string, action: Action, side: Side | undefined): OpenHold[] {
	const limbs = side === undefined ? bothSides : [side]
	return holdRows
		.filter((row) => row.rule === rule && actsFrom(row, action))
		.flatMap(({ holds }) => Object.entries(holds) as [HoldUntil, readonly Holdable[]][])
		.flatMap(([until, whats]) =>
			whats.flatMap((what): OpenHold[] =>
				isOfLimb(what) ? limbs.map((limb) => ({ what, until, limb })) : [{ what, until }],
			),
		)
}
/** An outcome of the day of the injury, or later, can be about it. */
function injuredOn({ visitDate, screening }: Visit, rule: string): string {
	const daysAgo = screening?.injury?.daysAgo
	const ofInjury = [
		'screening.ottawa-met',
		'screening.ottawa-not-applicable',
		'screening.newly-unable',
	]
	return daysAgo !== undefined && ofInjury.includes(rule) ? addDays(visitDate, -daysAgo) : visitDate
}

const holdsInsert = (signs: readonly OpenSign[], side: Side): boolean =>
	signs.some(({ holds }) => holds.some(({ what, limb }) => what === 'insert' && limb === side))
/** Every sign of a visit, also those that hold nothing: they still ask for somebody. */
export function signsOf(visit: Visit, screening: ScreeningResult, protocol: Protocol): OpenSign[] {
	const spoken = new Set(screening.findings.map(({ id }) => id))
	const sign = (rule: string, action: Action, side: Side | undefined, id: string): OpenSign => ({
		rule,
		...(side === undefined ? {} : { side }),
		action,
		holds: holdsOf(rule, action, side),
		because: spoken.has(id) ? [id] : [],
		since: visit.visitDate,
		from: injuredOn(visit, rule),
	})
	const answered = screening.items
		.filter((item) => item.state === 'yes')
		.flatMap((item) => {
			const places = placesOf(item, visit.screening)
			const sides = places.length > 0 ? places : [undefined]
			return sides.map((side) => sign(item.code, item.action, side, item.id))
		})
	const ofFacts = (rule: string, side: Side): OpenSign => ({
		...sign(rule, 'proceed', side, ''),
		because: [`screening.${rule}.${side}`],
	})
	const known = bothSides.flatMap((side) =>
		factRules(visit, screening, side, protocol).map((rule) => ofFacts(rule, side)),
	)
	// told by the size itself: the sign has no sentence of its own
	const swollen = bothSides
		.filter(
			(side) => swollenReasons(visit, acute(visit, screening, side, protocol), side).length > 0,
		)
		.map(
			(side): OpenSign => ({
				...sign('swollen-foot', 'proceed', side, ''),
				because: [`sizing.not-for-buying.${side}`],
			}),
		)
	const signs = [...answered, ...known, ...swollen]
	const minor = isMinor(visit, protocol)
	// only where no other sign holds it already: one outcome then ends the hold
	const waiting = bothSides.filter(
		(side) => !holdsInsert(signs, side) && noInsertReasons(visit, minor, side).length > 0,
	)
	return [...signs, ...waiting.map((side) => ofFacts('no-insert-yet', side))]
}
