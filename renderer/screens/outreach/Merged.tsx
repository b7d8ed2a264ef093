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
	const { before, after, in: inFile, added, already, quarantined, heldBack } = counts
	return (
		<Typography>
			Records before {before}, after {after}. In the file {inFile}: {added} added, {already} here
			already, {quarantined} put aside, {heldBack} held back since they were destroyed here.
			{trailRows > 0
				? ` With ${counted(trailRows, 'row')} of the laptop's audit trail, kept as a section of ` +
					'its own under Audit trail.'
				: ''}
			{trailRows > 0 && owner ? <Way to="#/records/audit">Read the trail</Way> : null}
		</Typography>
	)
}
const whyAlike: Record<Duplicate['why'], string> = {
	twin: 'same birth date and family name. Twins, or one person entered twice?',
	'same-person': 'perhaps one person entered twice.',
}
export const twice = ({ name, likeName, why }: Duplicate) =>
	`${name} came home and ${likeName} stands here: ${whyAlike[why]}`
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
