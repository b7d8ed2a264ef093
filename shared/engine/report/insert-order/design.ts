/** The design of each side: every element of the catalogue, what is wanted and what is not. */
import type { DecidedElement, DecidedInsert } from '../../insert/decided.ts'
import { termWords } from '../../visit/terms.ts'
import type { Side } from '../../visit/visit.ts'
import { amount, asPart, number, unitOf } from '../../words/en/format.ts'
import { elementNames } from '../../words/en/insert-names.ts'
import type { Speak } from '../../words/speak.ts'
import { spokenTo, state } from '../../words/statement.ts'
import { capital, sideWords } from '../../words/words.ts'
import { heading, say, small } from '../base.ts'
import type { Block } from '../document.ts'
import type { Notes } from '../notes.ts'

const names: Readonly<Record<string, string>> = elementNames
const catalogue = Object.keys(names)

/** A side that is stopped or needs no insert says so and has no table. */
export function design(insert: DecidedInsert, side: Side, notes: Notes, t: Speak): Block[] {
	const title = heading(t(`common.${side}`), { level: 2 })
	const { state: outcome, stoppedBy } = insert.result[side]
	if (outcome === 'stopped') {
		const stops = stoppedBy.map(({ id }) => id)
		const reasons = spokenTo('laboratory', state('insert.stopped', { side, stops })) ?? ''
		const text = t('order.stopped', { reasons })
		return [title, { kind: 'alert', title: t(`common.${side}`), text }]
	}
	const ordered = insert[side]
	if (ordered.length === 0) return [title, say(t('order.notNeeded'))]
	const cautions = [...new Set(ordered.flatMap(({ element }) => toldToMaker(element)))]
	return [
		title,
		designTable(ordered, side, notes, t),
		...(cautions.length > 0 ? [small(`${t('order.notes')}: ${cautions.join(' ')}`)] : []),
	]
}
/** The cautions that concern whoever makes it. */
const toldToMaker = ({ cautioned = [] }: DecidedElement['element']): string[] =>
	cautioned.flatMap((caution) => spokenTo('laboratory', caution) ?? [])
function designTable(
	ordered: readonly DecidedElement[],
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
function designRow(name: string, ordered: DecidedElement | undefined, t: Speak): string[] {
	const shownName = capital(names[name] ?? termWords(name))
	if (!ordered) return [shownName, t('order.none'), '', '']
	const places = {
		boot: t('order.inBoot'),
		trainer: t('order.inTrainer'),
		both: t('order.inBoth'),
	}
	return [
		shownName,
		amountOf(ordered.element, t),
		places[ordered.element.where],
		remarkOf(ordered, t),
	]
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
