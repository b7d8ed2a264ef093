/** One station, one player: its fields alone, in large type, written into the player's draft. */
import { Alert, Box, Button, Checkbox, FormControlLabel, Typography } from '@mui/material'
import { useEffect, useState } from 'react'
import type { BoardRow } from '../../../shared/desk/squad/board.ts'
import {
	missingAt,
	type StationId,
	stationOf,
	stations,
} from '../../../shared/desk/squad/stations.ts'
import { swapQuestions } from '../../../shared/desk/squad/swapped.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../../shared/engine/visit/visit.ts'
import { call, wordsOf } from '../../host.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { dayInWords } from '../../parts/dates.ts'
import { readPath } from '../../parts/draft-path.ts'
import { Trouble } from '../../parts/form.tsx'
import { FieldRow } from '../../parts/MeasureField.tsx'
import { Way } from '../../parts/panels.tsx'
import { walkByEnter } from '../../parts/walkByEnter.ts'
import { Pairs } from '../assessment/Lists.tsx'
import { type OpenDraft, useDraft } from '../assessment/useDraft.ts'

interface At {
	squadId: string
	station: StationId
	row: BoardRow
	rows: readonly BoardRow[]
}
const large = {
	'& .MuiInputBase-input': { fontSize: '1.75rem' },
	'& .MuiTypography-root': { fontSize: '1.15rem' },
	'& .MuiFormHelperText-root': { fontSize: '1rem' },
}

