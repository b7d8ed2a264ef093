/**
 * Beside the measures: the field in focus with its value large enough to read from where the foot
 * is held, the picture, and help on F1.
 */
import { Box, Button, Collapse, Paper, Typography } from '@mui/material'
import { useId } from 'react'
import type { DraftContent } from '../../shared/contract.ts'
import { fieldMeta } from '../../shared/engine/visit/field-meta.ts'
import { meanOf, rounded } from '../../shared/engine/visit/sides.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { readPath } from './draft-path.ts'
import { FootPicture } from './FootPicture.tsx'
import { MeasureHelpText } from './help/Help.tsx'
import { helpOf } from './help/topic.ts'
import { unitShown } from './units.ts'

interface MeasuringProps {
	path: string
	draft: DraftContent
	open: boolean
	setOpen: (open: boolean) => void
}
export function Measuring({ path, draft, open, setOpen }: MeasuringProps) {
	const id = useId()
	const help = helpOf(path)
	if (!help) return null
	const meta = fieldMeta(visitSchema, path)
	const side = /\.(left|right)\./.exec(path)?.[1] as 'left' | 'right' | undefined
	const value = readPath(draft.visit, path) as number | number[] | string | undefined
	const reason = draft.visit.notMeasured?.[path]
	const shown =
		typeof value === 'string'
			? value.replaceAll('-', ' ')
			: path.endsWith('fpi6') && Array.isArray(value)
				? `${value.reduce((sum, one) => sum + one, 0)}`
				: meanOf(value as number | number[] | undefined)
	return (
		<Paper component="section" aria-label="Measuring now" variant="outlined" sx={{ p: 2, mb: 2 }}>
			<Typography variant="h2">
				{help.title}
				{side ? `, ${side}` : ''}
			</Typography>
			<Typography
				component="p"
				sx={{
					fontSize: '2.75rem',
					fontWeight: 700,
					lineHeight: 1.2,
					fontVariantNumeric: 'tabular-nums',
				}}
			>
				{draft.raw[path] !== undefined ? (
					<Box component="span" sx={{ fontSize: '1.25rem', color: 'error.main' }}>
						not a value yet
					</Box>
				) : reason !== undefined ? (
					<Box component="span" sx={{ fontSize: '1.25rem' }}>
						not measured: {reason}
					</Box>
				) : shown === undefined ? (
					<Box component="span" sx={{ fontSize: '1.25rem', color: 'text.secondary' }}>
						waiting for the reading
					</Box>
				) : (
					<>
						{typeof shown === 'number' ? rounded(shown, 1) : shown}{' '}
						<Box component="span" sx={{ fontSize: '1.25rem', fontWeight: 400 }}>
							{meta.kind === 'number' ? unitShown(meta.unit) : ''}
						</Box>
					</>
				)}
			</Typography>
			<FootPicture help={help} side={side} />
			<Button
				variant="text"
				aria-expanded={open}
				aria-controls={id}
				aria-keyshortcuts="F1"
				onClick={() => setOpen(!open)}
			>
				How to measure (F1)
			</Button>
			<Collapse in={open} id={id} unmountOnExit>
				<MeasureHelpText help={help} />
			</Collapse>
		</Paper>
	)
}
