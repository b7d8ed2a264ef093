/** The first and last day of the season. */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Form, Trouble } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
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
		<Form label="Season dates" submit={submit}>
			<Panel
				title="First and last day"
				hint={
					season
						? undefined
						: 'No season yet. Set its first and last day: weekly pattern, matches and fixture list follow.'
				}
			>
				<Box
					sx={{
						display: 'grid',
						gridTemplateColumns: 'repeat(auto-fit, minmax(min(11rem, 100%), 1fr))',
						gap: 1,
						maxWidth: '36rem',
					}}
				>
					<Day label="From" name="Season from" value={from} set={setFrom} />
					<Day label="To" name="Season to" value={to} set={setTo} />
				</Box>
				<Trouble says={says} />
				{(from !== season?.from || to !== season?.to) && (
					<Box>
						<Button type="submit" variant={season ? 'outlined' : 'contained'}>
							Set the dates
						</Button>
					</Box>
				)}
			</Panel>
		</Form>
	)
}
