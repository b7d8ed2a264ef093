/** What a user notices in each release, from the list that is kept by hand. */
import { Box, Paper, Typography } from '@mui/material'
import changes from '../../../assets/changes.md?raw'
import { type ChangeGroup, releasesOf } from '../../parts/help/changes.ts'

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
		<Paper key={title} component="section" variant="outlined" sx={{ p: 2 }}>
			<Typography variant="h2">{title}</Typography>
			{groups.map((group) => (
				<Group key={group.title} {...group} />
			))}
		</Paper>
	))
}
