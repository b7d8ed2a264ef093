/** What is open before the signature: a short list, each with its way; nothing where nothing is. */
import { Alert, AlertTitle, Box, Button } from '@mui/material'
import type { StepProps } from '../stepProps.ts'
import type { OpenThing } from './openThings.ts'

interface StillOpenProps extends Pick<StepProps, 'goTo'> {
	title: string
	severity: 'info' | 'warning'
	things: readonly OpenThing[]
}
export function StillOpen({ title, severity, things, goTo }: StillOpenProps) {
	if (things.length === 0) return null
	return (
		<Alert severity={severity} role="note" sx={{ '& .MuiAlert-message': { flexGrow: 1 } }}>
			<AlertTitle>{title}</AlertTitle>
			<Box component="ul" sx={{ m: 0, p: 0, listStyle: 'none' }}>
				{things.map(({ key, says, places }) => (
					<Box
						component="li"
						key={key}
						sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 1 }}
					>
						<Box component="span" sx={{ flex: '0 1 auto' }}>
							{says}
						</Box>
						{places.map(({ title: name, step, question }) => (
							<Button key={name} size="small" onClick={() => goTo(step, question)}>
								{name}
							</Button>
						))}
					</Box>
				))}
			</Box>
		</Alert>
	)
}
