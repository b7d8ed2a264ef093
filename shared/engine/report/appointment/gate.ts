/** What is held, on whom and until what; what was not asked. */
import type { Gate, GatePart, Holdable } from '../../findings/assessment.ts'
import { listed } from '../../words/en/format.ts'
import { coreQuestionNames, heldWords, signInWords, untilNames } from '../../words/en/gate.ts'
import type { Speak } from '../../words/speak.ts'
import { isOpenTo } from '../../words/statement.ts'
import { actionWords, capital, dateWords, sideWords } from '../../words/words.ts'
import type { Section } from '../base.ts'
import type { ReportInput } from '../inputs.ts'
import { planOf } from '../plan-of.ts'
import { actionIn } from '../referral/reasons.ts'

type Hold = GatePart['holds'][number]
/** Alike in what it holds, until when and since when. */
const sameHold = (one: Hold, other: Hold): boolean =>
	one.what === other.what && one.until === other.until && one.since === other.since
/** What is held alike stands in one line, on both sides too. */
function holdLines({ person, left, right }: Gate, t: Speak): string[] {
	const onBoth = left.holds.filter((hold) => right.holds.some((other) => sameHold(hold, other)))
	const alone = ({ holds }: GatePart) =>
		holds.filter((hold) => !onBoth.some((other) => sameHold(hold, other)))
	const placed = [
		...person.holds.map((hold) => ({ hold, where: '' })),
		...onBoth.map((hold) => ({ hold, where: t('common.both') })),
		...alone(left).map((hold) => ({ hold, where: t('common.leftSide') })),
		...alone(right).map((hold) => ({ hold, where: t('common.rightSide') })),
	]
	const alike = Map.groupBy(placed, ({ hold, where }) => `${where} ${hold.until} ${hold.since}`)
	return [...alike.values()].flatMap((group) => {
		const [first] = group
		return first ? [holdLine(group, first, t)] : []
	})
}
function holdLine(
	group: readonly { hold: Hold }[],
	{ hold, where }: { hold: Hold; where: string },
	t: Speak,
): string {
	const what = [...new Set(group.map((one): Holdable => one.hold.what))]
	const held = where === '' ? heldWords(what) : `${heldWords(what)} (${where})`
	return t('sheet.hold', {
		what: capital(held),
		until: untilNames[hold.until],
		since: dateWords(hold.since),
	})
}
/** What the signs are called: their sentences may tell what is private. */
const nameOfSign = ({ id, side }: { id: string; side: keyof typeof sideWords }): string =>
	[signInWords(id.split('.')[1] ?? id), sideWords[side]].filter(Boolean).join(', ')
/** Why, by name; what is private stands in the record alone. */
function reasons({ assessment }: ReportInput, { person, left, right }: Gate, t: Speak): string {
	const because = new Set([person, left, right].flatMap((part) => part.because))
	const behind = [...assessment.screening.items, ...assessment.findings].filter(({ id }) =>
		because.has(id),
	)
	const open = behind.filter((one) => isOpenTo([], one))
	const names = [...new Set(open.map(nameOfSign))]
	return [
		...(names.length > 0 ? [`${capital(names.join('; '))}.`] : []),
		...(open.length < behind.length ? [t('sheet.privateReason')] : []),
	].join(' ')
}
export const gate: Section = (input, _notes, t) => {
	const { gate: held } = planOf(input)
	const lines = holdLines(held, t)
	const action = actionIn(input)
	if (lines.length === 0 && action === 'proceed') return []
	return [
		{
			kind: 'alert',
			title: capital(
				lines.length > 0 ? t('sheet.held', { action: actionWords[action] }) : actionWords[action],
			),
			text: [reasons(input, held, t), ...lines].filter(Boolean).join(' '),
		},
	]
}
/** Core questions that nobody asked, by name. */
export function unasked(input: ReportInput): string {
	const { person, left, right } = planOf(input).gate
	const ids = new Set([person, left, right].flatMap((part) => part.unasked))
	return ids.size === 0 ? '' : listed([...ids].map((id) => coreQuestionNames[id] ?? id))
}
