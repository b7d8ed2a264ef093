/** What is held, and until when, in words of the screen. Pure. */
import type {
	Assessment,
	Gate,
	Hold,
	Holdable,
	Question,
} from '../../../../shared/engine/findings/assessment.ts'
import { listed } from '../../../../shared/engine/words/en/format.ts'
import { holdableNames, signInWords, untilNames } from '../../../../shared/engine/words/en/gate.ts'
import { kindOf, type QuestionKind } from './questionTitles.ts'

const holdsOf = (gate: Gate): Hold[] =>
	(['person', 'left', 'right'] as const).flatMap((part) => gate[part].holds)
/** 'suspected bone stress, left'. */
const signOf = ({ rule, side }: Hold): string =>
	`${signInWords(rule.replace(/^screening\./, ''))}${side === undefined ? '' : `, ${side}`}`
const once = (texts: readonly string[]): string[] => [...new Set(texts)]

/** What one sign holds until one thing. */
export interface HeldBy {
	key: string
	sign: string
	what: string
	until: string
	since: string
}
/** The holds of a gate: those of one sign that end alike stand together. */
export function heldBy(gate: Gate): HeldBy[] {
	const groups = Map.groupBy(holdsOf(gate), (hold) => `${signOf(hold)} ${hold.until}`)
	return [...groups].flatMap(([key, holds]) =>
		holds.slice(0, 1).map((first) => ({
			key,
			sign: signOf(first),
			what: listed(once(holds.map(({ what }) => holdableNames[what]))),
			until: untilNames[first.until],
			since: holds.map(({ since }) => since).sort()[0] ?? first.since,
		})),
	)
}
/** What holds a question of a kind. */
const heldWith: Readonly<Partial<Record<QuestionKind, readonly Holdable[]>>> = {
	raise: ['raise'],
	pair: ['purchase', 'shelf'],
	insert: ['insert'],
}
/** The grey line of a held question: by which sign, and what lifts it. */
export function heldLine({ prescription: { gate } }: Assessment, { id }: Question): string {
	const what = heldWith[kindOf(id)]
	const holds = holdsOf(gate).filter((hold) => !what || what.includes(hold.what))
	const signs = once(holds.map(signOf))
	const untils = once(holds.map(({ until }) => untilNames[until]))
	if (signs.length === 0) return 'held'
	return `held: ${signs.join('; ')}; lifted when ${listed(untils)}`
}
