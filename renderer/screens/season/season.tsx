/**
 * The season of one player: sessions in, the rotation planned, the change told, chart and calendar
 * out.
 */
import { Box, Button, Stack, Typography } from '@mui/material'
import { useMemo } from 'react'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Trouble } from '../../parts/form.tsx'
import { Page } from '../../parts/Page.tsx'
import { useHost } from '../../query.ts'
import { Dates } from './Dates.tsx'
import { Exceptions } from './Exceptions.tsx'
import { isDate, linesOf } from './edits.ts'
import { FromPlay } from './FromPlay.tsx'
import { GiveOut } from './GiveOut.tsx'
import { Import } from './Import.tsx'
import { Notices } from './Notices.tsx'
import { OpenedDay } from './OpenedDay.tsx'
import { PairMarks } from './PairMarks.tsx'
import { PlanFindings } from './PlanTold.tsx'
import { Replan } from './Replan.tsx'
import { PlanActs, Progress, SeasonLine } from './SeasonHead.tsx'
import { useGridWalk } from './useGridWalk.ts'
import { type Planning, usePlanning } from './usePlanning.ts'
import { type Opened, type SeasonEdits, useSeasonEdits } from './useSeasonEdits.ts'
import { type Told, useTold } from './useTold.ts'
import { WeekGrid } from './WeekGrid.tsx'
import { Weekly } from './Weekly.tsx'

export function SeasonScreen({ playerId }: { playerId: string }) {
	const season = useHost('season.open', { playerId })
	return (
		<Answered of={season} what="the season">
			{(opened) => <SeasonPage playerId={playerId} opened={opened} again={season.again} />}
		</Answered>
	)
}

interface SeasonPageProps {
	playerId: string
	opened: Opened
	again: () => void
}
function SeasonPage({ playerId, opened, again }: SeasonPageProps) {
	const told = useTold()
	const edits = useSeasonEdits({ playerId, opened, again, told })
	const planning = usePlanning({ playerId, opened, edits, told })
	const { planned, blocked } = opened
	const stale = planned !== undefined && (planned.basisChanged || planned.season !== edits.savedAs)
	return (
		<Page
			title={`Season of ${opened.name}`}
			line={<SeasonLine opened={opened} />}
			back={{ to: `#/players/${playerId}`, words: 'Back to the player' }}
			acts={<PlanActs {...{ playerId, opened, planning, told }} season={edits.season} />}
		>
			{planning.running && <Progress playerId={playerId} />}
			<Trouble says={told.trouble} />
			<Said told={told} edits={edits} />
			<Notices playerId={playerId} opened={opened} stale={stale} />
			{planning.tried && (
				<Replan
					tried={planning.tried}
					take={() => void planning.take()}
					leave={() => void planning.leave()}
				/>
			)}
			{planned && <PlanFindings findings={planned.plan.findings} />}
			{edits.season ? (
				<Rotation season={edits.season} opened={opened} edits={edits} planning={planning} />
			) : null}
			<GiveOut
				playerId={playerId}
				offered={planned !== undefined && !stale && blocked === undefined}
				allSaved={edits.allSaved}
				told={told}
			/>
			<Entered playerId={playerId} edits={edits} offered={opened.fromPlay} />
		</Page>
	)
}

/** What was done last, and the way to take it back. */
function Said({ told, edits }: { told: Told; edits: SeasonEdits }) {
	return (
		<Typography
			role="status"
			aria-live="polite"
			sx={{ fontWeight: 600, '&:empty': { display: 'none' } }}
		>
			{told.says}
			{told.says && told.canTakeBack && edits.canTakeBack && (
				<Button size="small" sx={{ ml: 1 }} onClick={edits.takeBack}>
					Take back
				</Button>
			)}
		</Typography>
	)
}

/** What the season is made of: its days, the weekly pattern, what departs from it, lists. */
interface EnteredProps {
	playerId: string
	edits: SeasonEdits
	/** A weekly pattern of what was entered under play. */
	offered: Opened['fromPlay']
}
function Entered({ playerId, edits, offered }: EnteredProps) {
	const { season, change, allSaved } = edits
	return (
		<Box
			component="section"
			aria-label="What the season is made of"
			sx={{
				display: 'grid',
				gridTemplateColumns: 'repeat(auto-fit, minmax(min(19rem, 100%), 1fr))',
				gap: 2,
				alignItems: 'start',
				'& > *': { minWidth: 0 },
			}}
		>
			<Dates key={`${season?.from} ${season?.to}`} season={season} change={change} />
			{season && (
				<>
					<FromPlay offered={offered} season={season} change={change} />
					<Weekly season={season} change={change} />
					<Exceptions season={season} change={change} />
					<Import playerId={playerId} season={season} change={change} saved={allSaved} />
				</>
			)}
		</Box>
	)
}

interface RotationProps {
	season: Season
	opened: Opened
	edits: SeasonEdits
	planning: Planning
}
/** Every session with its pair in one picture, and the day that is opened beside it. */
function Rotation({ season, opened, edits: { change }, planning }: RotationProps) {
	const { planned, pairs, young, from } = opened
	const today = isDate(planning.from) ? planning.from : from
	const lines = useMemo(() => linesOf(season, planned?.plan, today), [season, planned, today])
	const { weeks, line, day, open, close, pin, body, walk } = useGridWalk({
		lines,
		pairs,
		season,
		change,
	})
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: 'minmax(0, 1fr) minmax(18rem, 25%)',
				'@container (max-width: 68rem)': { gridTemplateColumns: 'minmax(0, 1fr)' },
				gap: 2,
				alignItems: 'start',
			}}
		>
			<WeekGrid weeks={weeks} pairs={pairs} walk={walk} body={body} />
			<Stack spacing={2}>
				{open && day !== undefined && (
					<OpenedDay
						day={day}
						line={line}
						pairs={pairs}
						pin={pin}
						close={close}
						season={season}
						change={change}
					/>
				)}
				{pairs.length > 0 && <PairMarks pairs={pairs} plan={planned?.plan} young={young} />}
			</Stack>
		</Box>
	)
}
