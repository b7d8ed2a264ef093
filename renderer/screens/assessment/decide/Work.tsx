/**
 * Changes to the boot, or ways to lace it, that are proposed: drawn, with limits and cautions. What
 * is kept stands on the page.
 */
import { Alert, Box, Checkbox, FormControlLabel, Paper, Typography } from '@mui/material'
import type { FootwearWork } from '../../../../shared/engine/findings/assessment.ts'
import { type LacingId, lacingIds } from '../../../../shared/engine/footwear/lacing.ts'
import { lacingFigure } from '../../../../shared/engine/footwear/lacing-figure.ts'
import { workKey, workTitle } from '../../../../shared/engine/report/marked.ts'
import { Basis } from '../../../parts/Basis.tsx'
import { Picture } from '../../../parts/Picture.tsx'
import { changedIn, changeFields } from './answering.ts'
import { proposedFields } from './proposedFields.ts'
import type { AskedProps } from './stepTypes.ts'
import { workFigure } from './workFigures.ts'
import { isWork } from './workOf.ts'

const isLacing = (id: string): id is LacingId => (lacingIds as readonly string[]).includes(id)
/** A lacing is drawn for the shoe it is for; one for both is drawn for the right. */
function figureOf({ id, side }: FootwearWork) {
	const shown = side === 'left' ? 'left' : 'right'
	return isLacing(id)
		? {
				figure: lacingFigure(id, shown, '#0f6b5c', 1.4),
				caption:
					side === 'both'
						? 'Right shoe from above; the left is its mirror image'
						: `${shown === 'left' ? 'Left' : 'Right'} shoe from above`,
			}
		: workFigure(id)
}
interface WorkCardProps {
	work: FootwearWork
	kept: boolean
	keep: (on: boolean) => void
}
function WorkCard({ work, kept, keep }: WorkCardProps) {
	const drawn = figureOf(work)
	const title = workTitle(work)
	return (
		<Paper
			component="li"
			variant="outlined"
			sx={{
				p: 2,
				display: 'grid',
				gridTemplateColumns: 'minmax(0, 1fr)',
				gap: 2,
				alignItems: 'start',
			}}
		>
			<Box sx={{ minWidth: 0 }}>
				<Box
					sx={{
						display: 'flex',
						flexWrap: 'wrap',
						justifyContent: 'space-between',
						alignItems: 'center',
					}}
				>
					<Typography variant="h3">{title}</Typography>
					<FormControlLabel
						label="Keep"
						control={
							<Checkbox
								checked={kept}
								slotProps={{ input: { 'aria-label': `Keep: ${title}` } }}
								onChange={(event) => keep(event.target.checked)}
							/>
						}
					/>
				</Box>
				<Basis
					because={work.because}
					basis={work.basis}
					head={<Typography sx={{ flex: '1 1 260px' }}>{work.says}</Typography>}
				/>
				<Typography variant="body2" color="text.secondary">
					{work.limits}
				</Typography>
				{work.cautions.map((caution) => (
					<Alert key={caution} severity="warning" sx={{ mt: 1 }}>
						{caution}
					</Alert>
				))}
			</Box>
			{drawn && (
				<Picture
					figure={drawn.figure}
					caption={drawn.caption}
					height={isLacing(work.id) ? 200 : 130}
				/>
			)}
		</Paper>
	)
}
export function Work({ assessment, question, draft, change }: AskedProps) {
	const { footwear } = assessment
	const proposed = proposedFields(assessment, question).keep ?? []
	const kept = changedIn(draft.decisions, question).keep ?? proposed
	const known = [...(footwear.modifications ?? []), ...(footwear.lacing ?? [])]
	const put = (id: string, on: boolean) =>
		change((now) =>
			changeFields(now, question, {
				keep: proposed.filter((other) => (other === id ? on : kept.includes(other))),
			}),
		)
	return (
		<Box
			component="ul"
			sx={{
				m: 0,
				p: 0,
				listStyle: 'none',
				display: 'grid',
				gridTemplateColumns: 'repeat(auto-fit, minmax(min(100%, 24rem), 1fr))',
				gap: 1.5,
			}}
		>
			{proposed.flatMap((id) =>
				known
					.filter((work) => isWork(work, id))
					.map((work) => (
						<WorkCard
							key={workKey(work)}
							work={work}
							kept={kept.includes(id)}
							keep={(on) => put(id, on)}
						/>
					)),
			)}
		</Box>
	)
}
