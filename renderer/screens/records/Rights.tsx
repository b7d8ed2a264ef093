/** What each role sees and may do, as the host itself goes by it. */
import { Box, Typography } from '@mui/material'
import type { OutputOf } from '../../../shared/contract.ts'
import { staffRoles } from '../../../shared/desk/records/people.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Disclosure } from '../../parts/Disclosure.tsx'
import { Panel, Rows } from '../../parts/panels.tsx'
import { useHost } from '../../query.ts'

type Right = OutputOf<'people.rights'>['rows'][number]

/** What a role is not told stands under what is done. @param head the area, where it begins here */
const Does = ({ right: { does, but }, head }: { right: Right; head: string | undefined }) => (
	<Box sx={{ minWidth: '14rem' }}>
		{head && <Typography sx={{ fontWeight: 600, fontSize: '1rem', pt: 1 }}>{head}</Typography>}
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
					rows={rows.map((right, at) => ({
						key: right.does,
						cells: [
							<Does
								key="does"
								right={right}
								head={rows[at - 1]?.area === right.area ? undefined : right.area}
							/>,
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
			<Disclosure label="All that can be done, by role">
				<Table />
			</Disclosure>
		</Panel>
	)
}
