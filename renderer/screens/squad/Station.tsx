/** One station, one player: its fields alone, in large type, written into the player's draft. */
import { Alert, Box, Button, Checkbox, FormControlLabel, Typography } from '@mui/material'
import { Fragment, useEffect, useState } from 'react'
import { navigate } from 'wouter/use-hash-location'
import type { BoardRow } from '../../../shared/desk/squad/board.ts'
import { missingAt, type StationId, stationOf } from '../../../shared/desk/squad/stations.ts'
import { swapQuestions } from '../../../shared/desk/squad/swapped.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { call, wordsOf } from '../../host.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { dayInWords } from '../../parts/dates.ts'
import { readPath } from '../../parts/draft-path.ts'
import { Trouble } from '../../parts/form.tsx'
import { FieldRow } from '../../parts/MeasureField.tsx'
import { Page } from '../../parts/Page.tsx'
import { Way } from '../../parts/panels.tsx'
import { walkByEnter } from '../../parts/walkByEnter.ts'
import { AlsoOpen } from '../assessment/AlsoOpen.tsx'
import { latestBefore } from '../assessment/latestBefore.ts'
import { Pairs } from '../assessment/Pairs.tsx'
import { type OpenDraft, useDraft } from '../assessment/useDraft.ts'
import { Gaps } from './Gaps.tsx'
import { labelOf } from './labels.ts'
import { SideHeads } from './SideHeads.tsx'
import { SwapQuestion } from './SwapQuestion.tsx'

interface StationProps {
	squadId: string
	station: StationId
	row: BoardRow
	/** All players of the day: a number that stands twice is warned of. */
	rows: readonly BoardRow[]
}
interface AtStationProps extends StationProps {
	open: OpenDraft
}
const large = {
	'& .MuiInputBase-input': { fontSize: '1.75rem' },
	'& .MuiTypography-root': { fontSize: '1.15rem' },
	'& .MuiFormHelperText-root': { fontSize: '1rem' },
}
const bordered = {
	display: 'flex',
	flexWrap: 'wrap',
	alignItems: 'baseline',
	gap: 2,
	p: 2,
	border: 2,
	borderColor: 'primary.main',
	borderRadius: 1,
}

export function Station(props: StationProps) {
	const { open, trouble } = useDraft(props.row.playerId, false)
	if (props.row.state === 'signed')
		return (
			<Alert severity="info">
				{props.row.name} is signed. <Way to={`#/squad/${props.squadId}`}>Back to the board</Way>
			</Alert>
		)
	if (open) return <AtStation {...props} open={open} />
	if (trouble) return <Trouble says={trouble} />
	return <Typography role="status">Opening the station.</Typography>
}

function AtStation(props: AtStationProps) {
	const { squadId, station, row, rows, open } = props
	const { content: draft, earlier, change, saveNow } = open
	const [says, setSays] = useState('')
	const [sure, setSure] = useState('')
	const { playerId } = row
	// the board is not on screen: it reads anew where it is opened again
	useEffect(() => {
		call('squad.mark', { squadId, playerId, presence: 'here', at: station }).catch((error) =>
			setSays(wordsOf(error)),
		)
	}, [squadId, playerId, station])
	const questions = swapQuestions(draft.visit, earlier, clinicProtocol).filter(
		(question) => stationOf(station).rows.flat().includes(question.path) || station === 'clinician',
	)
	const asked = questions.map((question) => question.says).join(' ')
	const leave = (to: string) => {
		if (asked !== '' && sure !== asked) return setSays('Answer the question about a swap first.')
		saveNow().then(
			() => {
				navigate(to)
			},
			(error) => setSays(wordsOf(error)),
		)
	}
	const sign = () => {
		change((now) => ({ ...now, step: 'Sign' }))
		leave(`/assessment/${playerId}`)
	}
	const missing = missingAt(draft.visit, station)
	return (
		<Page title={stationOf(station).name}>
			<Who row={row} rows={rows} open={open} />
			<AlsoOpen open={open} />
			<Entries {...props} />
			{asked !== '' && (
				<SwapQuestion
					name={row.name}
					questions={questions}
					sure={sure === asked}
					setSure={(yes) => setSure(yes ? asked : '')}
				/>
			)}
			{missing.length > 0 && (
				<Typography role="status" color="textSecondary">
					Still missing here: {missing.map(labelOf).join('; ')}.
				</Typography>
			)}
			<Trouble says={says} />
			<Leave station={station} sign={sign} back={() => leave(`/squad/${squadId}`)} />
		</Page>
	)
}

