/**
 * What a finding rests on, one press away: numbers put in, rule, threshold, source and its strength
 * in words.
 */
import { Box, Button, Collapse } from '@mui/material'
import { type ReactNode, useId, useState } from 'react'
import type { Basis as BasisOf, Because, Strength } from '../../shared/engine/protocol/basis.ts'
import { readingInWords, thresholdInWords } from '../../shared/engine/words/reading.ts'
import { ruleInWords } from '../../shared/engine/words/words.ts'

export const strengthWords: Record<Strength, string> = {
	standard: 'published standard',
	guideline: 'guideline',
	trial: 'controlled trial',
	cohort: 'cohort study',
	'cross-sectional': 'cross-sectional study',
	expert: 'expert opinion',
	practice: 'common practice',
	clinic: 'set by this clinic',
}
/** Findings that begin with the name of a feature or a pair begin as a sentence does. */
export const sentence = { '&::first-letter': { textTransform: 'uppercase' } } as const

interface BasisProps {
	because: readonly Because[]
	basis: BasisOf
	/** what stands before the button on its line */
	head?: ReactNode
	/** what stands after it */
	end?: ReactNode
}
export function Basis({ because, basis, head, end }: BasisProps) {
	const [open, setOpen] = useState(false)
	const id = useId()
	const rows: [string, string][] = [
		['Numbers put in', because.length ? because.map(readingInWords).join('; ') : 'none'],
		['Rule', ruleInWords(basis.rule)],
		['Threshold', thresholdInWords(basis) ?? 'none; the rule is yes or no'],
		['Source', basis.source],
		['Strength', strengthWords[basis.strength]],
	]
	return (
		<Box>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 2 }}>
				{head}
				<Button
					variant="text"
					size="small"
					aria-expanded={open}
					aria-controls={id}
					onClick={() => setOpen(!open)}
					sx={{ minHeight: 44, px: 1 }}
				>
					Basis
				</Button>
				{end}
			</Box>
			<Collapse in={open} id={id} unmountOnExit>
				<Box
					component="dl"
					sx={{
						m: 0,
						p: 1.5,
						borderLeft: 3,
						borderColor: 'primary.main',
						bgcolor: 'background.default',
						display: 'grid',
						gridTemplateColumns: 'minmax(0, max-content) minmax(60%, 1fr)',
						columnGap: 2,
						rowGap: 0.5,
						fontSize: '0.875rem',
					}}
				>
					{rows.map(([name, words]) => [
						<Box component="dt" key={name} sx={{ color: 'text.secondary' }}>
							{name}
						</Box>,
						<Box component="dd" key={`${name} words`} sx={{ m: 0, overflowWrap: 'anywhere' }}>
							{words}
						</Box>,
					])}
				</Box>
			</Collapse>
		</Box>
	)
}
