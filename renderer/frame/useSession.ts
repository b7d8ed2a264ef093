/** The gate: whether the workstation is to be set up, locked or open, and who works here. */
import { useCallback, useEffect } from 'react'
import type { OutputOf } from '../../shared/contract.ts'
import { goTo } from '../parts/goTo.ts'
import { askStatusAgain, change, forgetAnswers, useHost, useHostAction } from '../query.ts'

/** How often the gate asks whether the records were locked elsewhere. */
const askEveryMs = 10_000
/** How soon it asks again where the host did not answer yet: nobody has to. */
const askSoonMs = 2000

export type Status = OutputOf<'session.status'>
export interface Session {
	/** undefined until the host first answered */
	status: Status | undefined
	/** why the host did not answer, or did not lock */
	trouble: string
	/** looks at once whether the gate opened or closed */
	look: () => void
	lock: () => void
}
function againAfter(status: Status | undefined): number | undefined {
	if (status === undefined) return askSoonMs
	return status.state === 'open' ? askEveryMs : undefined
}
export function useSession(): Session {
	const known = useHost(
		'session.status',
		{},
		// while it is set up nobody asks: the recovery key must stay on the screen
		{ againAfterMs: againAfter },
	)
	const locking = useHostAction()
	useEffect(() => {
		addEventListener('focus', askStatusAgain)
		return () => removeEventListener('focus', askStatusAgain)
	}, [])
	useForgetting(known.value)
	const { run } = locking
	const lock = useCallback(
		() =>
			run(async () => {
				await change('session.lock', {})
				goTo('/players')
				return ''
			}),
		[run],
	)
	return { status: known.value, trouble: known.says || locking.says, look: known.again, lock }
}
/** What one person was answered is not there for the next one. */
function useForgetting(status: Status | undefined): void {
	const whose = status && `${status.state} ${status.person?.personId ?? ''}`
	// biome-ignore lint/correctness/useExhaustiveDependencies: the change is the event
	useEffect(forgetAnswers, [whose])
}
