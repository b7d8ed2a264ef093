/** The report of a visit on the page. */
import { useCallback, useEffect, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { urlOf } from '../../parts/files.ts'
import { useHostAction } from '../../query.ts'

type SignedLine = OutputOf<'players.open'>['visits'][number]
export interface ShownReport {
	visitId: string
	/** an earlier version; absent: the latest */
	version: number | undefined
	title: string
	url: string
	fileName: string
}
export interface Reports {
	shown: ShownReport | undefined
	/** why a report could not be opened */
	says: string
	/** @param version an earlier version; without it the latest */
	open: (visit: SignedLine, version?: number) => void
	close: () => void
}
export function useReports(): Reports {
	const [shown, setShown] = useState<ShownReport>()
	const { says, run } = useHostAction()
	useEffect(() => shown && (() => URL.revokeObjectURL(shown.url)), [shown])
	const open = useCallback(
		({ visitId, visitDate }: SignedLine, version?: number) =>
			run(async () => {
				const { base64, fileName } = await call('reports.open', { visitId, version })
				const which = version === undefined ? '' : `, version ${version}`
				setShown({
					visitId,
					version,
					title: `Report of ${dayInWords(visitDate)}${which}`,
					url: urlOf(base64),
					fileName,
				})
				return ''
			}),
		[run],
	)
	return { shown, says, open, close: () => setShown(undefined) }
}
