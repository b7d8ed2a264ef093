/** Who took over may not read the page that stood there: the list of players is for everybody. */
import { useEffect, useRef } from 'react'
import { goTo } from '../parts/goTo.ts'
import { mayStand } from '../routes.tsx'
import type { Status } from './useSession.ts'

/**
 * Only where another person came: whoever goes to such an address is told by the host why not.
 * @returns whether the page is being left; nothing of it is shown or asked meanwhile
 */
export function useTurnedAway(address: string, person: Status['person']): boolean {
	const settled = useRef(person?.personId)
	const isLeaving = settled.current !== person?.personId && !mayStand(address, person?.role)
	useEffect(() => {
		if (isLeaving) goTo('/players')
		else settled.current = person?.personId
	}, [isLeaving, person?.personId])
	return isLeaving
}