/** Who stands here, large enough to be read aloud, and whether the draft is saved. */
function Who({ row, rows, open }: Pick<AtStationProps, 'row' | 'rows' | 'open'>) {
	const { saved, content } = open
	const same = rows.filter((player) => player.number === row.number)
	return (
		<>
			<Box sx={bordered}>
				<Typography sx={{ fontSize: '3rem', fontWeight: 700, lineHeight: 1 }}>
					{row.number}
				</Typography>
				<Typography sx={{ fontSize: '1.75rem', fontWeight: 600 }}>{row.name}</Typography>
				<Typography sx={{ fontSize: '1.25rem' }}>
					born {dayInWords(row.birthDate)}, {ageYears(row.birthDate, content.visit.visitDate)} years
				</Typography>
				<Typography
					role="status"
					sx={{ ml: 'auto' }}
					color={saved.state === 'failed' ? 'error' : 'textSecondary'}
				>
					{saved.says}
				</Typography>
			</Box>
			{same.length > 1 && (
				<Alert severity="error" role="alert">
					The number {row.number} stands for {same.map((player) => player.name).join(' and ')}. Ask
					for name and birth date before going on.
				</Alert>
			)}
		</>
	)
}

function Entries({ squadId, station, row, open }: AtStationProps) {
	const { content: draft, earlier, change } = open
	const last = latestBefore(earlier, draft.visit.visitDate)
	return (
		<Box sx={{ ...large, display: 'grid', gap: 1, maxWidth: 1100 }} onKeyDown={walkByEnter}>
			{stationOf(station).rows.map((paths, place, rows) => (
				<Fragment key={paths[0]}>
					{paths.length > 1 && rows[place - 1]?.length !== paths.length && <SideHeads />}
					<FieldRow
						paths={paths}
						draft={draft}
						change={change}
						before={last ? paths.map((path) => readPath(last, path)) : []}
					/>
				</Fragment>
			))}
			{station === 'check-in' && <CheckedIn draft={draft} change={change} />}
			{station === 'footwear' && <Pairs draft={draft} change={change} />}
			{station === 'clinician' && (
				<Gaps
					visit={draft.visit}
					squadId={squadId}
					playerId={row.playerId}
					consent={draft.decisions.consentNoted === true}
				/>
			)}
		</Box>
	)
}

interface CheckedInProps {
	draft: OpenDraft['content']
	change: OpenDraft['change']
}
function CheckedIn({ draft, change }: CheckedInProps) {
	const note = (noted: boolean) =>
		change((now) => ({
			...now,
			decisions: { ...now.decisions, consentNoted: noted || undefined },
		}))
	return (
		<FormControlLabel
			control={
				<Checkbox
					checked={draft.decisions.consentNoted === true}
					onChange={(event) => note(event.target.checked)}
				/>
			}
			label={
				'Name, birth date and number were asked and fit. ' +
				'Consent to assessment and record was given today.'
			}
		/>
	)
}

interface LeaveProps {
	station: StationId
	sign: () => void
	back: () => void
}
function Leave({ station, sign, back }: LeaveProps) {
	return (
		<Box sx={{ display: 'flex', gap: 2 }}>
			{station === 'clinician' ? (
				<>
					<Button size="large" variant="contained" onClick={sign}>
						Open the assessment and sign
					</Button>
					<Button size="large" variant="outlined" onClick={back}>
						Back to the board
					</Button>
				</>
			) : (
				<Button size="large" variant="contained" onClick={back}>
					Done here, back to the board
				</Button>
			)}
		</Box>
	)
}
