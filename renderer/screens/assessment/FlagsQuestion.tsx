/** One question of the flags step: a yes or no on a line, or a field in its row. */
import { Box, Chip, Typography } from '@mui/material'
import { siteRow } from '../../../shared/engine/screening/site-row.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { privateTopicAt } from '../../../shared/engine/visit/private.ts'
import { visitSchema } from '../../../shared/engine/visit/visit.ts'
import { FieldRow, MeasureField } from '../../parts/MeasureField.tsx'
import type { DraftProps } from './stepProps.ts'

/** What the mark of a private question means. */
export const privateWords = 'Private: not on pages for guardian, coach or club.'

const PrivateMark = () => (
	<Chip size="small" variant="outlined" label="Private" title={privateWords} sx={{ ml: 1 }} />
)
/** How the chosen bone is examined. */
function howToExamine(path: string, { visit }: DraftProps['draft']): string | undefined {
	const { site } = visit.screening?.boneStress ?? {}
	return path === 'screening.boneStress.site' ? siteRow(site)?.screen : undefined
}
export function Question({
	paths,
	draft,
	change,
	marked = true,
}: { paths: readonly string[]; marked?: boolean } & DraftProps) {
	const [first = ''] = paths
	const meta = fieldMeta(visitSchema, first)
	const isPrivate = marked && privateTopicAt(first) !== undefined
	if (meta.kind !== 'yesNo')
		return (
			<FieldRow
				paths={paths}
				draft={draft}
				change={change}
				hint={isPrivate ? privateWords : howToExamine(first, draft)}
			/>
		)
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 2, alignItems: 'center', py: 0.5 }}>
			<Typography component="div" sx={{ flex: '1 1 280px' }}>
				{meta.title}
				{isPrivate ? <PrivateMark /> : null}
			</Typography>
			{paths.map((path) => (
				<Box key={path} sx={{ display: 'flex', alignItems: 'center', gap: 1 }}>
					{paths.length === 2 ? (
						<Typography variant="body2">{path.includes('.left.') ? 'Left' : 'Right'}</Typography>
					) : null}
					<MeasureField path={path} draft={draft} change={change} />
				</Box>
			))}
		</Box>
	)
}
