/**
 * How to take one measure: position, steps, what is beyond its error with the source, and the
 * picture.
 */
import { Box, Typography } from '@mui/material'
import { clinicProtocol } from '../clinicProtocol.ts'
import { FootPicture } from '../FootPicture.tsx'
import type { MeasureHelp } from './topic.ts'

/** Ways of measuring are common practice with no source unless an error row names one. */
const waySource = 'Way of measuring: common practice, no source.'
const noError = 'No error is held for this measure: common practice is to take it twice.'

/** Rows of the protocol in force, each with its source. */
function Rows({ keys }: { keys: MeasureHelp['errors'] }) {
	return (
		<Box component="ul" sx={{ my: 0.5, pl: 3, fontSize: '0.875rem' }}>
			{keys.map((key) => {
				const { value, unit, source, population } = clinicProtocol.row(key)
				return (
					<li key={key}>
						{value} {unit} ({population}): {source}.
					</li>
				)
			})}
		</Box>
	)
}

function MeasureHelpText({ help }: { help: MeasureHelp }) {
	return (
		<Box>
			<Typography>
				<strong>Position.</strong> {help.position}
			</Typography>
			<Box component="ol" sx={{ my: 1, pl: 3 }}>
				{help.steps.map((step) => (
					<li key={step}>{step}</li>
				))}
			</Box>
			<Typography variant="body2">
				<strong>Error.</strong> {help.errors.length === 0 ? noError : null}
			</Typography>
			<Rows keys={help.errors} />
			{help.norms.length > 0 && (
				<>
					<Typography variant="body2">
						<strong>Held against.</strong>
					</Typography>
					<Rows keys={help.norms} />
				</>
			)}
			<Typography variant="body2" color="text.secondary">
				{waySource}
			</Typography>
		</Box>
	)
}
export function MeasureHelpCard({
	help,
	side,
}: {
	help: MeasureHelp
	side?: 'left' | 'right' | undefined
}) {
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: { xs: '1fr', sm: '200px 1fr' },
				gap: 2,
				alignItems: 'start',
			}}
		>
			<FootPicture help={help} side={side} height={170} />
			<MeasureHelpText help={help} />
		</Box>
	)
}
