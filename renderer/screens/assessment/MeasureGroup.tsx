/** A group of measures under its heading: left and right side by side, with the last visit's. */
import { Paper, Typography } from '@mui/material'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { readPath } from '../../parts/draft-path.ts'
import { FieldRow, RowColumns } from '../../parts/MeasureField.tsx'
import type { DraftProps } from './stepProps.ts'
import type { Step } from './steps.ts'

interface MeasureGroupProps extends DraftProps {
	group: Step['groups'][number]
	/** The visit before this one. */
	last: Visit | undefined
}
export function MeasureGroup({ group, draft, change, last }: MeasureGroupProps) {
	const twoSided = group.fields.some((row) => row.paths.length === 2)
	return (
		<Paper variant="outlined" sx={{ p: 2, display: 'grid', gap: 0.5 }}>
			<RowColumns label={<Typography variant="h2">{group.heading}</Typography>} two={twoSided}>
				{twoSided
					? ['Left', 'Right'].map((side) => (
							<Typography key={side} variant="h3" component="p" sx={{ mb: 0.5 }}>
								{side}
							</Typography>
						))
					: null}
			</RowColumns>
			{group.fields.map(({ paths, hint }) => (
				<FieldRow
					key={paths[0]}
					paths={paths}
					hint={hint}
					draft={draft}
					change={change}
					before={last ? paths.map((path) => readPath(last, path)) : []}
				/>
			))}
		</Paper>
	)
}
