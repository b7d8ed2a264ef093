/** What was typed can be read in two ways: each is a button, and none is taken by itself. */
import { Box, Button, Typography } from '@mui/material'
import type { Way } from '../judge.ts'

interface WhichWayProps {
	/** What the field is called. */
	name: string
	/** What is asked. */
	says: string | undefined
	ways: readonly Way[]
	/** Told the text that says it clearly. */
	choose: (text: string) => void
}
export function WhichWay({ name, says, ways, choose }: WhichWayProps) {
	return (
		<Box role="group" aria-label={`${name}: which is meant`} sx={{ py: 0.5 }}>
			<Typography role="alert" variant="body2" color="error">
				{says}
			</Typography>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 0.5, pt: 0.5 }}>
				{ways.map((way) => (
					<Button
						key={way.text}
						variant="outlined"
						onClick={() => choose(way.text)}
						sx={{ px: 1.25 }}
					>
						{way.says}
					</Button>
				))}
			</Box>
		</Box>
	)
}
