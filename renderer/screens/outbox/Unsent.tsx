/** Signed, and nobody was given anything yet: what is proposed for whom, put into the outbox in one step. */
import { Alert, Box, Button, Chip, Link, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { mostListed, type UnsentVisit, unsentDays } from '../../../shared/desk/outbox/many.ts'
import { addDays } from '../../../shared/engine/plain/days.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayInWords, today } from '../../parts/dates.ts'
import { besideField, Field, Outcome } from '../../parts/form.tsx'
import { counted } from '../../parts/Needs.tsx'
import { Empty } from '../../parts/Page.tsx'
import { Panel, Way } from '../../parts/panels.tsx'
import { change, useHost, useHostAction } from '../../query.ts'
import { UnsentRow } from './UnsentRow.tsx'
import { byDay, type Changed, oneMore, type Row, rowsOf, rowWords, toBePut } from './unsentRows.ts'

const firstDay = (): string => addDays(today(), -unsentDays)

/** A row that was not put, with why. */
interface NotPut {
	visit: UnsentVisit
	row: Row
	says: string
}

export function Unsent() {
	const [from, setFrom] = useState(firstDay)
	const [due, setDue] = useState(today)
	const [changed, setChanged] = useState<Changed>({})
	const [left, setLeft] = useState<readonly NotPut[]>([])
	const list = useHost(
		'outbox.unsent',
		{ from: from || firstDay(), limit: mostListed },
		{ keepLast: true },
	)
	const action = useHostAction()
	// the button stands there once it is known what it would do
	if (list.value === undefined)
		return list.says ? (
			<Refused of={list} />
		) : (
			<Typography role="status">Opening the list.</Typography>
		)
	const { visits } = list.value
	const ticked = toBePut(visits, changed)
	const put = () =>
		action.run(async () => {
			const rows = ticked.map(({ row: { isOn: _, ...row } }) => row)
			const { lines } = await change('outbox.putMany', { rows, due })
			const isPut = (index: number) => lines[index]?.itemId !== undefined
			setLeft(
				ticked
					.map((one, index) => ({ ...one, says: lines[index]?.says ?? '' }))
					.filter((_, index) => !isPut(index)),
			)
			setChanged({})
			return `${lines.filter((_, index) => isPut(index)).length} of ${counted(lines.length, 'document')} put into the outbox, to be checked.`
		})
	return (
		<Stack spacing={2}>
			<Panel
				title="Signed, and nobody was given anything yet"
				hint="Proposed by age and consent; each line can be changed. What is put into the outbox is still checked there, one by one."
			>
				<Refused of={list} />
				<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'start' }}>
					<Box sx={{ width: 220 }}>
						<Field label="Signed since" type="date" value={from} set={setFrom} />
					</Box>
					<Box sx={{ width: 220 }}>
						<Field label="Due" type="date" value={due} set={setDue} />
					</Box>
					<Box sx={besideField}>
						<Button
							variant="contained"
							disabled={action.busy || ticked.length === 0 || due === ''}
							onClick={put}
						>
							{ticked.length === 0
								? 'Nothing is ticked'
								: `Put ${counted(ticked.length, 'document')} into the outbox`}
						</Button>
					</Box>
				</Box>
				<Outcome of={action} />
				{action.done && <Way to="#/outbox">Open the queue</Way>}
				<Left left={left} />
			</Panel>
			<Days
				answer={list.value}
				changed={changed}
				setRows={(visitId, rows) => setChanged((now) => ({ ...now, [visitId]: rows }))}
			/>
		</Stack>
	)
}

function Left({ left }: { left: readonly NotPut[] }) {
	if (left.length === 0) return null
	return (
		<Alert severity="warning">
			{left.map(({ visit, row, says }) => (
				<Typography key={`${row.visitId} ${row.kind} ${row.recipientId}`}>
					{visit.playerName}, {rowWords(visit, row)}: {says}{' '}
					<Link href={`#/outbox/player/${visit.playerId}`} color="inherit">
						Prepare it by itself
					</Link>
				</Typography>
			))}
		</Alert>
	)
}

type SetRows = (visitId: string, rows: readonly Row[]) => void
interface DaysProps {
	answer: OutputOf<'outbox.unsent'>
	changed: Changed
	setRows: SetRows
}
function Days({ answer: { visits, more }, changed, setRows }: DaysProps) {
	if (visits.length === 0)
		return (
			<Empty says="Of each visit that was signed since that day somebody was given something, or it waits in the queue." />
		)
	const first = visits.filter(({ goesFirst }) => goesFirst).map(({ playerName }) => playerName)
	return (
		<>
			{first.length > 0 && (
				<Alert severity="error" role="alert">
					Urgent, and nobody was given anything yet: {first.join(', ')}. Send these first, or hand
					them over today.
				</Alert>
			)}
			{byDay(visits).map(([day, ofDay]) => (
				<Panel key={day} title={`Signed ${dayInWords(day)}`} hint={counted(ofDay.length, 'visit')}>
					{ofDay.map((visit) => (
						<OfVisit
							key={visit.visitId}
							visit={visit}
							rows={rowsOf(visit, changed)}
							setRows={setRows}
						/>
					))}
				</Panel>
			))}
			{more > 0 && (
				<Typography color="textSecondary">
					{counted(more, 'older visit')} not shown: put these first, or choose a later day.
				</Typography>
			)}
		</>
	)
}

interface OfVisitProps {
	visit: UnsentVisit
	rows: readonly Row[]
	setRows: SetRows
}
function OfVisit({ visit, rows, setRows }: OfVisitProps) {
	const { visitId, playerId, playerName, birthDate, visitDate, isMinor, goesFirst } = visit
	const { cannot, offers } = visit
	const more = oneMore(visit, rows)
	const noGuardian = isMinor && !offers.some(({ recipient }) => recipient.role === 'guardian')
	return (
		<Box
			component="section"
			aria-label={playerName}
			sx={{
				borderLeft: 3,
				borderColor: 'divider',
				pl: 1.5,
				display: 'grid',
				gridTemplateColumns: 'minmax(0, 1fr)',
				gap: 0.5,
			}}
		>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'baseline', columnGap: 1.5 }}>
				<Typography variant="h3">
					<Link
						href={`#/players/${playerId}`}
						color="inherit"
						underline="hover"
						sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44 }}
					>
						{playerName}
					</Link>
				</Typography>
				{goesFirst && <Chip size="small" variant="outlined" color="error" label="Urgent" />}
				<Typography variant="body2" color="textSecondary">
					born {dayInWords(birthDate)}
					{isMinor ? ', a minor' : ''}; visit of {dayInWords(visitDate)}
				</Typography>
			</Box>
			{cannot !== undefined && <Typography color="error">{cannot}</Typography>}
			{cannot === undefined && noGuardian && (
				<Typography color="error">
					No guardian is on record. Add the guardian to the record first.
				</Typography>
			)}
			{rows.map((row, index) => (
				<UnsentRow
					// biome-ignore lint/suspicious/noArrayIndexKey: a row is its place among those of its visit
					key={index}
					visit={visit}
					row={row}
					put={(next) =>
						setRows(
							visitId,
							rows.map((one, at) => (at === index ? next : one)),
						)
					}
				/>
			))}
			{more && (
				<Box>
					<Button
						size="small"
						aria-label={`One more page of ${playerName}`}
						onClick={() => setRows(visitId, [...rows, more])}
					>
						One more page
					</Button>
				</Box>
			)}
		</Box>
	)
}
