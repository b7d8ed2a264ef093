/** The list of who is due, week by week, with its filters and the way to reminders. */
import { Alert, Box, Button, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { RecallLine, Reminded } from '../../../shared/desk/recall/calls.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Field, Trouble } from '../../parts/form.tsx'
import { Empty } from '../../parts/Page.tsx'
import { Panel } from '../../parts/panels.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'
import { change, useHost, useHostAction } from '../../query.ts'
import { Line } from './Line.tsx'
import { RemindedLists } from './Reminded.tsx'
import { counted, showOf, shows, weekWords } from './words.ts'

type Listed = OutputOf<'recall.list'>
/** Lines on the page; the filters narrow down what is left: a choice of this program. */
const mostLines = 200
type Entries = Record<'show' | 'club' | 'age' | 'clinician', string>
const nothingChosen: Entries = { show: shows[0]?.title ?? '', club: '', age: '', clinician: '' }
const ages = { Adults: 'adult', Minors: 'minor' } as const
const isAge = (title: string): title is keyof typeof ages => Object.hasOwn(ages, title)

const inputOf = ({ show, club, age, clinician }: Entries) => ({
	show: showOf(show),
	club: club || undefined,
	age: isAge(age) ? ages[age] : undefined,
	clinician: clinician || undefined,
	limit: mostLines,
})

export function List({ role }: { role: PersonRole }) {
	const [entries, setEntries] = useState(nothingChosen)
	const list = useHost('recall.list', inputOf(entries), { keepLast: true })
	return (
		<Answered of={list} what="the list">
			{(listed) => (
				<Stack spacing={2}>
					<Counts listed={listed} role={role} />
					<Filters entries={entries} set={setEntries} listed={listed} />
					<Lines listed={listed} role={role} isFiltered={entries !== nothingChosen} />
				</Stack>
			)}
		</Answered>
	)
}

function Counts({ listed, role }: { listed: Listed; role: PersonRole }) {
	const { counts, followUps, troubles } = listed
	const says = [
		[counts.overdue, 'overdue'],
		[counts.thisWeek, 'due this week'],
		[counts.booked, 'booked'],
		[counts.waits, 'asked to wait'],
	] as const
	return (
		<>
			{followUps > 0 && <FollowUps count={followUps} role={role} />}
			{troubles.map((trouble) => (
				<Alert key={trouble} severity="warning">
					{trouble} What the player is due for may be missing here.
				</Alert>
			))}
			<Box
				role="group"
				aria-label="How many players"
				sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 3, rowGap: 0.5 }}
			>
				{says.map(([count, words]) => (
					<Typography key={words} component="span">
						<Box component="strong" sx={{ fontSize: '1.25rem', mr: 0.75 }}>
							{count}
						</Box>
						{words}
					</Typography>
				))}
			</Box>
		</>
	)
}
/** Who may not read what is clinical is told that there is something to do, and nothing of it. */
function FollowUps({ count, role }: { count: number; role: PersonRole }) {
	if (!may(role).treat)
		return <Alert severity="info">The clinician has referrals to follow up: {count}.</Alert>
	return (
		<Alert
			severity="error"
			action={
				<Button color="inherit" href="#/due/referrals">
					Open them
				</Button>
			}
		>
			{counted(count, 'player', 'players')} with a referral that nobody has heard from.
		</Alert>
	)
}

interface FiltersProps {
	entries: Entries
	set: (entries: Entries) => void
	listed: Listed
}
function Filters({ entries, set, listed }: FiltersProps) {
	const fields: [keyof Entries, string, readonly string[]][] = [
		['show', 'Show', shows.map(({ title }) => title)],
		['club', 'Club or team', listed.clubs],
		['age', 'Age', Object.keys(ages)],
		['clinician', 'Signed by', listed.clinicians],
	]
	return (
		<Box
			className="lw-screen-only"
			sx={{
				display: 'grid',
				gridTemplateColumns: 'repeat(auto-fill, minmax(12rem, 1fr))',
				gap: 1.5,
				maxWidth: '60rem',
			}}
		>
			{fields.map(([name, label, options]) => (
				<Field
					key={name}
					label={label}
					value={entries[name]}
					set={(value) => set({ ...entries, [name]: value })}
					optional
					options={options}
				/>
			))}
		</Box>
	)
}

