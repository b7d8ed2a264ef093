/**
 * The season of one player: sessions in, the rotation planned, the change told, chart and calendar
 * out.
 */
import { Box, Button, Stack, Typography } from '@mui/material'
import { useMemo } from 'react'
import { Answered } from '../../parts/Answered.tsx'
import { Trouble } from '../../parts/form.tsx'
import { useHost } from '../../query.ts'
import { Dates } from './Dates.tsx'
import { Exceptions } from './Exceptions.tsx'
import { isDate, linesOf } from './edits.ts'
import { FromPlay } from './FromPlay.tsx'
import { GiveOut } from './GiveOut.tsx'
import { Import } from './Import.tsx'
import { Notices } from './Notices.tsx'
import { PairList } from './PairList.tsx'
import { Picture } from './Picture.tsx'
import { PlanChanges, PlanFindings } from './PlanTold.tsx'
import { SeasonHead } from './SeasonHead.tsx'
import { Sessions } from './Sessions.tsx'
import { type Planning, usePlanning } from './usePlanning.ts'
import { type Opened, type SeasonEdits, useSeasonEdits } from './useSeasonEdits.ts'
import { type Told, useTold } from './useTold.ts'
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
	const { planned, pairs, blocked } = opened
	const stale = planned !== undefined && (planned.basisChanged || planned.season !== edits.savedAs)
	return (
		<Stack spacing={2}>
			<SeasonHead {...{ playerId, opened, planning, told }} season={edits.season} />
			<Trouble says={told.trouble} />
			<Said told={told} edits={edits} />
			<Notices playerId={playerId} opened={opened} stale={stale} />
			{pairs.length > 0 && <PairList pairs={pairs} />}
			<GiveOut
				playerId={playerId}
				offered={planned !== undefined && !stale && blocked === undefined}
				allSaved={edits.allSaved}
				told={told}
			/>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: 'minmax(0, 25rem) minmax(0, 1fr)',
					'@container (max-width: 60rem)': { gridTemplateColumns: 'minmax(0, 1fr)' },
					gap: 2,
					alignItems: 'start',
				}}
			>
				<Entered playerId={playerId} edits={edits} offered={opened.fromPlay} />
				<Rotation opened={opened} edits={edits} planning={planning} />
			</Box>
		</Stack>
	)
}

/** What was done last, and the way to take it back. */
function Said({ told, edits }: { told: Told; edits: SeasonEdits }) {
	return (
		<Typography role="status" aria-live="polite" sx={{ minHeight: '1.5em', fontWeight: 600 }}>
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
		<Stack spacing={2}>
			<Dates key={`${season?.from} ${season?.to}`} season={season} change={change} />
			{season && (
				<>
					<FromPlay offered={offered} season={season} change={change} />
					<Weekly season={season} change={change} />
					<Exceptions season={season} change={change} />
					<Import playerId={playerId} season={season} change={change} saved={allSaved} />
				</>
			)}
		</Stack>
	)
}

interface RotationProps {
	opened: Opened
	edits: SeasonEdits
	planning: Planning
}
/** Every session with its pair, and what the plan says. */
function Rotation({ opened, edits, planning }: RotationProps) {
	const { season, change } = edits
	const { planned, pairs, young, from } = opened
	const today = isDate(planning.from) ? planning.from : from
	const lines = useMemo(
		() => (season ? linesOf(season, planned?.plan, today) : []),
		[season, planned, today],
	)
	return (
		<Stack spacing={2} sx={{ minWidth: 0 }}>
			{planned && planned.changes.length > 0 && (
				<PlanChanges changes={planned.changes} open={planning.changed} />
			)}
			{season && <Sessions lines={lines} pairs={pairs} season={season} change={change} />}
			{planned && <Picture plan={planned.plan} young={young} />}
			{planned && <PlanFindings findings={planned.plan.findings} />}
		</Stack>
	)
}
