/** Where a restore left something to decide, the owner meets the list first. */
import { useEffect } from 'react'
import { call } from '../host.ts'
import { goTo } from '../parts/goTo.ts'

/** @param role of who works here */
export function useAfterRestore(role: string | undefined): void {
	useEffect(() => {
		if (role !== 'owner') return
		void call('backups.cameBack', {}).then(
			({ lists }) => {
				if (lists.some(({ open }) => open > 0)) goTo('/records/after-restore')
			},
			// the page itself says why it cannot be answered
			() => {},
		)
	}, [role])
}
