/** One question of the flags step: a yes or no on a dense line, or a field in its row. */
import { Box, Chip, Typography } from '@mui/material'
import type { ReactNode } from 'react'
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
/**
 * A line of the list. @param end stands after the answer; its room is kept where it is null, so that
 * the answers stand under each other and none moves
 */
export function QuestionLine({
	words,
	end,
	children,
}: {
	words: ReactNode
	end?: ReactNode
	children?: ReactNode
}) {
	return (
		<Box
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				alignItems: 'center',
				columnGap: 1.5,
				minHeight: 44,
				py: '2px',
				borderTop: 1,
				borderColor: 'divider',
			}}
		>
			<Typography component="div" sx={{ flex: '1 1 11rem', fontSize: '0.95rem', lineHeight: 1.35 }}>
				{words}
			</Typography>
			{children}
			{end === undefined ? null : <Box sx={{ flex: 'none', width: '5.25rem' }}>{end}</Box>}
		</Box>
	)
}
interface QuestionProps extends DraftProps {
	/** One path, or left and right. */
	paths: readonly string[]
	marked?: boolean
	end?: ReactNode
}
export function Question({ paths, draft, change, marked = true, end }: QuestionProps) {
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
	const words = (
		<>
			{meta.title}
			{isPrivate ? <PrivateMark /> : null}
		</>
	)
	return (
		<QuestionLine words={words} end={end}>
			{paths.map((path) => (
				<Box
					key={path}
					data-asked={path}
					sx={{
						display: 'flex',
						alignItems: 'center',
						gap: 1,
						'& button': {
							whiteSpace: 'nowrap',
							scrollMarginTop: 'calc(var(--walk-head) + 8px)',
							scrollMarginBottom: 'calc(var(--walk-foot) + 8px)',
						},
					}}
				>
					{paths.length === 2 ? (
						<Typography variant="body2">{path.includes('.left.') ? 'Left' : 'Right'}</Typography>
					) : null}
					<MeasureField path={path} draft={draft} change={change} />
				</Box>
			))}
		</QuestionLine>
	)
}
