/** What a user notices in each release, from the list that is kept by hand. */
import { Box, Typography } from '@mui/material'
import changes from '../../../assets/changes.md?raw'
import { type ChangeGroup, releasesOf } from '../../parts/help/changes.ts'
import { Panel } from '../../parts/panels.tsx'

function Group({ title, items }: ChangeGroup) {
	return (
		<>
			{title ? (
				<Typography variant="h3" sx={{ mt: 2 }}>
					{title}
				</Typography>
			) : null}
			<Box component="ul" sx={{ mt: 1, mb: 0, pl: 3 }}>
				{items.map((item) => (
					<li key={item}>{item}</li>
				))}
			</Box>
		</>
	)
}
/** The newest release first. */
export function News() {
	return releasesOf(changes).map(({ title, groups }) => (
		<Panel key={title} title={title}>
			{groups.map((group) => (
				<Group key={group.title} {...group} />
			))}
		</Panel>
	))
}
