/** What was sent in error and is not done with, with the clock that runs out first. Pure. */
import type { OutputOf } from '../../../shared/contract.ts'
import { breachStepNames } from '../../../shared/desk/outbox/breach.ts'

type Breach = OutputOf<'breaches.list'>['breaches'][number]

/** The time that is left, or that passed. */
export const timeLeft = (count: number, unit: string): string =>
	count < 0 ? `passed ${-count} ${unit} ago` : `${count} ${unit} left`
/** The authority is told within hours, the assessment made within days. */
const clockOf = ({ done, authorityHoursLeft, assessDaysLeft }: Breach): string =>
	done['tell-authority'] ? timeLeft(assessDaysLeft, 'days') : timeLeft(authorityHoursLeft, 'hours')

/** Those with a step left, as the buttons over the room say it. */
export const openClocks = (breaches: readonly Breach[]) =>
	breaches
		.filter(({ done }) => breachStepNames.some((step) => !done[step]))
		.map((breach) => ({
			breachId: breach.breachId,
			words: `Sent in error, ${breach.number}: ${clockOf(breach)}`,
		}))
