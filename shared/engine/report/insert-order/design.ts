/** The design of each side: every element of the catalogue, what is wanted and what is not. */
import type { DecidedElement, DecidedInsert } from '../../insert/decided.ts'
import { isRaise } from '../../insert/room-in-boot.ts'
import { termWords } from '../../visit/terms.ts'
import type { Side } from '../../visit/visit.ts'
import { amount, asPart, number, unitOf } from '../../words/en/format.ts'
import { elementNames } from '../../words/en/insert-names.ts'
import type { Speak } from '../../words/speak.ts'
import { spokenTo } from '../../words/statement.ts'
import { capital, sideWords } from '../../words/words.ts'
import { heading, say, small } from '../base.ts'
import type { Block } from '../document.ts'
import type { Notes } from '../notes.ts'

const names: Readonly<Record<string, string>> = elementNames
const catalogue = Object.keys(names)

/**
 * A side that is held or needs no insert orders none and has no table. What pulls apart is among the
 * cautions: an order goes out settled. `isRaised`: the raise is listed for each pair, and no other
 * figure of it stands.
 */
export function design(
	{ insert, isRaised }: { insert: DecidedInsert; isRaised: boolean },
	side: Side,
	notes: Notes,
	t: Speak,
): Block[] {
	const title = heading(t(`common.${side}`), { level: 2 })
	const ordered = insert[side]
	if (ordered.length === 0) return [title, say(t('order.notNeeded'))]
	const pulls = insert.result.conflicts.filter((conflict) => conflict.side === side)
	const cautions = [
		...new Set([
			...ordered.flatMap(({ element }) => toldToMaker(element)),
			...pulls.flatMap((pull) => spokenTo('laboratory', pull) ?? []),
		]),
	]
	return [
		title,
		designTable({ ordered, isRaised }, side, notes, t),
		...(cautions.length > 0 ? [small(`${t('order.notes')}: ${cautions.join(' ')}`)] : []),
	]
}
/** The cautions that concern whoever makes it. */
const toldToMaker = ({ cautioned = [] }: DecidedElement['element']): string[] =>
	cautioned.flatMap((caution) => spokenTo('laboratory', caution) ?? [])
function designTable(
	{ ordered, isRaised }: { ordered: readonly DecidedElement[]; isRaised: boolean },
	side: Side,
	notes: Notes,
	t: Speak,
): Block {
	const foreign = ordered
		.map(({ element }) => element.element)
		.filter((name) => !catalogue.includes(name))
	// every element of the catalogue stands in the table, so that what is not wanted is said as well
	const rows = [...catalogue, ...foreign].map((name) =>
		designRow(
			name,
			ordered.find(({ element }) => element.element === name),
			isRaised,
			t,
		),
	)
	const basis = [...new Set(ordered.map(({ element }) => notes.mark(element.basis)))].join(' ')
	return {
		kind: 'table',
		caption: `${t('order.designCaption')}. ${capital(sideWords[side])}. ${basis}`.trim(),
		head: [t('order.element'), t(`common.${side}`), t('order.where'), t('order.how')],
		rows,
		widths: [120, 96, 74, '*'],
	}
}
function designRow(
	name: string,
	ordered: DecidedElement | undefined,
	isRaised: boolean,
	t: Speak,
): string[] {
	const shownName = capital(names[name] ?? termWords(name))
	if (!ordered) return [shownName, t('order.none'), '', '']
	const places = {
		boot: t('order.inBoot'),
		trainer: t('order.inTrainer'),
		both: t('order.inBoth'),
	}
	const place = places[ordered.element.where]
	if (isRaised && isRaise(ordered.element))
		return [shownName, t('order.raiseAbove'), place, ordered.decision?.says ?? '']
	return [shownName, amountOf(ordered.element, t), place, remarkOf(ordered, t)]
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
