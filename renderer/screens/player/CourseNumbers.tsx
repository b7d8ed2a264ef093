/** The course as a table: a row for each visit, every number that was told and each change. */
import { Box, Table, TableBody, TableCell, TableHead, TableRow, Typography } from '@mui/material'
import type { PlayerCourse } from '../../../shared/desk/players/course.ts'
import { verdictNames } from '../../../shared/engine/words/en/course.ts'
import { dayInWords } from '../../parts/dates.ts'
import { scrollsX } from '../../parts/scrollsX.ts'

type Complaint = PlayerCourse['complaints'][number]
const notAsked = 'not asked'
/** '3, within error'. */
function painCell({ readings, steps }: Complaint, of: 'now' | 'worst', at: number, date: string) {
	const value = readings[at]?.[of]
	if (value === undefined) return notAsked
	const step = steps.find((one) => one.of === of && one.to === date)
	return step ? `${value}, ${verdictNames[step.verdict]}` : String(value)
}
export function CourseNumbers({ course: { visits, complaints } }: { course: PlayerCourse }) {
	return complaints.map((complaint) => (
		<Box key={complaint.name} sx={{ mt: 1 }}>
			<Typography variant="h3">{complaint.name}</Typography>
			<Box
				sx={scrollsX}
				tabIndex={0}
				role="region"
				aria-label={`Numbers of the course: ${complaint.name}`}
			>
				<Table size="small" aria-label={`Course: ${complaint.name}`}>
					<TableHead>
						<TableRow>
							<TableCell>Visit</TableCell>
							<TableCell>Pain now</TableCell>
							<TableCell>Worst pain</TableCell>
							<TableCell>Sessions missed</TableCell>
							<TableCell>Days off</TableCell>
							<TableCell>Changed</TableCell>
						</TableRow>
					</TableHead>
					<TableBody>
						{visits.map(({ date, changes }, at) => (
							// biome-ignore lint/suspicious/noArrayIndexKey: two visits may be of one day
							<TableRow key={at}>
								<TableCell component="th" scope="row" sx={{ fontWeight: 400 }}>
									{dayInWords(date)}
								</TableCell>
								<TableCell>{painCell(complaint, 'now', at, date)}</TableCell>
								<TableCell>{painCell(complaint, 'worst', at, date)}</TableCell>
								<TableCell>{complaint.readings[at]?.missed ?? notAsked}</TableCell>
								<TableCell>{complaint.readings[at]?.daysOff ?? notAsked}</TableCell>
								<TableCell>{changes.join(' ') || 'nothing'}</TableCell>
							</TableRow>
						))}
					</TableBody>
				</Table>
			</Box>
		</Box>
	))
}
