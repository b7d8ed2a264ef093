/**
 * The season of one player: sessions in, the rotation planned, the change told, chart and calendar
 * out.
 */
import {
	Alert,
	AlertTitle,
	Box,
	Button,
	LinearProgress,
	Link,
	Paper,
	Stack,
	Typography,
} from '@mui/material'
import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { rounded } from '../../../shared/engine/visit/sides.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import { call, wordsOf } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { saveText, urlOf } from '../../parts/files.ts'
import { Trouble } from '../../parts/form.tsx'
import { restsOn } from '../../parts/Workings.tsx'
import { linesOf, withIds } from './edits.ts'
import { Day } from './fields.tsx'
import { Import } from './Import.tsx'
import { PairBadge } from './PairBadge.tsx'
import { Picture } from './Picture.tsx'
import { Sessions } from './Sessions.tsx'
import { Exceptions, Weekly } from './Weekly.tsx'

type Opened = OutputOf<'season.open'>
type Progress = OutputOf<'season.progress'>
/** How often the screen asks how far the planning is. */
const askEveryMs = 250
const severityOf = { stop: 'error', caution: 'warning', advise: 'info', note: 'info' } as const
const isDate = (text: string): boolean => /^\d{4}-\d\d-\d\d$/.test(text)

function Dates({
	season,
	change,
}: {
	season: Season | undefined
	change: (next: Season, says: string) => void
}) {
	const [from, setFrom] = useState(season?.from ?? '')
	const [to, setTo] = useState(season?.to ?? '')
	const [says, setSays] = useState('')
	const submit = () => {
		if (!isDate(from))
			return setSays(
				`Season from: not a date, given "${from}", allowed: a day such as 1 February 2027.`,
			)
		if (!isDate(to))
			return setSays(`Season to: not a date, given "${to}", allowed: a day such as 29 August 2027.`)
		if (to < from)
			return setSays(
				`Season to: before the first day, given ${dayInWords(to)}, allowed: ${dayInWords(from)} ` +
					'or later.',
			)
		setSays('')
		change(
			{ ...season, from, to },
			`The season runs from ${dayInWords(from)} to ${dayInWords(to)}.`,
		)
	}
	return (
		<Paper
			component="form"
			noValidate
			variant="outlined"
			aria-label="Season dates"
			sx={{ p: 2 }}
			onSubmit={(event: { preventDefault: () => void }) => {
				event.preventDefault()
				submit()
			}}
		>
			<Typography variant="h2" sx={{ mb: 1.5 }}>
				First and last day
			</Typography>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: 'repeat(auto-fit, minmax(min(11rem, 100%), 1fr))',
					gap: 1,
				}}
			>
				<Day label="From" name="Season from" value={from} set={setFrom} />
				<Day label="To" name="Season to" value={to} set={setTo} />
			</Box>
			<Trouble says={says} />
			{(from !== season?.from || to !== season?.to) && (
				<Button type="submit" variant="outlined" sx={{ mt: 1 }}>
					Set the dates
				</Button>
			)}
		</Paper>
	)
}
function Findings({ planned }: { planned: NonNullable<Opened['planned']> }) {
	if (planned.plan.findings.length === 0) return null
	const order = ['stop', 'caution', 'advise', 'note']
	const sorted = [...planned.plan.findings].sort(
		(a, b) => order.indexOf(a.level) - order.indexOf(b.level),
	)
	return (
		<Paper component="section" variant="outlined" aria-labelledby="season-findings" sx={{ p: 2 }}>
			<Typography variant="h2" id="season-findings">
				Findings of the plan ({sorted.length})
			</Typography>
			<Stack spacing={1} sx={{ mt: 1 }}>
				{sorted.map((finding) => (
					<Alert
						key={finding.id}
						severity={severityOf[finding.level]}
						sx={{ '& .MuiAlert-message': { width: '100%' } }}
					>
						<strong>{finding.level.charAt(0).toUpperCase() + finding.level.slice(1)}.</strong>{' '}
						{finding.says}
						{(finding.because.length > 0 || finding.basis) && (
							<Box
								component="details"
								sx={{ mt: 0.5, '& summary': { cursor: 'pointer', minHeight: 28 } }}
							>
								<summary>Why ({finding.because.length})</summary>
								<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
									{finding.because.map((reason) => (
										<li key={`${reason.measure} ${reason.value}`}>
											{reason.measure}: {reason.value}
											{reason.unit ? ` ${reason.unit}` : ''}
										</li>
									))}
								</Box>
								<Typography variant="body2">{restsOn(finding.basis)}</Typography>
							</Box>
						)}
					</Alert>
				))}
			</Stack>
		</Paper>
	)
}
export function SeasonScreen({ playerId }: { playerId: string }) {
	const [opened, setOpened] = useState<Opened>()
	const [season, setSeason] = useState<Season>()
	const [savedAs, setSavedAs] = useState<string>()
	const [trouble, setTrouble] = useState('')
	const [told, setTold] = useState('')
	const [progress, setProgress] = useState<Progress>()
	const [from, setFrom] = useState('')
	const [page, setPage] = useState<{ url: string; fileName: string; title: string }>()
	const [fresh, setFresh] = useState(false)
	const now = useRef<{
		season?: Season | undefined
		savedAs?: string | undefined
		history: Season[]
		saving: Promise<void>
	}>({ history: [], saving: Promise.resolve() })
	const planButton = useRef<HTMLButtonElement>(null)
	const load = useCallback(async () => {
		try {
			const value = await call('season.open', { playerId })
			const own = value.season && withIds(value.season)
			Object.assign(now.current, { season: own, savedAs: value.savedAs })
			setOpened(value)
			setSeason(own)
			setSavedAs(value.savedAs)
			setFrom((typed) => typed || value.from)
		} catch (error) {
			setTrouble(wordsOf(error))
		}
	}, [playerId])
	useEffect(() => {
		void load()
	}, [load])
	useEffect(
		() => () => {
			if (page) URL.revokeObjectURL(page.url)
		},
		[page],
	)

	/** Shown at once, saved behind it, one after the other; a refusal brings back what is saved. */
	const store = useCallback(
		(next: Season) => {
			now.current.season = next
			setSeason(next)
			now.current.saving = now.current.saving.then(async () => {
				try {
					const answer = await call('season.save', {
						playerId,
						season: next,
						...(now.current.savedAs === undefined ? {} : { follows: now.current.savedAs }),
					})
					now.current.savedAs = answer.savedAs
					setSavedAs(answer.savedAs)
				} catch (error) {
					setTrouble(wordsOf(error))
					await load()
				}
			})
		},
		[playerId, load],
	)
	const change = useCallback(
		(next: Season, says: string) => {
			if (now.current.season) now.current.history.push(now.current.season)
			setTrouble('')
			setTold(says)
			store(next)
		},
		[store],
	)
	const undo = () => {
		const before = now.current.history.pop()
		if (before) {
			store(before)
			setTold('The last change was taken back.')
		}
	}
	const saved = useCallback(() => now.current.saving, [])

	const running = progress?.running === true
	useEffect(() => {
		if (!running) return
		const timer = setInterval(() => {
			call('season.progress', { playerId }).then(
				(next) => {
					if (next.running) setProgress(next)
				},
				() => {},
			)
		}, askEveryMs)
		return () => clearInterval(timer)
	}, [running, playerId])
	const plan = async () => {
		setTrouble('')
		setTold('')
		setProgress({ running: true })
		try {
			await now.current.saving
			if (now.current.savedAs === undefined && now.current.season) {
				store(now.current.season)
				await now.current.saving
			}
			const answer = await call('season.plan', {
				playerId,
				...(isDate(from) && from !== opened?.from ? { from } : {}),
			})
			const none = answer.plan.sessions.filter(
				(session) => !session.past && session.pair === undefined,
			).length
			setTold(
				`Planned: ${answer.plan.sessions.filter((session) => !session.past).length} sessions ` +
					`ahead${none > 0 ? `, ${none} without a pair` : ''}.${answer.first ? '' : ` ${answer.changes.length === 0 ? 'Nothing changed against the last plan.' : `${answer.changes.length} ${answer.changes.length === 1 ? 'change' : 'changes'} against the last plan.`}`}`,
			)
			setFresh(!answer.first)
			await load()
		} catch (error) {
			setTrouble(wordsOf(error))
		} finally {
			setProgress(undefined)
			setTimeout(() => planButton.current?.focus())
		}
	}
	const show = async (paper: 'A4' | 'A3' | 'pocket', title: string) => {
		setTrouble('')
		try {
			await now.current.saving
			const { base64, fileName } = await call('season.chart', { playerId, paper })
			setPage({ title, fileName, url: urlOf(base64) })
		} catch (error) {
			setTrouble(wordsOf(error))
		}
	}
	const calendar = async () => {
		setTrouble('')
		try {
			await now.current.saving
			const { text, fileName } = await call('season.ics', { playerId })
			saveText(text, fileName, 'text/calendar')
			setTold(`Saved ${fileName}: it names pairs by letter only.`)
		} catch (error) {
			setTrouble(wordsOf(error))
		}
	}
	const planned = opened?.planned
	const lines = useMemo(
		() =>
			season
				? linesOf(season, planned?.plan, isDate(from) ? from : (opened?.from ?? season.from))
				: [],
		[season, planned, opened, from],
	)
	if (!opened)
		return trouble ? (
			<Trouble says={trouble} />
		) : (
			<Typography role="status">Opening the season.</Typography>
		)
	const stale = planned && (planned.basisChanged || planned.season !== savedAs)
	const { basis, pairs, blocked } = opened
	return (
		<Stack spacing={2}>
			<Box
				sx={{
					display: 'flex',
					flexWrap: 'wrap',
					alignItems: 'end',
					justifyContent: 'space-between',
					gap: 2,
				}}
			>
				<Box>
					<Typography variant="h1">Season of {opened.name}</Typography>
					<Typography color="text.secondary">
						<Link href={`#/players/${playerId}`}>Player</Link>
						{basis
							? ', pairs and findings of the ' +
								`${basis.from === 'draft' ? 'open assessment' : 'visit'} of ` +
								`${dayInWords(basis.visitDate)}`
							: ''}
					</Typography>
				</Box>
				<Box
					sx={{
						display: 'flex',
						alignItems: 'start',
						gap: 1,
						flexWrap: 'wrap',
						'& > .MuiButton-root': { mt: '1.5rem' },
					}}
				>
					<Box sx={{ width: '14rem' }}>
						<Day
							label="Plan from"
							name="Plan from"
							value={from}
							set={setFrom}
							hint="Sessions before it stay"
						/>
					</Box>
					{running ? (
						<Button
							variant="outlined"
							onClick={() =>
								void call('season.cancel', { playerId }).catch((error) =>
									setTrouble(wordsOf(error)),
								)
							}
						>
							Cancel
						</Button>
					) : (
						<Button
							ref={planButton}
							variant="contained"
							disabled={!season || blocked !== undefined || !basis}
							onClick={() => void plan()}
						>
							Plan the season
						</Button>
					)}
				</Box>
			</Box>
			{running && (
				<Box>
					<LinearProgress aria-label="Planning" />
					<Typography role="status" sx={{ mt: 0.5 }}>
						Planning, step {progress?.pass ?? 1} of 2
						{progress?.gap === undefined
							? ''
							: `, within ${rounded(100 * progress.gap, 1)} % of the best possible`}
						. You can go on working.
					</Typography>
				</Box>
			)}
			<Trouble says={trouble} />
			<Typography role="status" aria-live="polite" sx={{ minHeight: '1.5em', fontWeight: 600 }}>
				{told}
				{told && now.current.history.length > 0 && !told.startsWith('Planned') && (
					<Button size="small" sx={{ ml: 1 }} onClick={undo}>
						Take back
					</Button>
				)}
			</Typography>
			{blocked !== undefined && (
				<Alert severity="error" role="alert">
					<AlertTitle>No rotation while this stands</AlertTitle>
					{blocked}
				</Alert>
			)}
			{!basis && (
				<Alert severity="info">
					This player has no assessment yet.{' '}
					<Link href={`#/assessment/${playerId}`}>Start one</Link> and enter the pairs they wear;
					sessions can be entered here already.
				</Alert>
			)}
			{basis && pairs.length === 0 && (
				<Alert severity="info">
					No pair is recorded.{' '}
					<Link href={`#/assessment/${playerId}`}>Enter the pairs in the assessment</Link>, with the
					sole of each.
				</Alert>
			)}
			{stale && (
				<Alert severity="warning" role="status">
					{planned.basisChanged
						? 'Pairs, feet or findings changed since this plan was made'
						: 'Sessions changed since this plan was made'}
					: plan again. Chart and calendar wait for it.
				</Alert>
			)}
			{pairs.length > 0 && (
				<Box
					component="ul"
					aria-label="Pairs"
					sx={{ m: 0, p: 0, listStyle: 'none', display: 'flex', flexWrap: 'wrap', gap: 2 }}
				>
					{[...pairs]
						.sort((a, b) => (a.letter < b.letter ? -1 : 1))
						.map((pair) => (
							<li key={pair.id}>
								<PairBadge letter={pair.letter} /> {pair.name}
								{pair.sole ? `, ${termWords(pair.sole)}` : ', sole not recorded'}
							</li>
						))}
				</Box>
			)}
			{planned && !stale && blocked === undefined && (
				<Box role="group" aria-label="Give out" sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
					<Button variant="outlined" onClick={() => void show('A4', 'Wall chart, A4')}>
						Wall chart A4
					</Button>
					<Button variant="outlined" onClick={() => void show('A3', 'Wall chart, A3')}>
						Wall chart A3
					</Button>
					<Button variant="outlined" onClick={() => void show('pocket', 'Pocket table')}>
						Pocket table
					</Button>
					<Button variant="outlined" onClick={() => void calendar()}>
						Save calendar (.ics)
					</Button>
				</Box>
			)}
			{page && (
				<Paper variant="outlined" sx={{ p: 2 }}>
					<Box sx={{ display: 'flex', gap: 1, alignItems: 'center', mb: 1 }}>
						<Typography variant="h2" sx={{ flexGrow: 1 }}>
							{page.title}
						</Typography>
						<Button href={page.url} download={page.fileName}>
							Save PDF
						</Button>
						<Button onClick={() => setPage(undefined)}>Close</Button>
					</Box>
					<Box
						component="iframe"
						title={page.title}
						src={page.url}
						sx={{ width: '100%', height: '75vh', border: 1, borderColor: 'divider' }}
					/>
				</Paper>
			)}
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: 'minmax(0, 25rem) minmax(0, 1fr)',
					'@container (max-width: 60rem)': { gridTemplateColumns: 'minmax(0, 1fr)' },
					gap: 2,
					alignItems: 'start',
				}}
			>
				<Stack spacing={2}>
					<Dates key={`${season?.from} ${season?.to}`} season={season} change={change} />
					{season && (
						<>
							<Weekly season={season} change={change} />
							<Exceptions season={season} change={change} />
							<Import playerId={playerId} season={season} change={change} saved={saved} />
						</>
					)}
				</Stack>
				<Stack spacing={2} sx={{ minWidth: 0 }}>
					{planned && planned.changes.length > 0 && (
						<Paper component="section" variant="outlined" aria-labelledby="changes" sx={{ p: 2 }}>
							<Typography variant="h2" id="changes">
								Changed by the last planning ({planned.changes.length})
							</Typography>
							<Box component="details" open={fresh} sx={{ mt: 0.5 }}>
								<summary>In words</summary>
								<Box component="ul" sx={{ m: 0, pl: 2.5, maxHeight: 260, overflow: 'auto' }}>
									{planned.changes.map((one) => (
										<li key={one.says}>{one.says}</li>
									))}
								</Box>
							</Box>
						</Paper>
					)}
					{season && <Sessions lines={lines} pairs={pairs} season={season} change={change} />}
					{planned && <Picture plan={planned.plan} young={opened.young} />}
					{planned && <Findings planned={planned} />}
				</Stack>
			</Box>
		</Stack>
	)
}
