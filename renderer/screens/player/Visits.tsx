/** Drafts and signed visits of one player, and the report of one of them on the page. */
import { Box, Button, Chip, Link, Paper, Stack, Typography } from '@mui/material'
import { lazy, Suspense, useEffect, useMemo, useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call, wordsOf } from '../../host.ts'
import { type Command, useCommands } from '../../parts/commands.ts'
import { dayInWords, dayOfMoment } from '../../parts/dates.ts'
import { saveText, urlOf } from '../../parts/files.ts'
import { Trouble } from '../../parts/form.tsx'

const VisitView = lazy(async () => ({ default: (await import('../visit/Visit.tsx')).Visit }))
const HoldForm = lazy(async () => ({ default: (await import('../records/Hold.tsx')).Hold }))

type Opened = OutputOf<'players.open'>
/** As many visits as the palette names, the latest first. */
const offered = 5
interface Shown {
	/** where it is the latest report: its visit */ visitId?: string
	title: string
	url: string
	fileName: string
}

export function Visits({
	playerId,
	role = '',
	visits: first,
	drafts,
}: Pick<Opened, 'visits' | 'drafts'> & {
	playerId?: string
	/** who works here */
	role?: string | undefined
}) {
	const [later, setLater] = useState<Opened['visits']>()
	const visits = later ?? first
	// biome-ignore lint/correctness/useExhaustiveDependencies: a new list of the page stands over what was asked here
	useEffect(() => setLater(undefined), [first])
	const owner = playerId ?? location.hash.split('/')[2] ?? ''
	const [reading, setReading] = useState('')
	const [holding, setHolding] = useState(false)
	const again = () => {
		call('players.open', { playerId: owner }).then(
			(now) => setLater(now.visits),
			(error) => setSays(wordsOf(error)),
		)
	}
	const treats = ['clinician', 'student', 'owner'].includes(role)
	const valid = visits.filter((visit) => !visit.inError)
	const wrong = visits.filter((visit) => visit.inError)
	const [shown, setShown] = useState<Shown>()
	const [says, setSays] = useState('')
	const pane = useRef<HTMLDivElement>(null)
	useEffect(() => {
		if (!shown) return
		pane.current?.scrollIntoView({ block: 'start' })
		return () => URL.revokeObjectURL(shown.url)
	}, [shown])
	const report = async (visit: Opened['visits'][number], version?: number) => {
		setSays('')
		try {
			const { base64, fileName } = await call('reports.open', {
				visitId: visit.visitId,
				...(version === undefined ? {} : { version }),
			})
			setShown({
				title:
					'Report of ' +
					`${dayInWords(visit.visitDate)}${version === undefined ? '' : `, version ${version}`}`,
				url: urlOf(base64),
				fileName,
				...(version === undefined ? { visitId: visit.visitId } : {}),
			})
		} catch (error) {
			setSays(wordsOf(error))
		}
	}
	const page = async (visitId: string) => {
		setSays('')
		try {
			const { html, fileName } = await call('reports.page', { visitId })
			saveText(html, fileName, 'text/html')
		} catch (error) {
			setSays(wordsOf(error))
		}
	}
	const line = (visit: Opened['visits'][number]) => (
		<Line
			key={visit.visitId}
			day={visit.visitDate}
			about={
				'Signed ' +
				`${dayOfMoment(visit.signedAt)}${visit.version ? `, version ${visit.version}` : ''}`
			}
			mark={visit.awaitsCountersign && !visit.inError ? 'Awaits countersignature' : undefined}
		>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
				{treats && (
					<Button
						variant="outlined"
						aria-label={`Open visit of ${dayInWords(visit.visitDate)}`}
						onClick={() => setReading(visit.visitId)}
					>
						Open visit
					</Button>
				)}
				<Button
					variant="outlined"
					aria-label={`Open report of ${dayInWords(visit.visitDate)}`}
					onClick={() => void report(visit)}
				>
					Open report
				</Button>
			</Box>
		</Line>
	)
	const read = visits.find((visit) => visit.visitId === reading)
	// the visits stand behind the whole form for the keys: the palette goes there at once
	// biome-ignore lint/correctness/useExhaustiveDependencies: `report` is made anew each time and does the same
	const commands = useMemo(
		(): Command[] =>
			valid.slice(0, offered).flatMap((one) => [
				...(treats
					? [
							{
								name: `Open visit of ${dayInWords(one.visitDate)}`,
								run: () => setReading(one.visitId),
							},
						]
					: []),
				{ name: `Open report of ${dayInWords(one.visitDate)}`, run: () => void report(one) },
			]),
		[visits, treats],
	)
	useCommands(commands)
	return (
		<>
			<Paper component="section" variant="outlined" sx={{ p: { xs: 2, sm: 3 } }}>
				<Typography variant="h2">Visits</Typography>
				{owner && role !== '' && role !== 'student' && visits.length > 0 && (
					<Link
						href={`#/outbox/player/${owner}`}
						sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, fontWeight: 600 }}
					>
						Send, print or hand over
					</Link>
				)}
				{!visits.length && !drafts.length && (
					<Typography color="textSecondary" sx={{ mt: 1 }}>
						No visits yet. Start an assessment with the button above; once signed it stands here.
					</Typography>
				)}
				<Box component="ul" sx={{ listStyle: 'none', m: 0, p: 0 }}>
					{drafts.map((draft) => (
						<Line
							key={draft.draftId}
							day={draft.visitDate}
							about={
								draft.amends
									? `Draft of an amendment: it becomes version ${draft.amends.version + 1} of ` +
										`the visit of ${dayInWords(draft.amends.visitDate)}. Saved ` +
										`${dayOfMoment(draft.savedAt)}`
									: `Draft, saved ${dayOfMoment(draft.savedAt)}`
							}
						/>
					))}
					{valid.map(line)}
				</Box>
				{wrong.length > 0 && (
					<Box component="details" sx={{ mt: 1 }}>
						<Box
							component="summary"
							sx={{ minHeight: 44, py: 1.25, cursor: 'pointer', fontWeight: 600 }}
						>
							Entered in error ({wrong.length})
						</Box>
						<Box component="ul" sx={{ listStyle: 'none', m: 0, p: 0 }}>
							{wrong.map(line)}
						</Box>
					</Box>
				)}
				{(role === 'clinician' || role === 'owner') && owner && (
					<Box
						component="details"
						sx={{ mt: 1 }}
						onToggle={(event: { currentTarget: EventTarget }) =>
							setHolding((event.currentTarget as HTMLDetailsElement).open)
						}
					>
						<Box
							component="summary"
							sx={{ minHeight: 44, py: 1.25, cursor: 'pointer', fontWeight: 600 }}
						>
							Hold this record
						</Box>
						{holding && (
							<Suspense>
								<HoldForm playerId={owner} />
							</Suspense>
						)}
					</Box>
				)}
				<Trouble says={says} />
			</Paper>
			{read && (
				<Box sx={{ gridColumn: '1 / -1' }}>
					<Suspense fallback={<Typography role="status">Opening the visit.</Typography>}>
						<VisitView
							key={reading}
							visitId={reading}
							role={role}
							changed={again}
							close={() => setReading('')}
							report={(version) => void report(read, version)}
						/>
					</Suspense>
				</Box>
			)}
			{shown && (
				<Paper
					component="section"
					variant="outlined"
					ref={pane}
					sx={{ p: 2, gridColumn: '1 / -1' }}
				>
					<Stack direction="row" sx={{ alignItems: 'center', flexWrap: 'wrap', gap: 2, mb: 2 }}>
						<Typography variant="h2" sx={{ flexGrow: 1 }}>
							{shown.title}
						</Typography>
						{shown.visitId && (
							<Button variant="outlined" onClick={() => void page(shown.visitId ?? '')}>
								Save as a page for a screen reader
							</Button>
						)}
						<Link
							href={shown.url}
							download={shown.fileName}
							sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, fontWeight: 600 }}
						>
							Save a copy
						</Link>
						<Button variant="outlined" onClick={() => setShown(undefined)}>
							Close report
						</Button>
					</Stack>
					{/* a new frame for each report: its address never changes under the reader */}
					<Box
						component="iframe"
						key={shown.url}
						title={shown.title}
						src={shown.url}
						sx={{ display: 'block', width: '100%', height: '80vh', border: 0, bgcolor: '#fff' }}
					/>
				</Paper>
			)}
		</>
	)
}
function Line({
	day,
	about,
	mark,
	children,
}: {
	day: string
	about: string
	mark?: string | undefined
	children?: React.ReactNode
}) {
	return (
		<Box
			component="li"
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				alignItems: 'center',
				justifyContent: 'space-between',
				gap: 1,
				py: 1.5,
				borderBottom: 1,
				borderColor: 'divider',
				'&:last-of-type': { borderBottom: 0 },
			}}
		>
			<Box>
				<Typography sx={{ fontWeight: 600 }}>{dayInWords(day)}</Typography>
				<Typography variant="body2" color="textSecondary">
					{about}
				</Typography>
				{mark && <Chip size="small" color="warning" label={mark} sx={{ mt: 0.5 }} />}
			</Box>
			{children}
		</Box>
	)
}
