/** Why a player should look for what: one row a reason, so that no reason is read twice. */

import type { Feature } from '../../visit/terms.ts'
import type { Speak } from '../../words/speak.ts'
import { isOpenTo, privateTopicOf } from '../../words/statement.ts'
import { rulesPartlyDropped, standingWishes } from '../decided.ts'
import type { ReportInput } from '../inputs.ts'
import type { Notes } from '../notes.ts'
import { readerOf, toldBy } from '../reader.ts'

/** What a reason asks for, what it speaks against, and the numbers of its notes. */
export interface ReasonRow {
	seek: Set<Feature>
	avoid: Set<Feature>
	marks: Set<string>
}
const kinds = ['seek', 'avoid'] as const
type Kind = (typeof kinds)[number]
const empty = (): ReasonRow => ({ seek: new Set(), avoid: new Set(), marks: new Set() })

class Reasons {
	readonly #rows = new Map<string, ReasonRow>()
	/** What is asked for without a reason that the player reads. */
	readonly #unsaid = empty()
	rowOf(says: string | undefined): ReasonRow {
		if (says === undefined) return this.#unsaid
		const row = this.#rows.get(says) ?? empty()
		this.#rows.set(says, row)
		return row
	}
	/** Asks for a feature without a reason, unless one asks for it already. */
	ask(kind: Kind, feature: Feature): void {
		if (![...this.#rows.values()].some((row) => row[kind].has(feature)))
			this.#unsaid[kind].add(feature)
	}
	/** The reasons in the order in which they were told, those without words last. */
	all(lastTitle: string): Map<string, ReasonRow> {
		const { seek, avoid } = this.#unsaid
		return seek.size + avoid.size === 0
			? this.#rows
			: new Map([...this.#rows, [lastTitle, this.#unsaid]])
	}
}
/**
 * What a reason has no words for, and what is left of one that the clinician dropped in part, stands
 * under the last one: what was measured. No note names the rule of a private reason; to a reader who
 * was not told of it, it gives its feature and nothing else.
 */
export function reasonRows(input: ReportInput, notes: Notes, t: Speak): Map<string, ReasonRow> {
	const { target } = input.assessment.footwear
	const reader = readerOf('player', input)
	const inPart = rulesPartlyDropped(target, input.decisions)
	const reasons = new Reasons()
	for (const kind of kinds)
		for (const { feature, wishes } of standingWishes(target[kind], kind, input.decisions)) {
			for (const wish of wishes.filter((one) => isOpenTo(reader.told, one))) {
				const row = reasons.rowOf(inPart.has(wish.rule) ? undefined : toldBy(reader, wish))
				if (privateTopicOf(wish) === undefined) row.marks.add(notes.mark(wish.basis))
				row[kind].add(feature)
			}
			reasons.ask(kind, feature)
		}
	return reasons.all(t('player.becauseMeasured'))
}
