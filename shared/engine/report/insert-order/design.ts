/** The design: a row an element that is ordered, what each side has of it, and that nothing else is. */
import type { DecidedElement, DecidedInsert } from '../../insert/decided.ts'
import { isRaise } from '../../insert/room-in-boot.ts'
import { present } from '../../plain/present.ts'
import { bothSides, perSide } from '../../visit/sides.ts'
import type { Side } from '../../visit/visit.ts'
import { amount, asPart, number, unitOf } from '../../words/en/format.ts'
import { elementName, elementNames } from '../../words/en/insert-names.ts'
import type { Speak } from '../../words/speak.ts'
import { spokenTo } from '../../words/statement.ts'
import { capital, sideWords } from '../../words/words.ts'
import { say, small } from '../base.ts'
import type { Block } from '../document.ts'
import type { Notes } from '../notes.ts'

const catalogue = Object.keys(elementNames)

/** An element as each side has it; a side that has none of it is absent. */
interface Ordered {
	name: string
	left?: DecidedElement
	right?: DecidedElement
}
/** In the order of the catalogue, what it does not know last. */
function orderedElements({ left, right }: DecidedInsert): Ordered[] {
	const names = [...left, ...right].map(({ element }) => element.element)
	const foreign = [...new Set(names)].filter((name) => !catalogue.includes(name))
	return [...catalogue, ...foreign]
		.filter((name) => names.includes(name))
		.map((name) => {
			const on = (side: readonly DecidedElement[]) =>
				side.find(({ element }) => element.element === name)
			return { name, ...present({ left: on(left), right: on(right) }) }
		})
}
interface Given {
	insert: DecidedInsert
	/** The raise is listed for each pair, and no other figure of it stands. */
	isRaised: boolean
}
/**
 * One table of what is ordered, left beside right; nothing of one side is taken from the other. What
 * pulls apart is among the cautions: an order goes out settled.
 */
export function design({ insert, isRaised }: Given, notes: Notes, t: Speak): Block[] {
	const ordered = orderedElements(insert)
	const basis = new Set(
		ordered.flatMap((row) => bothSides.flatMap((side) => row[side]?.element.basis ?? [])),
	)
	for (const one of basis) notes.mark(one)
	const sides = bothSides.filter((side) => insert[side].length > 0)
	const without = bothSides.filter((side) => insert[side].length === 0)
	return [
		{
			kind: 'table',
			caption: t('order.designCaption'),
			head: [
				t('order.element'),
				...sides.map((side) => t(`common.${side}`)),
				t('order.where'),
				t('order.how'),
			],
			rows: ordered.map((row) => rowOf(row, { sides, isRaised }, t)),
			widths: [96, ...sides.map(() => 84), 76, '*'],
		},
		say(
			[
				t('order.elseNone'),
				...without.map((side) => t('order.sideNone', { side: capital(sideWords[side]) })),
			].join(' '),
		),
		...bothSides.flatMap((side) => cautionsOf(insert, side, t)),
	]
}
function rowOf(
	row: Ordered,
	{ sides, isRaised }: { sides: readonly Side[]; isRaised: boolean },
	t: Speak,
): string[] {
	const cells = perSide((side) => {
		const ordered = row[side]
		return ordered && cellsOf(ordered, isRaised, t)
	})
	const each = sides.map((side) => cells[side]?.amount ?? t('order.none'))
	return [
		capital(elementName(row.name)),
		...each,
		alikeOrEach(cells.left?.where, cells.right?.where),
		alikeOrEach(cells.left?.how, cells.right?.how),
	]
}
/** Said once where both sides have it alike, or one side alone has it. */
function alikeOrEach(left: string | undefined, right: string | undefined): string {
	if (left === undefined || right === undefined || left === right) return left ?? right ?? ''
	return [
		[sideWords.left, left],
		[sideWords.right, right],
	]
		.filter(([, says]) => says !== '')
		.map(([side, says]) => `${capital(side ?? '')}: ${says}.`)
		.join(' ')
}
function cellsOf(ordered: DecidedElement, isRaised: boolean, t: Speak) {
	const places = {
		boot: t('order.inBoot'),
		trainer: t('order.inTrainer'),
		both: t('order.inBoth'),
	}
	const where = places[ordered.element.where]
	if (isRaised && isRaise(ordered.element))
		return { amount: t('order.raiseAbove'), where, how: ordered.decision?.says ?? '' }
	return { amount: amountOf(ordered.element, t), where, how: remarkOf(ordered, t) }
}
/** What whoever makes it has to mind on a side. */
function cautionsOf(insert: DecidedInsert, side: Side, t: Speak): Block[] {
	const pulls = insert.result.conflicts.filter((conflict) => conflict.side === side)
	const told = [
		...insert[side].flatMap(({ element }) => element.cautioned ?? []),
		...pulls,
	].flatMap((caution) => spokenTo('laboratory', caution) ?? [])
	if (told.length === 0) return []
	const words = { side: capital(sideWords[side]), cautions: [...new Set(told)].join(' ') }
	return [small(t('order.notes', words))]
}
function amountOf({ value, unit, choice }: DecidedElement['element'], t: Speak): string {
	const howMuch = value === undefined ? '' : amount(value, unit ?? '')
	return [howMuch, choice ?? ''].filter(Boolean).join(', ') || t('common.yes')
}
/** The prescriber's own words, or how the element is made; why it was changed; its usual amount. */
function remarkOf({ element, decision }: DecidedElement, t: Speak): string {
	const { range, value, unit = '' } = element
	const isChanged = decision !== undefined && decision.choice !== 'accept'
	const made = decision?.says ?? asPart(spokenTo('laboratory', element) ?? '')
	return [
		made,
		isChanged && t('order.decided', { why: decision.why ?? '' }),
		range &&
			value !== undefined &&
			t('order.within', {
				min: number(range[0]),
				max: number(range[1]),
				unit: unitOf(range[1], unit),
			}).trim(),
	]
		.filter((remark) => !!remark)
		.join('; ')
}
