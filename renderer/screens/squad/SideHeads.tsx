/**
 * Left and right over the fields of a station, to be read from where the player stands: the word in
 * large letters, the left full and the right in outline, so that colour is never needed.
 */
import { Box } from '@mui/material'
import { RowColumns } from '../../parts/MeasureField.tsx'

const head = {
	px: 1.5,
	py: 0.25,
	border: 3,
	borderColor: 'primary.main',
	borderRadius: 1,
	fontSize: '1.5rem',
	fontWeight: 700,
	letterSpacing: '0.06em',
	textTransform: 'uppercase',
} as const
const looks = {
	left: { bgcolor: 'primary.main', color: 'primary.contrastText' },
	right: { bgcolor: 'background.paper', color: 'text.primary' },
} as const
const sides = ['left', 'right'] as const

/** Stays in sight while the rows below it scroll; the fields say their side themselves. */
export function SideHeads() {
	return (
		<Box
			aria-hidden
			sx={{
				position: 'sticky',
				top: 'var(--frame-stays, 0rem)',
				zIndex: 2,
				bgcolor: 'background.default',
				py: 0.5,
			}}
		>
			<RowColumns label={null} two>
				{sides.map((side) => (
					<Box key={side} data-side={side} sx={{ ...head, ...looks[side] }}>
						{side}
					</Box>
				))}
			</RowColumns>
		</Box>
	)
}
