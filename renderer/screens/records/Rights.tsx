/** What each role sees and may do, as the host itself goes by it. */
import { Box, Typography } from '@mui/material'
import type { OutputOf } from '../../../shared/contract.ts'
import { staffRoles } from '../../../shared/desk/records/people.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Disclosure } from '../../parts/Disclosure.tsx'
import { Panel, Rows } from '../../parts/panels.tsx'
import { useHost } from '../../query.ts'

type Right = OutputOf<'people.rights'>['rows'][number]

/** The table has room for a word in each cell; what a role is not told stands under what is done. */
const Does = ({ right: { area, does, but } }: { right: Right }) => (
	<Box sx={{ minWidth: '14rem' }}>
		<Typography variant="body2" sx={{ fontWeight: 600 }}>
			{area}
		</Typography>
		{does}
		{but.map(({ role, says }) => (
			<Typography key={role} variant="body2" color="textSecondary">
				{role}: {says}
			</Typography>
		))}
	</Box>
)
const cellOf = ({ who, but }: Right, role: Right['who'][number]): string => {
	if (!who.includes(role)) return 'no'
	return but.some((one) => one.role === role) ? 'in part' : 'yes'
}
function Table() {
	const rights = useHost('people.rights', {})
	return (
		<Answered of={rights} what="the rights">
			{({ rows }) => (
				<Rows
					label="What each role sees and may do"
					heads={['What', ...staffRoles]}
					empty=""
					rows={rows.map((right) => ({
						key: right.does,
						cells: [
							<Does key="does" right={right} />,
							...staffRoles.map((role) => cellOf(right, role)),
						],
					}))}
				/>
			)}
		</Answered>
	)
}
export function Rights() {
	return (
		<Panel
			title="What each role sees and may do"
			hint="The workstation refuses whatever this table does not allow, on every page alike."
		>
			<Disclosure label="Show the table">
				<Table />
			</Disclosure>
		</Panel>
	)
}
