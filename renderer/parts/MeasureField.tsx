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
import { Position } from './measure/Position.tsx'
import { Reading } from './measure/Reading.tsx'
import { YesNo } from './measure/YesNo.tsx'
import { TypedTwiceAt } from './TypedTwice.tsx'

export { undone } from './measure/undone.ts'

/** It has a list that depends on another field: the code played. */
const positionPath = 'play.position'

export function MeasureField(field: FieldProps) {
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
		<Box sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 2, alignItems: 'start' }}>
			<Box sx={{ flex: '1.1 1 0', minWidth: 'min(11rem, 100%)' }}>{label}</Box>
			<Box
				sx={{
					flex: '2 1 0',
					minWidth: 'min(22rem, 100%)',
					display: 'grid',
					gridTemplateColumns: two ? 'minmax(0, 1fr) minmax(0, 1fr)' : 'minmax(0, 1fr)',
					columnGap: 2,
					alignItems: 'start',
				}}
			>
				{children}
			</Box>
		</Box>
	)
}
/** What a row is called, and how it is meant. */
export function RowLabel({ title, hint }: { title: string; hint?: string | undefined }) {
	return (
		<Box sx={{ pt: 1 }}>
			<Typography sx={{ fontWeight: 600 }}>{title}</Typography>
			{hint ? (
				<Typography variant="body2" color="text.secondary">
					{hint}
				</Typography>
			) : null}
		</Box>
	)
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
	const meta = fieldMeta(visitSchema, paths[0] ?? '')
	return (
		<>
			<RowColumns label={<RowLabel title={meta.title} hint={hint} />} two={paths.length === 2}>
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
		</>
	)
}
