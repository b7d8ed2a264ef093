/** What a file brought: counts, what was put aside, who may stand here twice. */
import { Alert, Box, Typography } from '@mui/material'
import type { OutputOf } from '../../../shared/contract.ts'
import { counted } from '../../parts/Needs.tsx'
import { Way } from '../../parts/panels.tsx'

export type Listed = OutputOf<'outreach.list'>
export type Merged = OutputOf<'outreach.merge'>
export type Duplicate = Listed['merged'][number]['duplicates'][number]

export function Counts({
	counts,
	trailRows,
	owner,
}: {
	counts: Merged['counts']
	trailRows: number
	owner?: boolean
}) {
	const { before, after, in: inFile, added, already, quarantined, heldBack } = counts
	const { refused = 0, waits = 0 } = counts
	const further = [
		refused > 0 ? `${refused} not taken in` : '',
		waits > 0 ? `${waits} waiting for a newer version here` : '',
	].filter(Boolean)
	return (
		<Typography>
			Records before {before}, after {after}. In the file {inFile}: {added} added, {already} here
			already, {quarantined} put aside, {heldBack} held back since they were destroyed here{further}
			.
			{trailRows > 0
				? ` With ${counted(trailRows, 'row')} of the laptop's audit trail, kept as a section of ` +
					'its own under Audit trail.'
				: ''}
			{trailRows > 0 && owner ? ' ' : null}
			{trailRows > 0 && owner ? <Way to="#/records/audit">Read the trail</Way> : null}
		</Typography>
	)
}
/** What changes, player by player, in sentences. */
export function Changes({ changes, more = 0 }: { changes: Merged['changes']; more?: number }) {
	if (changes.length === 0) return <Typography>Nothing here changes by it.</Typography>
	return (
		<Box component="section" aria-label="What changes" sx={{ display: 'grid', gap: 1.5 }}>
			<Typography>What changes, player by player:</Typography>
			{changes.map((player) => (
				<Box key={player.playerId}>
					<Typography sx={{ fontWeight: 600 }}>{player.name}</Typography>
					<Box component="ul" sx={{ m: 0, pl: 3 }}>
						{player.lines.map((line) => (
							<Typography component="li" key={line}>
								{line}
							</Typography>
						))}
						{player.more > 0 && <Typography component="li">And {player.more} more.</Typography>}
					</Box>
				</Box>
			))}
			{more > 0 && <Typography>And {counted(more, 'more player')}.</Typography>}
		</Box>
	)
}
const whyAlike: Record<Duplicate['why'], string> = {
	twin: 'same birth date and family name. Twins, or one person entered twice?',
	'same-person': 'perhaps one person entered twice.',
}
export const twice = ({ name, likeName, why }: Duplicate) =>
	`${name} came from the laptop, and ${likeName} stands at home: ${whyAlike[why]}`
export function Found({
	found,
}: {
	found: Pick<Merged, 'quarantined'> & Partial<Pick<Merged, 'notices'>>
}) {
	return (
		<>
			{found.notices?.map((notice) => (
				<Alert key={notice} severity="warning">
					{notice}
				</Alert>
			))}
			{found.quarantined.map(({ record, says, why }) => (
				<Alert key={record} severity={why === 'waits' ? 'warning' : 'error'}>
					{says}
				</Alert>
			))}
		</>
	)
}
