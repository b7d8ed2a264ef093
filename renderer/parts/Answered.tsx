/** The states of an answer of the host, drawn alike everywhere: asked for, refused, old, there. */
import { Alert, Box, Button, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import type { HostAnswer } from '../query.ts'

type State = Pick<HostAnswer<unknown>, 'value' | 'says' | 'asking' | 'again'>

/**
 * Why the host did not answer, and the way to ask it again; nothing while all is well. Where a
 * value stands from before, it says that too.
 */
export function Refused({ of: { value, says, asking, again } }: { of: State }) {
	if (!says) return null
	return (
		<Alert
			severity={value === undefined ? 'error' : 'warning'}
			role="alert"
			action={
				<Button color="inherit" disabled={asking} onClick={again} sx={{ whiteSpace: 'nowrap' }}>
					Try again
				</Button>
			}
		>
			{says}
			{value === undefined ? null : <Box>What is shown was read before.</Box>}
		</Alert>
	)
}
interface AnsweredProps<T> {
	of: HostAnswer<T>
	/** what is opened: 'the player' */
	what: string
	children: (value: T) => ReactNode
}
/** What the answer leads to, as soon as it is there. */
export function Answered<T>({ of, what, children }: AnsweredProps<T>) {
	if (of.value === undefined)
		return of.says ? (
			<Refused of={of} />
		) : (
			<Typography role="status">{`Opening ${what}.`}</Typography>
		)
	return (
		<>
			<Refused of={of} />
			{children(of.value)}
		</>
	)
}
