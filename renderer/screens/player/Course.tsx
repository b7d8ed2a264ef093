/** Pain, sessions missed and what was changed when: drawn, in words, and in numbers. */
import { Box, Button, Collapse, Typography } from '@mui/material'
import { useId, useState } from 'react'
import type { PlayerCourse } from '../../../shared/desk/players/course.ts'
import { courseSvg } from '../../../shared/engine/course/drawing.ts'
import { stepWords, verdictNames } from '../../../shared/engine/words/en/course.ts'
import { Answered } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { FittedDrawing } from '../../parts/FittedDrawing.tsx'
import { Empty } from '../../parts/Page.tsx'
import { Panel } from '../../parts/panels.tsx'
import { spokenOnly } from '../../parts/spokenOnly.ts'
import { useHost } from '../../query.ts'
import { CourseNumbers } from './CourseNumbers.tsx'

type Complaint = PlayerCourse['complaints'][number]
/** What the drawing says, for those who do not see it; each number stands in the table too. */
function alternativeOf({ complaints, visits }: PlayerCourse): string {
	const told = complaints.map(({ name, steps }) =>
		steps.length > 0 ? `${name}: ${steps.map(stepWords).join('; ')}` : `${name}: asked once`,
	)
	return `Pain over ${visits.length} visits. ${told.join('. ')}. The numbers stand in the table.`
}
const Drawn = ({ course }: { course: PlayerCourse }) => (
	<FittedDrawing
		of={course}
		draw={courseSvg}
		leastWidthPt={180}
		mostWidthPt={560}
		alternative={alternativeOf(course)}
	/>
)
/** The last change of each line of pain, and whether it goes beyond its error. */
function Steps({ complaints }: { complaints: readonly Complaint[] }) {
	const last = complaints.flatMap(({ name, steps }) =>
		(['now', 'worst'] as const).flatMap((of) => {
			const step = steps.findLast((one) => one.of === of)
			return step ? [{ name, step }] : []
		}),
	)
	if (last.length === 0) return null
	return (
		<Box component="ul" sx={{ m: 0, mt: 1, pl: 2.5 }}>
			{last.map(({ name, step }) => (
				<Typography component="li" key={`${name} ${step.of}`}>
					{name}: {stepWords(step)}.
				</Typography>
			))}
		</Box>
	)
}
function Changed({ visits }: Pick<PlayerCourse, 'visits'>) {
	const marked = visits.filter(({ mark }) => mark !== undefined)
	if (marked.length === 0) return null
	return (
		<Box sx={{ mt: 1 }}>
			<Typography variant="h3">What was changed when</Typography>
			<Box component="dl" sx={{ m: 0, display: 'grid', gridTemplateColumns: 'auto 1fr', gap: 0.5 }}>
				{marked.map(({ date, mark, changes }) => (
					<Box key={mark} sx={{ display: 'contents' }}>
						<Typography component="dt" sx={{ fontWeight: 700, pr: 1 }}>
							{mark}
						</Typography>
						<Typography component="dd" sx={{ m: 0, minWidth: 0 }}>
							{dayInWords(date)}: {changes.join(' ')}
						</Typography>
					</Box>
				))}
			</Box>
		</Box>
	)
}
function Numbers({ course }: { course: PlayerCourse }) {
	const [open, setOpen] = useState(false)
	const id = useId()
	const { points, source, population } = course.limit
	return (
		<>
			<Button
				variant="text"
				size="small"
				aria-expanded={open}
				aria-controls={id}
				onClick={() => setOpen(!open)}
				sx={{ minHeight: 44, px: 1, alignSelf: 'start', justifySelf: 'start' }}
			>
				Numbers
				<Box component="span" sx={spokenOnly}>
					: course
				</Box>
			</Button>
			<Collapse in={open} id={id} unmountOnExit>
				<CourseNumbers course={course} />
				<Typography variant="body2" color="textSecondary" sx={{ mt: 1 }}>
					A change of pain is {verdictNames['beyond-error']} from {points} points of 10 on: {source}
					. Found in {population}.
				</Typography>
			</Collapse>
		</>
	)
}
function CourseTold({ course }: { course: PlayerCourse }) {
	const { visits, complaints, insert } = course
	return (
		<>
			<Panel named title="Course">
				{course.complaints.length === 0 ? (
					<Empty
						says={
							visits.length === 0
								? 'Pain and sessions missed stand here once a visit is signed.'
								: 'No pain was told at a signed visit.'
						}
					/>
				) : (
					<>
						<Typography variant="body2" color="textSecondary">
							As told at signed visits. What was changed stands beside it; whether it did anything
							is not said.
						</Typography>
						<Drawn course={course} />
						<Steps complaints={complaints} />
					</>
				)}
				<Changed visits={visits} />
				{complaints.length > 0 && <Numbers course={course} />}
			</Panel>
			{insert && <WornInsert insert={insert} />}
		</>
	)
}
/** The insert of ours, with all that was done to it. */
const WornInsert = ({ insert }: { insert: NonNullable<PlayerCourse['insert']> }) => (
	<Panel named title="Insert that is worn">
		<Typography>Asked for on {dayInWords(insert.orderedOn)}.</Typography>
		{insert.adjusted.map(({ on, lines }) => (
			<Box key={on} sx={{ mt: 0.5 }}>
				<Typography sx={{ fontWeight: 600 }}>To be adjusted, {dayInWords(on)}</Typography>
				{lines.map((says) => (
					<Typography key={says}>{says}.</Typography>
				))}
			</Box>
		))}
	</Panel>
)
/** @param playerId only for those who treat: the host refuses all others */
export function Course({ playerId }: { playerId: string }) {
	const answer = useHost('players.course', { playerId })
	return (
		<Answered of={answer} what="the course">
			{(course) => <CourseTold course={course} />}
		</Answered>
	)
}
