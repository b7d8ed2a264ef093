/** The first and last day of the season. */
import { Box, Button, Paper, Typography } from '@mui/material'
import { useState } from 'react'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Trouble } from '../../parts/form.tsx'
import { isDate } from './edits.ts'
import { Day } from './fields.tsx'

/** What is wrong with the days, in words; empty where nothing is. */
function wrongDays(from: string, to: string): string {
	if (!isDate(from))
		return `Season from: not a date, given "${from}", allowed: a day such as 1 February 2027.`
	if (!isDate(to))
		return `Season to: not a date, given "${to}", allowed: a day such as 29 August 2027.`
	if (to < from)
		return (
			`Season to: before the first day, given ${dayInWords(to)}, allowed: ${dayInWords(from)} ` +
			'or later.'
		)
	return ''
}

interface DatesProps {
	season: Season | undefined
	change: (next: Season, says: string) => void
}
export function Dates({ season, change }: DatesProps) {
	const [from, setFrom] = useState(season?.from ?? '')
	const [to, setTo] = useState(season?.to ?? '')
	const [says, setSays] = useState('')
	const submit = () => {
		const wrong = wrongDays(from, to)
		setSays(wrong)
		if (wrong) return
		const told = `The season runs from ${dayInWords(from)} to ${dayInWords(to)}.`
		change({ ...season, from, to }, told)
	}
	return (
		<Paper
			component="form"
			noValidate
			variant="outlined"
			aria-label="Season dates"
			sx={{ p: 2 }}
			onSubmit={(event: { preventDefault: () => void }) => {
				event.preventDefault()
				submit()
			}}
		>
			<Typography variant="h2" sx={{ mb: 1.5 }}>
				First and last day
			</Typography>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: 'repeat(auto-fit, minmax(min(11rem, 100%), 1fr))',
					gap: 1,
				}}
			>
				<Day label="From" name="Season from" value={from} set={setFrom} />
				<Day label="To" name="Season to" value={to} set={setTo} />
			</Box>
			<Trouble says={says} />
			{(from !== season?.from || to !== season?.to) && (
				<Button type="submit" variant="outlined" sx={{ mt: 1 }}>
					Set the dates
				</Button>
			)}
		</Paper>
	)
}
