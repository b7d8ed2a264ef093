/** Whose visit it is, the steps as buttons, and whether it is saved; it stays in sight. */

import { Box, Button, Typography } from '@mui/material'
import { dayInWords } from '../../../shared/engine/plain/days.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { narrow } from './narrow.ts'
import { numberOf, type Step } from './steps.ts'
import type { OpenDraft } from './useDraft.ts'

interface WalkHeadProps {
	open: OpenDraft
	steps: readonly Step[]
	/** The step on screen. */
	step: Step
	signed: boolean
	goTo: (name: string) => void
}
export function WalkHead({ open, steps, step, signed, goTo }: WalkHeadProps) {
	const { saved } = open
	const { player, visitDate } = open.content.visit
	return (
		<Box
			sx={{
				position: 'sticky',
				top: 0,
				zIndex: 3,
				minHeight: 'var(--walk-head)',
				display: 'flex',
				flexWrap: 'wrap',
				columnGap: 2,
				alignItems: 'center',
				bgcolor: 'background.default',
				borderBottom: 1,
				borderColor: 'divider',
				[narrow]: { position: 'static' },
			}}
		>
			<Typography variant="h2" component="p">
				{fullName(player)}
			</Typography>
			<Typography variant="body2" color="text.secondary">
				{ageYears(player.birthDate, visitDate)} y, {player.sex}, visit {dayInWords(visitDate)}
			</Typography>
			<Typography
				role="status"
				variant="body2"
				color={saved.state === 'failed' ? 'error' : 'text.secondary'}
				sx={{ minWidth: '8em' }}
			>
				{signed ? 'Signed' : saved.says}
			</Typography>
			<Box
				component="nav"
				aria-label="Steps"
				sx={{ display: 'flex', flexWrap: 'wrap', gap: 0.5, ml: 'auto' }}
			>
				{steps.map(({ name }) => (
					<Button
						key={name}
						disabled={signed}
						variant={name === step.name ? 'contained' : 'text'}
						aria-current={name === step.name ? 'step' : undefined}
						aria-keyshortcuts={`Alt+${numberOf(name)}`}
						onClick={() => goTo(name)}
						sx={{ px: 1.25, minWidth: 0 }}
					>
						<Box component="span" aria-hidden sx={{ mr: 0.5, opacity: 0.75, fontWeight: 400 }}>
							{numberOf(name)}
						</Box>
						{name}
					</Button>
				))}
			</Box>
		</Box>
	)
}
