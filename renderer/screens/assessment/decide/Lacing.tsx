/**
 * Changes to the boot and ways to lace it that the findings ask for: drawn, with limits and
 * cautions; marked ones are printed.
 */
import {
	Alert,
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	Paper,
	Stack,
	Typography,
} from '@mui/material'
import { useId } from 'react'
import type { FootwearWork } from '../../../../shared/engine/findings/assessment.ts'
import { type LacingId, lacingIds } from '../../../../shared/engine/footwear/lacing.ts'
import { lacingFigure } from '../../../../shared/engine/footwear/lacing-figure.ts'
import {
	isOvertakenMark,
	workKey,
	workMark,
	workTitle,
} from '../../../../shared/engine/report/marked.ts'
import { Basis } from '../../../parts/Basis.tsx'
import { Picture } from '../../../parts/Picture.tsx'
import type { AssessedProps, DraftProps } from '../stepProps.ts'
import { marksOf, setMark } from './marks.ts'
import { workFigure } from './workFigures.ts'

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
interface WorkProps extends DraftProps {
	work: FootwearWork
}
function Work({ work, draft, change }: WorkProps) {
	const drawn = figureOf(work)
	const title = workTitle(work)
	const mark = workMark(work)
	const line = marksOf(draft, 'work').find(({ findingId }) => findingId === `work.${workKey(work)}`)
	return (
		<Paper
			component="li"
			variant="outlined"
			sx={{
				p: 2,
				display: 'grid',
				gridTemplateColumns: { xs: '1fr', sm: drawn ? '1fr auto' : '1fr' },
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
						label="Print it"
						control={
							<Checkbox
								checked={line !== undefined}
								slotProps={{ input: { 'aria-label': `Print it: ${title}` } }}
								onChange={(event) => {
									const on = event.target.checked
									change((now) => setMark(now, 'work', workKey(work), on ? mark : undefined))
								}}
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
				{line && isOvertakenMark(line, mark) && (
					<Alert
						severity="warning"
						sx={{ mt: 1 }}
						action={
							<Button
								color="inherit"
								onClick={() => change((now) => setMark(now, 'work', workKey(work), mark))}
							>
								Use the new words
							</Button>
						}
					>
						The measures changed since it was marked. It would print: {line.says}
					</Alert>
				)}
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
export function Lacing({ draft, change, assessment }: AssessedProps) {
	const id = useId()
	if (!assessment) return null
	const { modifications = [], lacing = [] } = assessment.footwear
	const known = new Set([...modifications, ...lacing].map(workKey))
	const gone = marksOf(draft, 'work').filter(
		(line) => !known.has(line.findingId.slice('work.'.length)),
	)
	return (
		<Box component="section" aria-labelledby={id}>
			<Typography variant="h2" id={id} sx={{ mb: 1 }}>
				Changes to the boot, and lacing
			</Typography>
			<Stack spacing={2}>
				{gone.map((line) => (
					<Alert
						key={line.findingId}
						severity="warning"
						action={
							<FormControlLabel
								label="Print it"
								control={
									<Checkbox
										checked
										onChange={() =>
											change((now) =>
												setMark(now, 'work', line.findingId.slice('work.'.length), undefined),
											)
										}
									/>
								}
							/>
						}
					>
						Marked to print, but the findings as they stand do not ask for it: {line.says}
					</Alert>
				))}
				{modifications.length + lacing.length === 0 && (
					<Typography color="text.secondary">
						Nothing in the findings asks for a change to the boot or a way to lace it.
					</Typography>
				)}
				{(
					[
						['Changes to the boot', modifications],
						['Lacing', lacing],
					] as const
				).map(
					([title, rows]) =>
						rows.length > 0 && (
							<Stack key={title} spacing={1}>
								<Typography variant="h3">{title}</Typography>
								<Box
									component="ul"
									sx={{
										m: 0,
										p: 0,
										listStyle: 'none',
										display: 'grid',
										gridTemplateColumns: { xs: '1fr', xl: '1fr 1fr' },
										gap: 1.5,
									}}
								>
									{rows.map((row) => (
										<Work key={workKey(row)} work={row} draft={draft} change={change} />
									))}
								</Box>
							</Stack>
						),
				)}
			</Stack>
		</Box>
	)
}