export function Station(props: At) {
	const { open, trouble } = useDraft(props.row.playerId)
	if (props.row.state === 'signed')
		return (
			<Alert severity="info">
				{props.row.name} is signed. <Way to={`#/squad/${props.squadId}`}>Back to the board</Way>
			</Alert>
		)
	if (!open)
		return trouble ? (
			<Trouble says={trouble} />
		) : (
			<Typography role="status">Opening the station.</Typography>
		)
	return <AtStation {...props} open={open} />
}
function AtStation({ squadId, station, row, rows, open }: At & { open: OpenDraft }) {
	const { content: draft, earlier, saved, change, saveNow } = open
	const here = stationOf(station)
	const [says, setSays] = useState('')
	const [sure, setSure] = useState('')
	const { playerId } = row
	useEffect(() => {
		call('squad.mark', { squadId, playerId, presence: 'here', at: station }).catch((error) =>
			setSays(wordsOf(error)),
		)
	}, [squadId, playerId, station])
	const questions = swapQuestions(draft.visit, earlier, clinicProtocol).filter(
		(question) => here.rows.flat().includes(question.path) || station === 'clinician',
	)
	const asked = questions.map((question) => question.says).join(' ')
	const settled = asked === '' || sure === asked
	const last = earlier
		.filter((visit) => visit.visitDate < draft.visit.visitDate)
		.toSorted((a, b) => (a.visitDate < b.visitDate ? 1 : -1))[0]
	const missing = missingAt(draft.visit, station)
	const leave = (to: string) => {
		if (!settled) return setSays('Answer the question about a swap first.')
		saveNow().then(
			() => {
				location.hash = to
			},
			(error) => setSays(wordsOf(error)),
		)
	}
	const sign = () => {
		change((now) => ({ ...now, step: 'Sign and report' }))
		leave(`#/assessment/${playerId}`)
	}
	const same = rows.filter((one) => one.number === row.number)
	return (
		<Box sx={{ display: 'grid', gap: 2, maxWidth: 1100 }}>
			<Typography variant="h1">{here.name}</Typography>
			<Box
				sx={{
					display: 'flex',
					flexWrap: 'wrap',
					alignItems: 'baseline',
					gap: 2,
					p: 2,
					border: 2,
					borderColor: 'primary.main',
					borderRadius: 1,
				}}
			>
				<Typography sx={{ fontSize: '3rem', fontWeight: 700, lineHeight: 1 }}>
					{row.number}
				</Typography>
				<Typography sx={{ fontSize: '1.75rem', fontWeight: 600 }}>{row.name}</Typography>
				<Typography sx={{ fontSize: '1.25rem' }}>
					born {dayInWords(row.birthDate)}, {ageYears(row.birthDate, draft.visit.visitDate)} years
				</Typography>
				<Typography
					role="status"
					sx={{ ml: 'auto' }}
					color={saved.startsWith('Not') ? 'error' : 'textSecondary'}
				>
					{saved}
				</Typography>
			</Box>
			{same.length > 1 && (
				<Alert severity="error" role="alert">
					The number {row.number} stands for {same.map((one) => one.name).join(' and ')}. Ask for
					name and birth date before going on.
				</Alert>
			)}
			<Box sx={{ ...large, display: 'grid', gap: 1 }} onKeyDown={walkByEnter}>
				{here.rows.map((paths) => (
					<FieldRow
						key={paths[0]}
						paths={paths}
						draft={draft}
						change={change}
						before={last ? paths.map((path) => readPath(last, path)) : []}
					/>
				))}
				{station === 'check-in' && (
					<FormControlLabel
						control={
							<Checkbox
								checked={draft.decisions.consentNoted === true}
								onChange={(event) =>
									change((now) => ({
										...now,
										decisions: {
											...now.decisions,
											consentNoted: event.target.checked || undefined,
										},
									}))
								}
							/>
						}
						label="Name, birth date and number were asked and fit. Consent to assessment and record was given today."
					/>
				)}
				{station === 'footwear' && <Pairs draft={draft} change={change} />}
				{station === 'clinician' && (
					<Gaps
						visit={draft.visit}
						squadId={squadId}
						playerId={playerId}
						consent={draft.decisions.consentNoted === true}
					/>
				)}
			</Box>
			{asked !== '' && (
				<Alert severity="warning" role="alert">
					<Typography sx={{ fontWeight: 600 }}>
						Is this really {row.name}? Perhaps two players were swapped, or left and right.
					</Typography>
					{questions.map((question) => (
						<Typography key={question.says}>
							{question.says} (asked at more than {question.basis.threshold?.split(' = ').at(-1)};{' '}
							{question.basis.source})
						</Typography>
					))}
					<FormControlLabel
						control={
							<Checkbox
								checked={sure === asked}
								onChange={(event) => setSure(event.target.checked ? asked : '')}
							/>
						}
						label="Name and number asked again, measured again: it is right"
					/>
				</Alert>
			)}
			{missing.length > 0 && (
				<Typography role="status" color="textSecondary">
					Still missing here: {missing.map((path) => labelOf(path)).join('; ')}.
				</Typography>
			)}
			<Trouble says={says} />
			<Box sx={{ display: 'flex', gap: 2 }}>
				{station === 'clinician' ? (
					<Button size="large" variant="contained" onClick={sign}>
						Open the assessment and sign
					</Button>
				) : (
					<Button size="large" variant="contained" onClick={() => leave(`#/squad/${squadId}`)}>
						Done here, back to the board
					</Button>
				)}
				{station === 'clinician' && (
					<Button size="large" variant="outlined" onClick={() => leave(`#/squad/${squadId}`)}>
						Back to the board
					</Button>
				)}
			</Box>
		</Box>
	)
}
function labelOf(path: string): string {
	if (path === 'footwear') return 'a pair of footwear'
	const side = /\.(left|right)\./.exec(path)?.[1]
	const { title } = fieldMeta(visitSchema, path)
	return side ? `${title}, ${side}` : title
}
function Gaps({
	visit,
	squadId,
	playerId,
	consent,
}: {
	visit: Parameters<typeof missingAt>[0]
	squadId: string
	playerId: string
	consent: boolean
}) {
	const gaps = stations
		.map((station) => ({ ...station, missing: missingAt(visit, station.id) }))
		.filter((one) => one.missing.length > 0)
	return (
		<Box sx={{ display: 'grid', gap: 1 }}>
			{!consent && (
				<Alert severity="warning">
					Consent is not noted. <Way to={`#/squad/${squadId}/check-in/${playerId}`}>Check-in</Way>
				</Alert>
			)}
			{gaps.length === 0 ? (
				<Typography role="status">Every station has what it needs.</Typography>
			) : (
				gaps.map((gap) => (
					<Typography key={gap.id}>
						<Way to={`#/squad/${squadId}/${gap.id}/${playerId}`}>{gap.name}</Way> lacks{' '}
						{gap.missing.map(labelOf).join('; ')}.
					</Typography>
				))
			)}
		</Box>
	)
}
