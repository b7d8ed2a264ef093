/** What the step on screen still lacks, and the way on; it stays in sight. */
import { Box, Button, Typography } from '@mui/material'
import { narrow } from './narrow.ts'
import type { Step } from './steps.ts'

interface WalkFootProps {
	/** What the step lacks; undefined where it asks for nothing. */
	missing: readonly { says: string }[] | undefined
	next: Step | undefined
	goTo: (name: string) => void
	/** Where it is missing a field, the way there. */
	toMissing: () => void
}
export function WalkFoot({ missing, next, goTo, toMissing }: WalkFootProps) {
	return (
		<Box
			sx={{
				position: 'sticky',
				bottom: 0,
				zIndex: 3,
				minHeight: 'var(--walk-foot)',
				display: 'flex',
				alignItems: 'center',
				gap: 2,
				bgcolor: 'background.default',
				borderTop: 1,
				borderColor: 'divider',
				[narrow]: { position: 'static', flexWrap: 'wrap', py: 1 },
			}}
		>
			<Typography
				role="status"
				color="text.secondary"
				variant="body2"
				sx={{ flexGrow: 1, overflow: 'hidden', textOverflow: 'ellipsis' }}
			>
				{missing === undefined ? '' : missingWords(missing)}
			</Typography>
			{missing !== undefined && missing.length > 0 && (
				<Button size="small" aria-keyshortcuts="Alt+N" onClick={toMissing}>
					Go to the next
				</Button>
			)}
			{next && (
				<Button variant="contained" onClick={() => goTo(next.name)}>
					On to {next.name}
				</Button>
			)}
		</Box>
	)
}
const missingWords = (missing: readonly { says: string }[]): string =>
	missing.length === 0
		? 'Nothing is missing on this step.'
		: `Still missing: ${missing.map(({ says }) => says).join('; ')}.`
