/**
 * How the numbers of a step were worked out: each formula with this player's numbers in it, and
 * what it rests on.
 */
import { Box, Button, Collapse, Typography } from '@mui/material'
import { useId, useState } from 'react'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import type { Topic, Working } from '../../shared/engine/findings/finding.ts'
import type { Basis } from '../../shared/engine/protocol/basis.ts'
import { thresholdInWords } from '../../shared/engine/words/reading.ts'
import { ruleInWords } from '../../shared/engine/words/words.ts'
import { strengthWords } from './Basis.tsx'

/** The workings of the rooms behind these topics, in their order; a room without any gives none. */
export function workingsOf(
	assessment: Assessment | undefined,
	topics: readonly Topic[],
): Working[] {
	if (!assessment) return []
	return topics.flatMap((topic) => {
		const room: unknown = Object.hasOwn(assessment, topic)
			? assessment[topic as keyof Assessment]
			: undefined
		return (room as { workings?: readonly Working[] } | undefined)?.workings ?? []
	})
}
/**
 * What a number rests on, in one line; the strength is left out where the source already says it.
 */
export function restsOn(basis: Basis): string {
	const { rule, source, strength, unsourced } = basis
	const threshold = thresholdInWords(basis)
	return (
		`${ruleInWords(rule)}${threshold ? ` (${threshold})` : ''}: ` +
		`${source}${unsourced ? '' : `; ${strengthWords[strength]}`}.`
	)
}
/** Each number with its lines and what it rests on. */
export function WorkingsList({ workings }: { workings: readonly Working[] }) {
	return workings.map(({ id: key, title, lines, basis }) => (
		<Box key={key} sx={{ py: 1.25, borderBottom: 1, borderColor: 'divider' }}>
			<Typography variant="h3">{title}</Typography>
			<Box
				component="ul"
				sx={{
					m: 0,
					mt: 0.5,
					p: 0,
					pl: 1.5,
					borderLeft: 3,
					borderColor: 'primary.main',
					listStyle: 'none',
					fontSize: '0.9rem',
					fontVariantNumeric: 'tabular-nums',
				}}
			>
				{/* a line said twice is said once */}
				{[...new Set(lines)].map((line) => (
					<Box component="li" key={line} sx={{ py: 0.25, overflowWrap: 'anywhere' }}>
						{line}
					</Box>
				))}
			</Box>
			<Typography variant="body2" color="text.secondary" sx={{ mt: 0.5 }}>
				{restsOn(basis)}
			</Typography>
		</Box>
	))
}
export function Workings({ workings }: { workings: readonly Working[] }) {
	const [open, setOpen] = useState(false)
	const id = useId()
	if (workings.length === 0) return null
	return (
		<Box component="section" aria-label="How it was worked out" sx={{ mt: 1.5 }}>
			<Button
				variant="outlined"
				size="small"
				aria-expanded={open}
				aria-controls={id}
				onClick={() => setOpen(!open)}
				sx={{ minHeight: 44 }}
			>
				How it was worked out ({workings.length})
			</Button>
			<Collapse in={open} id={id} unmountOnExit>
				<WorkingsList workings={workings} />
			</Collapse>
		</Box>
	)
}
