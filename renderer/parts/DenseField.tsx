/** A field with its label above it, in a grid of several columns: for values of a few digits. */
import { Box, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import { fieldMeta } from '../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { MeasureField } from './MeasureField.tsx'
import type { FieldProps } from './measure/fieldState.ts'
import { unitShown } from './units.ts'

/** Columns of one width, as many as the room and the letters allow. */
export function DenseGrid({ children, columnRem }: { children: ReactNode; columnRem: number }) {
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: `repeat(auto-fill, minmax(min(${columnRem}rem, 100%), 1fr))`,
				columnGap: 1.5,
				rowGap: 1,
			}}
		>
			{children}
		</Box>
	)
}
/** Labels end on one line, and fields begin on one, however many lines a label takes. */
const lined = {
	minWidth: 0,
	display: 'grid',
	gridTemplateColumns: 'minmax(0, 1fr)',
	gridTemplateRows: 'subgrid',
	gridRow: 'span 2',
	rowGap: 0,
}
interface LabelledProps {
	title: string
	/** Said once, behind the label. */
	unit?: string
	hint?: string | undefined
	/** Over all columns of its grid. */
	whole?: boolean
	children: ReactNode
}
/** What stands in one place of the grid, under its label. */
export function Labelled({ title, unit = '', hint, whole = false, children }: LabelledProps) {
	return (
		<Box sx={{ ...lined, ...(whole ? { gridColumn: '1 / -1' } : {}) }}>
			<Typography
				sx={{ fontWeight: 600, fontSize: '0.9rem', lineHeight: 1.25, pb: 0.25, alignSelf: 'end' }}
			>
				{title}
				{unit && (
					<Typography component="span" variant="body2" color="text.secondary">
						{` ${unit}`}
					</Typography>
				)}
				{hint && (
					<Typography
						component="span"
						color="text.secondary"
						sx={{ display: 'block', fontSize: '0.78rem', lineHeight: 1.25 }}
					>
						{hint}
					</Typography>
				)}
			</Typography>
			<Box sx={{ minWidth: 0 }}>{children}</Box>
		</Box>
	)
}
interface DenseFieldProps extends FieldProps {
	hint?: string | undefined
	whole?: boolean
}
export function DenseField({ hint, whole = false, ...field }: DenseFieldProps) {
	const { title, kind, unit } = fieldMeta(visitSchema, field.path)
	// 'Months a year in this one sport' has said it
	const said = title.toLowerCase().includes(unit)
	return (
		<Labelled
			title={title}
			unit={kind === 'number' && !said ? unitShown(unit) : ''}
			hint={hint}
			whole={whole}
		>
			<Box sx={{ '& [data-unit]': { display: 'none' } }}>
				<MeasureField {...field} />
			</Box>
		</Labelled>
	)
}
