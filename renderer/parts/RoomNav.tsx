/**
 * The pages of a room as links; the one on screen is marked for the eye and for a screen reader.
 */
import { Box, Link } from '@mui/material'

interface RoomPage {
	to: string
	title: string
	/** the page on screen */
	here?: boolean
}
export function RoomNav({ label, pages }: { label: string; pages: readonly RoomPage[] }) {
	return (
		<Box
			component="nav"
			aria-label={label}
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				columnGap: 3,
				mt: 1,
			}}
		>
			{pages.map(({ to, title, here }) => (
				<Link
					key={to}
					href={to}
					underline="hover"
					aria-current={here ? 'page' : undefined}
					sx={{
						display: 'inline-flex',
						alignItems: 'center',
						minHeight: 44,
						minWidth: 44,
						justifyContent: 'center',
						mb: '-1px',
						fontWeight: 600,
						color: here ? 'text.primary' : 'primary.main',
						borderBottom: 3,
						borderColor: here ? 'primary.main' : 'transparent',
					}}
				>
					{title}
				</Link>
			))}
		</Box>
	)
}
