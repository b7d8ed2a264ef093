/** What stands one press away: a button, and what it opens. */
import { Box, Button, Collapse } from '@mui/material'
import { type ReactNode, useId, useState } from 'react'

interface DisclosureProps {
	label: string
	/** What the button is called where its label alone does not tell it from others. */
	name?: string
	/** what stands before the button on its line */
	head?: ReactNode
	/** what stands after it */
	end?: ReactNode
	/** stands open from the beginning: something was begun in it */
	openAtFirst?: boolean
	children: ReactNode
}
export function Disclosure({
	label,
	name,
	head,
	end,
	openAtFirst = false,
	children,
}: DisclosureProps) {
	const [open, setOpen] = useState(openAtFirst)
	const id = useId()
	return (
		<Box>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 2 }}>
				{head}
				<Button
					variant="text"
					size="small"
					aria-expanded={open}
					aria-controls={id}
					aria-label={name}
					onClick={() => setOpen(!open)}
					sx={{ minHeight: 44, px: 1 }}
				>
					{label}
				</Button>
				{end}
			</Box>
			<Collapse in={open} id={id} unmountOnExit>
				{children}
			</Collapse>
		</Box>
	)
}
/** Names with what is said under each. @param rows the name first */
export function Told({ rows }: { rows: readonly (readonly [string, ReactNode])[] }) {
	return (
		<Box
			component="dl"
			sx={{
				m: 0,
				p: 1.5,
				borderLeft: 3,
				borderColor: 'primary.main',
				bgcolor: 'background.default',
				display: 'grid',
				gridTemplateColumns: { xs: '1fr', sm: 'minmax(0, max-content) minmax(60%, 1fr)' },
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
	)
}
