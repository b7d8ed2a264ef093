/**
 * The frame of every page but the assessment: the way back, the title with its short line, the main
 * action at the end of that line, the pages of the room; then the work, and what stands where there
 * is nothing yet.
 */
import { Box, Link, Stack, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import { RoomNav } from './RoomNav.tsx'

interface PageProps {
	title: string
	/** One short line under the title. */
	line?: ReactNode
	/** The page that this one belongs to. */
	back?: { to: string; words: string }
	/** What can be done here, the main thing last. */
	acts?: ReactNode
	/** The pages of the room. */
	room?: Parameters<typeof RoomNav>[0]
	children: ReactNode
}
function Back({ to, words }: NonNullable<PageProps['back']>) {
	return (
		<Link
			href={to}
			underline="hover"
			sx={{
				display: 'inline-flex',
				alignItems: 'center',
				minHeight: 44,
				mt: -1.5,
				fontWeight: 600,
				displayPrint: 'none',
			}}
		>
			{words}
		</Link>
	)
}
function Head({ title, line, back, acts, room }: Omit<PageProps, 'children'>) {
	return (
		<Box>
			{back && <Back {...back} />}
			<Box
				sx={{
					display: 'flex',
					flexWrap: 'wrap',
					alignItems: 'start',
					justifyContent: 'space-between',
					columnGap: 3,
					rowGap: 1,
				}}
			>
				<Box sx={{ flex: '1 1 24rem', minWidth: 0, maxWidth: '52rem', overflowWrap: 'anywhere' }}>
					<Typography variant="h1">{title}</Typography>
					{line && <Box sx={{ color: 'text.secondary', mt: 0.25 }}>{line}</Box>}
				</Box>
				{acts && (
					<Box
						className="lw-screen-only"
						sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1 }}
					>
						{acts}
					</Box>
				)}
			</Box>
			{room && <RoomNav {...room} />}
		</Box>
	)
}
export function Page({ children, ...head }: PageProps) {
	return (
		<Stack spacing={2.5}>
			<Head {...head} />
			{children}
		</Stack>
	)
}
/** Where there is nothing yet: what will stand here, and the way to it. */
export function Empty({ says, act }: { says: ReactNode; act?: ReactNode }) {
	return (
		<Box sx={{ py: 1, display: 'grid', gap: 1.5, justifyItems: 'start', maxWidth: '44rem' }}>
			<Typography color="textSecondary">{says}</Typography>
			{act}
		</Box>
	)
}
