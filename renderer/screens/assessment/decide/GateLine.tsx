/** The gate where something is held, or a core question is open: what is held, what is done now, by when. */
import { Box } from '@mui/material'
import type { Assessment, Gate } from '../../../../shared/engine/findings/assessment.ts'
import { dayInWords } from '../../../parts/dates.ts'

const parts = ['person', 'left', 'right'] as const
/** Said loudly: something is held, or somebody is asked for. */
export const isLoud = (gate: Gate): boolean =>
	parts.some((part) => gate[part].holds.length > 0 || gate[part].action !== 'proceed')
const isFirst = ({ code }: { code: string }): boolean =>
	code === 'priority.act' || code === 'priority.clear'
/** What is to be done at once, and by when; undefined where nothing is. */
function actNow({ visitDate, prescription }: Assessment): string | undefined {
	const first = prescription.priorities.find(isFirst)
	if (!first) return undefined
	return `${first.says} ${first.when <= visitDate ? 'Today.' : `By ${dayInWords(first.when)}.`}`
}
export function GateLine({ assessment, says }: { assessment: Assessment; says: string }) {
	const now = actNow(assessment)
	return (
		<Box component="span" sx={{ display: 'grid', gap: 0.25, lineHeight: 1.35 }}>
			<Box component="span" sx={{ fontSize: '1.0625rem', fontWeight: 700 }}>
				<span aria-hidden>■ </span>
				Stop. {says}
			</Box>
			{now && (
				<Box component="span" sx={{ fontWeight: 600 }}>
					Now: {now}
				</Box>
			)}
			<Box component="span" sx={{ fontSize: '0.875rem' }}>
				Ends by a recorded outcome: key O.
			</Box>
		</Box>
	)
}
