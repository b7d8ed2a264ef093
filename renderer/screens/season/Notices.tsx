/** What keeps the season from being planned or given out. */
import { Alert, AlertTitle, Link } from '@mui/material'
import type { Opened } from './useSeasonEdits.ts'

interface NoticesProps {
	playerId: string
	opened: Opened
	/** The plan is older than what it was made from. */
	stale: boolean
}
export function Notices({ playerId, opened, stale }: NoticesProps) {
	const { blocked, basis, pairs, planned } = opened
	const assessment = `#/assessment/${playerId}`
	return (
		<>
			{blocked !== undefined && (
				<Alert severity="error" role="alert">
					<AlertTitle>No rotation while this stands</AlertTitle>
					{blocked.says}
				</Alert>
			)}
			{!basis && (
				<Alert severity="info">
					This player has no assessment yet. <Link href={assessment}>Start one</Link> and enter the
					pairs they wear; sessions can be entered here already.
				</Alert>
			)}
			{basis && pairs.length === 0 && (
				<Alert severity="info">
					No pair is recorded. <Link href={assessment}>Enter the pairs in the assessment</Link>,
					with the sole of each.
				</Alert>
			)}
			{stale && (
				<Alert severity="warning" role="status">
					{planned?.basisChanged
						? 'Pairs, feet or findings changed since this plan was made'
						: 'Sessions changed since this plan was made'}
					: plan again. Chart and calendar wait for it.
				</Alert>
			)}
		</>
	)
}
