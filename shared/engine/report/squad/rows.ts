/** What the list says of one player. */
import { isHeld } from '../../facts/held.ts'
import type { OwnedVerdict } from '../../findings/assessment.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import { isPlanDeclined } from '../../visit/agreement.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Side } from '../../visit/visit.ts'
import { listed } from '../../words/en/format.ts'
import type { Speak } from '../../words/speak.ts'
import { actionWords, capital, dateWords, shown } from '../../words/words.ts'
import { nameOf } from '../base.ts'
import type { BlockOf } from '../document.ts'
import { doneWords } from '../done-told.ts'
import { wrongPairsOf } from '../page-one/head.ts'
import { wholeInside } from '../page-one/inside.ts'
import { pairName } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { actionIn } from '../referral/reasons.ts'
import { buyingWaits, waits } from '../waits.ts'
import type { SquadMember } from './member.ts'

type Column = readonly [
	head: string,
	width: number | '*',
	align: 'left' | 'right',
	cell: (member: SquadMember, plan: SettledPlan) => string,
]
const isSeen = ({ state = 'assessed' }: SquadMember): boolean => state === 'assessed'
const whoWords = (visit: SquadMember['visit'], t: Speak): string =>
	t('squad.nameBorn', { name: nameOf(visit), born: dateWords(visit.player.birthDate) })
function stateWords(member: SquadMember, t: Speak): string {
	const { state = 'assessed', visit, decisions } = member
	const words = {
		assessed: t('squad.assessed'),
		refused: t('squad.refused'),
		absent: t('squad.absent'),
	}[state]
	if (!isSeen(member)) return words
	const declined = isPlanDeclined(decisions) ? [t('squad.declined')] : []
	return [dateWords(visit.visitDate), ...declined].join(', ')
}
/** What is asked for, and what the player may not do. */
function actionCell(member: SquadMember, { gate }: SettledPlan, t: Speak): string {
	const held = [
		...(isHeld(gate, 'match') ? [t('squad.noMatch')] : []),
		...(isHeld(gate, 'impact') ? [t('squad.noRunning')] : []),
	]
	return capital([...held, actionWords[actionIn(member)]].join('; '))
}
/** The inside length that stands, in whole mm; none to buy by while buying waits. */
function inside(end: 'min' | 'max', { gate, size }: SettledPlan, t: Speak): string {
	if (buyingWaits(gate)) return t('squad.insideWaits')
	return size.boots ? wholeInside(size.boots)[end] : t('squad.notDecided')
}
const count = ({ owned }: SettledPlan, verdicts: readonly OwnedVerdict[]): string =>
	String(owned.filter(({ verdict }) => verdicts.includes(verdict)).length)
/** What is added under a heel in the pairs that are raised, mm. */
function raise(side: Side, { gate, raise: { pairs } }: SettledPlan): string {
	if (waits(gate, 'raise')) return ''
	const figures = [...new Set(pairs.map((pair) => pair[side].addMm).filter((mm) => mm > 0))]
	const [least, ...more] = figures.toSorted((one, other) => one - other)
	if (least === undefined) return ''
	const most = more.at(-1)
	return most === undefined ? shown(least) : `${shown(least)} to ${shown(most)}`
}
const columns = (t: Speak): readonly Column[] => [
	[t('squad.playerBorn'), '*', 'left', ({ visit }) => whoWords(visit, t)],
	[t('squad.state'), 68, 'left', (member) => stateWords(member, t)],
	[t('squad.action'), 96, 'left', (member, plan) => actionCell(member, plan, t)],
	[t('squad.insideMin'), 38, 'right', (_, plan) => inside('min', plan, t)],
	[t('squad.insideMax'), 38, 'right', (_, plan) => inside('max', plan, t)],
	[t('squad.pairsReplace'), 40, 'right', (_, plan) => count(plan, ['replace', 'stop-wearing'])],
	[t('squad.pairsChange'), 40, 'right', (_, plan) => count(plan, ['modify', 'training-only'])],
	[t('squad.raiseLeft'), 34, 'right', (_, plan) => raise('left', plan)],
	[t('squad.raiseRight'), 34, 'right', (_, plan) => raise('right', plan)],
	[t('squad.review'), 66, 'left', (_, { review }) => (review ? dateWords(review.date) : '')],
	[t('squad.missing'), 44, 'right', ({ assessment }) => String(assessment.missing.length)],
]
/** Columns that are known of a player who was not assessed. */
const known = 2
/** A row a player, in the order given. */
export function memberTable(members: readonly SquadMember[], t: Speak): BlockOf<'table'> {
	const all = columns(t)
	return {
		kind: 'table',
		caption: t('squad.caption'),
		head: all.map(([head]) => head),
		widths: all.map(([, width]) => width),
		align: all.map(([, , align]) => align),
		rows: members.map((member) => {
			const plan = planOf(member)
			return all.map(([, , , cell], at) => (at < known || isSeen(member) ? cell(member, plan) : ''))
		}),
	}
}
/** What was done; where it was about what is private, that it is recorded. */
function whatWasDone(member: SquadMember, t: Speak): string {
	const { referralDone, screeningDone = [] } = member.decisions
	if (!referralDone?.trim() && screeningDone.length === 0) return t('squad.notReferred')
	const done = doneWords([], member).join(' ')
	return done === '' ? t('squad.doneInRecord') : t('squad.done', { done })
}
/** What stands in the box of a player who is stopped: what else is held, who did what, when next. */
export function stopText(member: SquadMember, t: Speak): string {
	const { visit } = member
	const plan = planOf(member)
	const noWeight = bothSides.filter((side) => isHeld(plan.gate, 'weight', side))
	const wrong = wrongPairsOf(plan)?.pairs.map(({ id }) => pairName(id, visit, t))
	return [
		t('squad.bornSeen', {
			born: dateWords(visit.player.birthDate),
			seen: dateWords(visit.visitDate),
		}),
		...noWeight.map((side) => t('squad.noWeight', { side })),
		...(wrong ? [t('pageOne.notThese', { pairs: listed(wrong) })] : []),
		whatWasDone(member, t),
		...(plan.review ? [t('squad.reviewOn', { date: dateWords(plan.review.date) })] : []),
	].join(' ')
}
