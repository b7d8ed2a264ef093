/**
 * Paper: the head of every printed page of the screens, and the button that prints a list. What
 * paper leaves out stands in printStyles.ts.
 */
import { Box, Button, Typography } from '@mui/material'
import { useEffect, useState } from 'react'
import { flushSync } from 'react-dom'
import { dayInWords, today } from './dates.ts'

/** Seen on paper only. The day is that of printing, also where the window stood open overnight. */
export function PrintHead({
	clinicName,
	person,
}: {
	clinicName: string | undefined
	person: string | undefined
}) {
	const [day, setDay] = useState(today)
	useEffect(() => {
		const before = () => flushSync(() => setDay(today()))
		addEventListener('beforeprint', before)
		return () => removeEventListener('beforeprint', before)
	}, [])
	return (
		<Box
			sx={{
				display: 'none',
				'@media print': { display: 'flex' },
				justifyContent: 'space-between',
				gap: 2,
				pb: 0.5,
				mb: 2,
				borderBottom: '1px solid #000',
			}}
		>
			<Typography component="span" variant="body2" sx={{ fontWeight: 600 }}>
				{clinicName ?? 'Lastwright'}
			</Typography>
			<Typography component="span" variant="body2">
				Printed {dayInWords(day)}
				{person ? ` by ${person}` : ''}
			</Typography>
		</Box>
	)
}
export const PrintButton = ({ what, disabled = false }: { what: string; disabled?: boolean }) => (
	<Button variant="outlined" disabled={disabled} onClick={() => print()}>
		Print {what}
	</Button>
)
