/** What a file brought: counts, what was put aside, who may stand here twice. */
import { Alert, Typography } from '@mui/material'
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
	return (
		<Typography>
			Records before {counts.before}, after {counts.after}. In the file {counts.in}: {counts.added}{' '}
			added, {counts.already} here already, {counts.quarantined} put aside, {counts.heldBack} held
			back since they were destroyed here.
			{trailRows > 0
				? ` With ${counted(trailRows, 'row')} of the laptop's audit trail, kept as a section of ` +
					'its own under Audit trail.'
				: ''}
			{trailRows > 0 && owner ? <Way to="#/records/audit">Read the trail</Way> : null}
		</Typography>
	)
}
export const twice = (duplicate: Duplicate) =>
	`${duplicate.name} came home and ${duplicate.likeName} stands here: ` +
	`${duplicate.why === 'twin' ? 'same birth date and family name. Twins, or one person entered twice?' : 'perhaps one person entered twice.'}`
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
			{found.quarantined.map(({ record, says }) => (
				<Alert key={record} severity="error">
					{says}
				</Alert>
			))}
		</>
	)
}
