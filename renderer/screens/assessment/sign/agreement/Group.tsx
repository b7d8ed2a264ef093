/** One thing that the agreement asks: its name, its answers beside it, and whether it is open. */
import { Box, Typography } from '@mui/material'
import { type ReactNode, useId } from 'react'

interface GroupProps {
	title: string
	/** Nothing is answered yet: Alt+N comes here. */
	asked: boolean
	hint?: string | undefined
	children: ReactNode
}
export function Group({ title, asked, hint, children }: GroupProps) {
	const id = useId()
	return (
		<Box
			role="group"
			aria-labelledby={id}
			aria-describedby={hint ? `${id}-hint` : undefined}
			data-asked={asked ? '' : undefined}
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				columnGap: 2,
				py: 0.5,
				borderTop: 1,
				borderColor: 'divider',
			}}
		>
			<Typography id={id} sx={{ flex: '0 0 8.5rem', pt: 1.25, fontWeight: 600 }}>
				{title}
			</Typography>
			<Box sx={{ flex: '1 1 20rem', minWidth: 'min(16rem, 100%)' }}>
				{children}
				{hint && (
					<Typography id={`${id}-hint`} variant="body2" color="text.secondary" sx={{ pb: 0.5 }}>
						{hint}
					</Typography>
				)}
			</Box>
		</Box>
	)
}
/** Fields that belong to an answer, side by side where there is room. */
export function Fields({ children }: { children: ReactNode }) {
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: 'repeat(auto-fit, minmax(min(15rem, 100%), 1fr))',
				gap: 1.5,
				py: 1,
			}}
		>
			{children}
		</Box>
	)
}
