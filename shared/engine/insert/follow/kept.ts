/**
 * The insert that goes on being worn: what is proposed to be done to it, each foot on its own, and
 * what speaks against it. Nothing on a limb whose insert is held.
 */
import { isHeld } from '../../facts/held.ts'
import type {
	Gate,
	InsertKept,
	InsertResult,
	InsertSide,
	ProposedAdjustment,
} from '../../findings/assessment.ts'
import { present } from '../../plain/present.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { Adjustment, InsertWorn } from '../../visit/recorded/insert-worn.ts'
import { bothSides } from '../../visit/sides.ts'
import { type InsertPlace, insertPlaces } from '../../visit/terms.ts'
import type { Side, Visit } from '../../visit/visit.ts'
import { elementName } from '../../words/en/insert-names.ts'
import { type Statement, state } from '../../words/statement.ts'
import { practiceBasis } from '../basis.ts'
import { type AdjustRow, adjustRows } from './adjust.table.ts'

/** Places of trouble that were told of a side, each once in their order; 'none' is none. */
const placesTold = (worn: InsertWorn | undefined, side: Side): InsertPlace[] =>
	insertPlaces.filter((place) => worn?.[side]?.places?.includes(place))
/** Whether any place of trouble was told. */
export const isInsertTrouble = ({ insertWorn }: Pick<Visit, 'insertWorn'>): boolean =>
	bothSides.some((side) => placesTold(insertWorn, side).length > 0)
/**
 * Whether the insert of before goes on being worn. Where nobody said so it is open: an insert is then
 * proposed as if there were none.
 */
function isKept({ insertWorn, since }: Visit): boolean {
	if (!insertWorn || insertWorn.stillWorn === false) return false
	const now = since?.worn?.find(({ what }) => what === 'insert')?.now
	if (now !== undefined) return now === 'still-worn'
	return insertWorn.stillWorn === true || isInsertTrouble({ insertWorn })
}
/** What is proposed for one place of one foot. */
interface Told {
	side: Side
	place: InsertPlace
	worn: InsertWorn
	/** As it is proposed today. */
	today: InsertSide
	protocol: Protocol
}
const hasElement = ({ worn, side }: Told, element: string): boolean =>
	(worn[side]?.elements ?? []).some((one) => one.element === element)
/** The day on which the same was done to it before. */
const doneOn = ({ worn, side, place }: Told, { act, element }: AdjustRow): string | undefined =>
	(worn.adjusted ?? []).findLast(({ lines }) =>
		lines.some(
			(line) =>
				line.side === side && line.place === place && line.act === act && line.element === element,
		),
	)?.on
/** The first that the insert has something for and that was not done before. */
function rowFor(told: Told): AdjustRow | undefined {
	// nothing goes into a boot that has no room for what is in it
	const isFull = placesTold(told.worn, told.side).includes('too-thick')
	const rows = adjustRows[told.place]
		.filter(
			({ whereHas, element }) => !whereHas || (element !== undefined && hasElement(told, element)),
		)
		.filter(({ act }) => !(isFull && act === 'add'))
	return rows.find((row) => doneOn(told, row) === undefined) ?? rows.at(-1)
}
/** What was done there before, whatever it was: it is known, and not repeated unseen. */
const doneBefore = ({ worn, side, place }: Told): Statement[] =>
	(worn.adjusted ?? []).flatMap(({ on, lines }) =>
		lines
			.filter((line) => line.side === side && line.place === place)
			.map((line) => state('insert.adjust-done-before', { on, line })),
	)
function againstOf(told: Told, { act, element }: AdjustRow): Statement[] {
	const { today, protocol } = told
	const isCalled = today.elements.some((one) => one.element === element)
	return [
		...(act === 'take-off' && element !== undefined && isCalled
			? [state('insert.adjust-still-called-for', { element })]
			: []),
		...(act === 'grind' && element === 'shell'
			? [state('insert.adjust-thin-shell', { leastMm: protocol.value('insert.bootShellMinMm') })]
			: []),
		...doneBefore(told),
	]
}
function adjustmentFor(told: Told): ProposedAdjustment[] {
	const row = rowFor(told)
	if (!row) return []
	const { side, place, protocol } = told
	const { act, element, amount } = row
	const line: Adjustment = present({
		side,
		place,
		act,
		element,
		...(amount && { [amount.unit]: protocol.value(amount.key) }),
	})
	const rule = `adjusting an insert: ${element === undefined ? 'the insert' : elementName(element)}`
	return [
		{
			...state('insert.adjust', { line }),
			line,
			basis: amount ? protocol.basis(rule, amount.key) : practiceBasis(rule),
			against: againstOf(told, row),
		},
	]
}
/** @returns undefined where no insert of ours goes on being worn, or each foot's is held */
export function keptInsert(
	visit: Visit,
	today: InsertResult,
	gate: Gate,
	protocol: Protocol,
): InsertKept | undefined {
	const { insertWorn: worn } = visit
	if (!worn || !isKept(visit)) return undefined
	const free = bothSides.filter(
		(side) => today[side].state !== 'held' && !isHeld(gate, 'insert', side),
	)
	if (free.length === 0) return undefined
	const proposed = free.flatMap((side) =>
		placesTold(worn, side).flatMap((place) =>
			adjustmentFor({ side, place, worn, today: today[side], protocol }),
		),
	)
	return { orderedOn: worn.orderedOn, lines: proposed.map(({ line }) => line), proposed }
}
