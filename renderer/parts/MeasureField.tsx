/**
 * One field of the visit, read from its schema: number with repeats, choice, yes/no/not asked, day
 * or text.
 */
import { Box, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import { fieldMeta } from '../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { Choice } from './measure/Choice.tsx'
import { Day } from './measure/Day.tsx'
import type { FieldProps } from './measure/fieldState.ts'
import { UnlessNotToday } from './measure/NotToday.tsx'
import { Position } from './measure/Position.tsx'
import { Reading } from './measure/Reading.tsx'
import { YesNo } from './measure/YesNo.tsx'
import { TypedTwiceAt } from './TypedTwice.tsx'
import { unitShown } from './units.ts'

export { undone } from './measure/undone.ts'

/** It has a list that depends on another field: the code played. */
const positionPath = 'play.position'

export const MeasureField = (field: FieldProps) => (
	<UnlessNotToday {...field}>
		<FieldOfKind {...field} />
	</UnlessNotToday>
)
function FieldOfKind(field: FieldProps) {
	if (field.path === positionPath) return <Position {...field} />
	const meta = fieldMeta(visitSchema, field.path)
	switch (meta.kind) {
		case 'yesNo':
			return <YesNo {...field} />
		case 'date':
			return <Day {...field} />
		case 'choice':
			return <Choice {...field} options={meta.options} />
		default:
			return <Reading {...field} meta={meta} />
	}
}
/** Of a row of the form: as high whatever is told in it. */
const row = { display: 'flex', flexWrap: 'wrap', columnGap: 1.5, alignItems: 'start' }
/**
 * A label and its one or two columns. With large letters the columns go below the label, so that no
 * value is cut off; headings use the same columns and so stand over them.
 */
export function RowColumns({
	label,
	two,
	children,
}: {
	label: ReactNode
	two: boolean
	children: ReactNode
}) {
	return (
		<Box sx={row}>
			<Box sx={{ flex: '1 1 0', minWidth: 'min(9.5rem, 100%)' }}>{label}</Box>
			<Box
				sx={{
					flex: '2.4 1 0',
					minWidth: 'min(20rem, 100%)',
					display: 'grid',
					gridTemplateColumns: two ? 'minmax(0, 1fr) minmax(0, 1fr)' : 'minmax(0, 1fr)',
					columnGap: 1.5,
					alignItems: 'start',
				}}
			>
				{children}
			</Box>
		</Box>
	)
}
interface RowLabelProps {
	title: string
	/** Said once for the row. */
	unit?: string
	hint?: string | undefined
	/** The hint is for the hand at the field: it is shown, in its own place, while the hand is there. */
	hintAtHand?: boolean
}
/** What a row is called, in which unit, and how it is meant. */
function RowLabel({ title, unit = '', hint, hintAtHand = false }: RowLabelProps) {
	return (
		<Box sx={{ pt: 0.5, lineHeight: 1.3 }}>
			<Typography sx={{ fontWeight: 600, lineHeight: 1.3 }}>
				{title}
				{unit && (
					<Typography component="span" variant="body2" color="text.secondary">
						{` ${unit}`}
					</Typography>
				)}
			</Typography>
			{hint ? (
				<Typography
					variant="body2"
					color="text.secondary"
					data-hint={hintAtHand ? '' : undefined}
					sx={{ fontSize: '0.78rem', lineHeight: 1.25 }}
				>
					{hint}
				</Typography>
			) : null}
		</Box>
	)
}
const measured = {
	minHeight: '3.5rem',
	'& [data-unit]': { display: 'none' },
	'&:not(:focus-within) [data-hint]': { visibility: 'hidden' },
}
/** A row of the form: its label once, then one field, or left and right in their columns. */
export function FieldRow({
	paths,
	hint,
	...rest
}: { paths: readonly string[]; hint?: string | undefined; before?: readonly unknown[] } & Omit<
	FieldProps,
	'path' | 'before'
>) {
	const { title, kind, unit } = fieldMeta(visitSchema, paths[0] ?? '')
	const isNumber = kind === 'number'
	const label = { title, hint, hintAtHand: isNumber, unit: isNumber ? unitShown(unit) : '' }
	return (
		<Box sx={measured}>
			{/* a number alone is as wide as one of two */}
			<RowColumns label={<RowLabel {...label} />} two={isNumber || paths.length === 2}>
				{paths.map((path, index) => (
					<MeasureField
						key={path}
						path={path}
						draft={rest.draft}
						change={rest.change}
						before={rest.before?.[index]}
					/>
				))}
			</RowColumns>
			{paths.map((path) => (
				<TypedTwiceAt key={path} path={path} draft={rest.draft} change={rest.change} />
			))}
		</Box>
	)
}
