/** The design of each side: every element of the catalogue, what is wanted and what is not. */
import type { DecidedElement, DecidedInsert } from '../../insert/decided.ts'
import { elementWords } from '../../insert/element-words.ts'
import { termWords } from '../../visit/terms.ts'
import type { Side } from '../../visit/visit.ts'
import type { Speak } from '../../words/speak.ts'
import { capital, shown, sideWords } from '../../words/words.ts'
import { heading, say, small } from '../base.ts'
import type { Block } from '../document.ts'
import type { Notes } from '../notes.ts'

const names: Readonly<Record<string, string>> = elementWords
const catalogue = Object.keys(names)

/** A side that is stopped or needs no insert says so and has no table. */
export function design(insert: DecidedInsert, side: Side, notes: Notes, t: Speak): Block[] {
	const title = heading(t(`common.${side}`), { level: 2 })
	const { state, stoppedBy } = insert.result[side]
	if (state === 'stopped') {
		const reasons = stoppedBy.map((stop) => stop.says).join(' ')
		const text = t('order.stopped', { reasons })
		return [title, { kind: 'alert', title: t(`common.${side}`), text }]
	}
	const ordered = insert[side]
	if (ordered.length === 0) return [title, say(t('order.notNeeded'))]
	const cautions = [...new Set(ordered.flatMap(({ element }) => element.cautions))]
	return [
		title,
		designTable(ordered, side, notes, t),
		...(cautions.length > 0 ? [small(`${t('order.notes')}: ${cautions.join(' ')}`)] : []),
	]
}
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
		head: [t('order.element'), t(`common.${side}`), t('order.where'), t('common.why')],
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
	const amount = value === undefined ? '' : `${shown(value)} ${unit ?? ''}`.trim()
	return [amount, choice ?? ''].filter(Boolean).join(', ') || t('common.yes')
}
function remarkOf({ element, decision }: DecidedElement, t: Speak): string {
	const { range, value, unit = '' } = element
	const asProposed = decision === undefined || decision.choice === 'accept'
	return [
		asProposed ? t('order.asProposed') : t('order.decided', { why: decision.why ?? '' }),
		decision?.says ?? '',
		range && value !== undefined
			? t('order.within', { min: range[0], max: range[1], unit }).trim()
			: '',
	]
		.filter(Boolean)
		.join('; ')
}
