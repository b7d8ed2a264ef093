/** For a player who comes back: what stood on the visit before, in one press. */
import { Box, Button, Typography } from '@mui/material'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { listed } from '../../../shared/engine/words/en/format.ts'
import { dayInWords } from '../../parts/dates.ts'
import type { DraftProps } from './stepProps.ts'
import { isUntouched, toTakeOver, withTakenOver } from './takenOver.ts'

const names = { play: 'play', conditions: 'conditions', footwear: 'pairs' } as const
const isNamed = (key: string): key is keyof typeof names => key in names

/** It stays in its place once something stands in what it would fill, so that nothing moves. */
export function TakeOver({ last, draft, change }: { last: Visit | undefined } & DraftProps) {
	const held = last ? Object.keys(toTakeOver(last)).filter(isNamed) : []
	if (!last || held.length === 0) return null
	const isOpen = isUntouched(draft)
	const what = listed(held.map((key) => names[key]))
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 1.5 }}>
			<Button
				variant="outlined"
				aria-keyshortcuts="Alt+T"
				disabled={!isOpen}
				onClick={() => change((now) => withTakenOver(now, last))}
			>
				As on {dayInWords(last.visitDate)}: {what}
			</Button>
			<Typography variant="body2" color="text.secondary">
				{isOpen
					? 'Alt+T. Status, pain and comfort are asked again.'
					: 'Ctrl+Z takes an entry back.'}
			</Typography>
		</Box>
	)
}
