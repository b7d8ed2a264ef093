/** A pair by its letter and its pattern, the same as on the wall chart; never by colour alone. */
import { Box } from '@mui/material'
import { type Pattern, patternOfLetter } from '../../../shared/engine/report/document.ts'

const ink = 'currentColor'
const fills: Record<Pattern, string> = {
	plain: 'none',
	// the lines of a gradient stand across its direction: one that runs down to the right draws lines
	// that rise to the right
	rising: `repeating-linear-gradient(135deg, ${ink} 0 1.5px, transparent 1.5px 5px)`,
	falling: `repeating-linear-gradient(45deg, ${ink} 0 1.5px, transparent 1.5px 5px)`,
	dots: `radial-gradient(circle, ${ink} 1.4px, transparent 1.6px) 0 0 / 6px 6px`,
	bars: `repeating-linear-gradient(90deg, ${ink} 0 1.5px, transparent 1.5px 6px)`,
	grid:
		`repeating-linear-gradient(0deg, ${ink} 0 1px, transparent 1px 6px), ` +
		`repeating-linear-gradient(90deg, ${ink} 0 1px, transparent 1px 6px)`,
	lines: `repeating-linear-gradient(0deg, ${ink} 0 1.5px, transparent 1.5px 5px)`,
	crosses:
		`repeating-linear-gradient(45deg, ${ink} 0 1px, transparent 1px 5px), ` +
		`repeating-linear-gradient(135deg, ${ink} 0 1px, transparent 1px 5px)`,
	checks: `conic-gradient(${ink} 25%, transparent 0 50%, ${ink} 0 75%, transparent 0) 0 0 / 8px 8px`,
	dark: ink,
	dashes: `linear-gradient(90deg, ${ink} 60%, transparent 0) 0 0 / 8px 3px`,
	half: `linear-gradient(transparent 50%, ${ink} 0)`,
}
export function PairBadge({ letter }: { letter: string }) {
	return (
		<Box
			component="span"
			sx={{
				display: 'inline-flex',
				alignItems: 'center',
				border: 1.5,
				borderColor: 'text.primary',
				borderRadius: 0.75,
				overflow: 'hidden',
				verticalAlign: 'middle',
				lineHeight: 1,
			}}
		>
			<Box
				component="span"
				sx={{ px: 0.75, py: 0.5, fontWeight: 700, bgcolor: 'background.paper' }}
			>
				{letter}
			</Box>
			{letter !== '?' && (
				<Box
					component="span"
					aria-hidden
					sx={{
						width: 18,
						alignSelf: 'stretch',
						borderLeft: 1,
						borderColor: 'text.primary',
						background: fills[patternOfLetter(letter)],
					}}
				/>
			)}
		</Box>
	)
}
