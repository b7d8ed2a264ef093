/** How far the plan is proven the best, in one line: what matters most first. */
import { Typography } from '@mui/material'
import type { Plan } from '../../../shared/engine/season/plan-file.ts'
import { provenWords } from './provenWords.ts'

export function Proven({ plan }: { plan: Plan }) {
	return (
		<Typography variant="body2" aria-label="How far the plan is proven">
			{provenWords(plan)}
		</Typography>
	)
}