interface LinesProps {
	listed: Listed
	role: PersonRole
	isFiltered: boolean
}
function Lines({ listed, role, isFiltered }: LinesProps) {
	const { lines, total, today } = listed
	const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set())
	const weeks = [...new Set(lines.map(({ week }) => week))]
	const shown = new Set(lines.map(({ playerId }) => playerId))
	const toRemind = [...chosen].filter((playerId) => shown.has(playerId))
	if (lines.length === 0) return <Nobody isFiltered={isFiltered} />
	const choose = (playerId: string, on: boolean) =>
		setChosen((now) => {
			const next = new Set(now)
			if (on) next.add(playerId)
			else next.delete(playerId)
			return next
		})
	return (
		<>
			{may(role).desk && (
				<Reminding
					chosen={toRemind}
					chooseAll={() => setChosen(shown)}
					done={() => setChosen(new Set())}
				/>
			)}
			{total > lines.length && (
				<Typography color="textSecondary">
					The first {lines.length} of {total} players. Choose a club or a clinician to see the
					others.
				</Typography>
			)}
			{weeks.map((week) => (
				<Panel key={week} title={weekWords(week, today)} named>
					<Box component="ul" sx={{ listStyle: 'none', m: 0, p: 0 }}>
						{lines
							.filter((line) => line.week === week)
							.map((line: RecallLine) => (
								<Line
									key={line.playerId}
									line={line}
									role={role}
									today={today}
									isChosen={chosen.has(line.playerId)}
									choose={(on) => choose(line.playerId, on)}
								/>
							))}
					</Box>
				</Panel>
			))}
		</>
	)
}
const Nobody = ({ isFiltered }: { isFiltered: boolean }) => (
	<Empty
		says={
			isFiltered
				? 'Nobody fits. Choose less to see the others.'
				: 'Nobody is due. Here will stand each player whose signed visit or season sets a day: a ' +
					'review, feet to be measured again, a pair that runs out, an insert to be checked, a ' +
					'season to be planned again.'
		}
	/>
)

interface RemindingProps {
	/** ids of players */
	chosen: readonly string[]
	chooseAll: () => void
	done: () => void
}
function Reminding({ chosen, chooseAll, done }: RemindingProps) {
	const action = useHostAction()
	const [reminded, setReminded] = useState<readonly Reminded[]>([])
	const remind = (playerIds: readonly string[], way: 'mail' | 'letter') =>
		action.run(async () => {
			const answer = await change('recall.remind', { playerIds: [...playerIds], way })
			setReminded((before) => [
				...answer.lines,
				...before.filter(({ playerId }) => !playerIds.includes(playerId)),
			])
			done()
			return ''
		})
	const off = action.busy || chosen.length === 0
	return (
		<Box sx={{ display: 'grid', gap: 1.5 }}>
			<Box
				role="group"
				aria-label="Reminders"
				className="lw-screen-only"
				sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1 }}
			>
				<Button variant="outlined" disabled={off} onClick={() => remind(chosen, 'mail')}>
					Remind by e-mail
				</Button>
				<Button variant="outlined" disabled={off} onClick={() => remind(chosen, 'letter')}>
					Remind by letter
				</Button>
				<Button onClick={chooseAll}>Tick all that are shown</Button>
				<Typography role="status" color="textSecondary">
					{action.busy
						? 'Making the reminders.'
						: chosen.length === 0
							? 'Tick players to remind them to make an appointment.'
							: `${counted(chosen.length, 'player', 'players')} ticked.`}
				</Typography>
			</Box>
			<Trouble says={action.says} />
			<RemindedLists
				reminded={reminded}
				busy={action.busy}
				byLetter={(playerIds) => remind(playerIds, 'letter')}
			/>
		</Box>
	)
}
