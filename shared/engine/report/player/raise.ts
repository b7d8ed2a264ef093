/** The heel raise: one figure for each pair and foot, how it is worn in, and when it ends. */
import { heading, type Section, say } from '../base.ts'
import { isOpen, planOf } from '../plan-of.ts'
import { isRaised, raiseLines } from '../raise-lines.ts'
import { readerOf, toldBy } from '../reader.ts'
import { waits } from '../waits.ts'

export const raise: Section = (input, _notes, t) => {
	const plan = planOf(input)
	if (!isRaised(plan) || waits(plan.gate, 'raise')) return []
	const reader = readerOf('player', input)
	const told = (statements: readonly Parameters<typeof toldBy>[1][]) => [
		...new Set(statements.flatMap((statement) => toldBy(reader, statement) ?? [])),
	]
	const limits = told(plan.raise.pairs.flatMap((pair) => pair.limits))
	const steps = told(plan.raise.steps)
	const items = [...raiseLines(plan, input.visit, t), ...limits]
	return [
		heading(t('player.raise')),
		say(isOpen(plan, 'raise') ? t('player.raiseProposed') : t('player.raiseWanted')),
		{ kind: 'list', items },
		say(t('player.raiseHow')),
		...(steps.length > 0 ? [{ kind: 'list' as const, items: steps }] : []),
	]
}
