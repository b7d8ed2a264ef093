/** One player: details, earlier visits with their reports, and the way into an assessment. */
import { Alert, Box, Button, Link, Stack, Typography } from '@mui/material'
import { useCallback, useEffect, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { sexes } from '../../../shared/engine/visit/terms.ts'
import { call, wordsOf } from '../../host.ts'
import { dayInWords, today } from '../../parts/dates.ts'
import { byField, Field, Sheet, Trouble } from '../../parts/form.tsx'
import {
	type Form,
	formOf,
	guardianPaths,
	paths,
	personPaths,
	readForm,
	titleOf,
} from './details.ts'
import type { SavedNotice } from './notice.ts'
import { Visits } from './Visits.tsx'

interface PlayerProps {
	playerId?: string | undefined
	/** who works here: reception keeps the details, others assess too */
	role?: string | undefined
	notice?: SavedNotice | undefined
	saved: (notice: SavedNotice) => void
}
const types: Record<string, string> = {
	birthDate: 'date',
	email: 'email',
	phone: 'tel',
	'guardian.email': 'email',
	'guardian.phone': 'tel',
}
const needed = ['givenName', 'familyName', 'birthDate', 'sex']

export function PlayerScreen({ playerId, role, notice, saved }: PlayerProps) {
	const [form, setForm] = useState<Form>({})
	const [opened, setOpened] = useState<OutputOf<'players.open'>>()
	const [wrong, setWrong] = useState<Record<string, string>>({})
	const [says, setSays] = useState('')
	const [edited, setEdited] = useState(false)
	const [busy, setBusy] = useState(false)
	const load = useCallback(async () => {
		if (!playerId) return
		try {
			const value = await call('players.open', { playerId })
			setOpened(value)
			setForm(formOf(value.player))
			setEdited(false)
		} catch (error) {
			setSays(wordsOf(error))
		}
	}, [playerId])
	useEffect(() => {
		void load()
	}, [load])

	const save = async (): Promise<boolean> => {
		const { player, problems } = readForm(form, today())
		setWrong(problems)
		setSays(Object.values(problems).join(' '))
		if (!player || Object.keys(problems).length) return false
		setBusy(true)
		try {
			saved(await call('players.save', { playerId, player }))
			await load()
			return true
		} catch (error) {
			const { fields, says: words } = byField(error, 'player', paths)
			setWrong(fields)
			setSays([words, ...Object.values(fields)].join(' '))
			return false
		} finally {
			setBusy(false)
		}
	}
	const assess = async () => {
		if (edited && !(await save())) return
		location.hash = `#/assessment/${playerId}`
	}
	const field = (path: string) => (
		<Field
			key={path}
			label={titleOf(path)}
			value={form[path] ?? ''}
			type={types[path]}
			optional={!needed.includes(path)}
			error={wrong[path]}
			options={path === 'sex' ? sexes : undefined}
			focus={!playerId && path === 'givenName'}
			set={(value) => {
				setForm((now) => ({ ...now, [path]: value }))
				setEdited(true)
				setWrong(({ [path]: _, ...rest }) => rest)
			}}
		/>
	)
	if (playerId && !opened)
		return says ? (
			<Trouble says={says} />
		) : (
			<Typography role="status">Opening the player.</Typography>
		)
	const player = opened?.player
	const age = player ? ageYears(player.birthDate, today()) : undefined
	const under18 =
		/^\d{4}-\d\d-\d\d$/.test(form.birthDate ?? '') && ageYears(form.birthDate!, today()) < 18
	return (
		<Stack spacing={3}>
			<Box
				sx={{
					display: 'flex',
					flexWrap: 'wrap',
					alignItems: 'center',
					justifyContent: 'space-between',
					gap: 2,
				}}
			>
				<Box>
					<Typography variant="h1">
						{player ? `${player.givenName} ${player.familyName}` : 'New player'}
					</Typography>
					{player && (
						<Typography color="textSecondary" sx={{ mt: 0.5 }}>
							{[`Born ${dayInWords(player.birthDate)}`, `${age} years`, player.club]
								.filter(Boolean)
								.join(', ')}
						</Typography>
					)}
				</Box>
				{opened && role !== 'reception' && (
					<Box sx={{ display: 'flex', gap: 1 }}>
						<Button
							variant="outlined"
							size="large"
							onClick={() => {
								location.hash = `#/trends/${playerId}`
							}}
						>
							Trends
						</Button>
						<Button
							variant="outlined"
							size="large"
							onClick={() => {
								location.hash = `#/season/${playerId}`
							}}
						>
							Season
						</Button>
						<Button variant="contained" size="large" disabled={busy} onClick={() => void assess()}>
							{opened.drafts.length
								? opened.drafts[0]?.amends
									? 'Resume amendment'
									: 'Resume assessment'
								: 'Start assessment'}
						</Button>
					</Box>
				)}
			</Box>
			{notice && !edited && (
				<Alert severity="success" role="status">
					Saved.
				</Alert>
			)}
			{notice && notice.similar.length > 0 && (
				<Alert severity="info" role="status">
					Similar players are on record. Nothing was merged; check that this is not the same person.
					<Box component="ul" sx={{ m: 0, mt: 0.5, pl: 2.5 }}>
						{notice.similar.map((one) => (
							<li key={one.playerId}>
								<Link href={`#/players/${one.playerId}`} color="inherit" sx={{ fontWeight: 600 }}>
									{one.givenName} {one.familyName}
								</Link>
								, born {dayInWords(one.birthDate)}
								{one.club ? `, ${one.club}` : ''}
							</li>
						))}
					</Box>
				</Alert>
			)}
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: {
						xs: 'minmax(0, 1fr)',
						lg: opened ? 'minmax(0, 2fr) minmax(0, 1fr)' : 'minmax(0, 900px)',
					},
					gap: 3,
					alignItems: 'start',
				}}
			>
				<Stack
					component="form"
					noValidate
					spacing={3}
					onSubmit={(event) => {
						event.preventDefault()
						void save()
					}}
				>
					<Sheet title="Details">{personPaths.map(field)}</Sheet>
					<Sheet
						title="Guardian"
						hint={
							under18
								? 'This player is under 18: name the parent or guardian who comes along or ' +
									'consents.'
								: 'Needed for a player under 18; else leave it empty.'
						}
					>
						{guardianPaths.map(field)}
					</Sheet>
					<Trouble says={says} />
					<Box>
						<Button
							type="submit"
							variant={opened ? 'outlined' : 'contained'}
							size="large"
							disabled={busy}
						>
							Save player
						</Button>
					</Box>
				</Stack>
				{opened && <Visits role={role} visits={opened.visits} drafts={opened.drafts} />}
			</Box>
		</Stack>
	)
}
