/** A group of measures under its heading: left and right side by side, with the last visit's. */
import { Box, Typography } from '@mui/material'
import { useId } from 'react'
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
	const id = useId()
	const twoSided = group.fields.some((row) => row.paths.length === 2)
	return (
		<Box role="group" aria-labelledby={id}>
			<Typography variant="h2" id={id} sx={{ fontSize: '1.05rem' }}>
				{group.heading}
			</Typography>
			{twoSided && (
				<RowColumns label={null} two>
					{['Left', 'Right'].map((side) => (
						<Typography key={side} variant="h3" component="p" sx={{ textAlign: 'right', pr: 1.5 }}>
							{side}
						</Typography>
					))}
				</RowColumns>
			)}
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
		</Box>
	)
}
