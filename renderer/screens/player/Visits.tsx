/** Drafts and signed visits of one player, and the ways to read them. */
import { Box, Button, Chip, Typography } from '@mui/material'
import { lazy, type ReactNode, Suspense, type SyntheticEvent, useMemo, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { type Command, useCommands } from '../../parts/commands.ts'
import { dayInWords, dayOfMoment } from '../../parts/dates.ts'
import { Trouble } from '../../parts/form.tsx'
import { Empty } from '../../parts/Page.tsx'
import { Panel } from '../../parts/panels.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'
import { SignedSheet } from '../../parts/sheet/SignedSheet.tsx'
import { ReportPane } from './ReportPane.tsx'
import { type Reports, useReports } from './useReports.ts'

const VisitView = lazy(async () => ({ default: (await import('../visit/Visit.tsx')).Visit }))
const HoldForm = lazy(async () => ({ default: (await import('../records/Hold.tsx')).Hold }))

type Opened = OutputOf<'players.open'>
type SignedLine = Opened['visits'][number]
type DraftLine = Opened['drafts'][number]
/** As many visits as the palette names, the latest first. */
const offered = 5

function draftWords({ amends, savedAt }: DraftLine): string {
	if (!amends) return `Draft, saved ${dayOfMoment(savedAt)}`
	return (
		`Draft of an amendment: it becomes version ${amends.version + 1} of ` +
		`the visit of ${dayInWords(amends.visitDate)}. Saved ${dayOfMoment(savedAt)}`
	)
}
/** @param read undefined where who works here may not read visits */
function VisitLine({
	visit,
	read,
	openReport,
}: {
	visit: SignedLine
	read: ((visitId: string) => void) | undefined
	openReport: Reports['open']
}) {
	const day = dayInWords(visit.visitDate)
	const version = visit.version ? `, version ${visit.version}` : ''
	return (
		<Line
			day={visit.visitDate}
			about={`Signed ${dayOfMoment(visit.signedAt)}${version}`}
			mark={visit.awaitsCountersign && !visit.inError ? 'Awaits countersignature' : undefined}
		>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
				{read && (
					<>
						<Button
							variant="outlined"
							aria-label={`Open visit of ${day}`}
							onClick={() => read(visit.visitId)}
						>
							Open visit
						</Button>
						<Button
							variant="outlined"
							aria-label={`Open report of ${day}`}
							onClick={() => openReport(visit)}
						>
							Open report
						</Button>
					</>
				)}
			</Box>
		</Line>
	)
}
/** What is seldom needed, folded until it is asked for. */
function Folded({
	title,
	toggled,
	children,
}: {
	title: string
	toggled?: (open: boolean) => void
	children: ReactNode
}) {
	return (
		<Box
			component="details"
			sx={{ mt: 1 }}
			onToggle={(event: SyntheticEvent<HTMLDetailsElement>) => toggled?.(event.currentTarget.open)}
		>
			<Box component="summary" sx={{ minHeight: 44, py: 1.25, cursor: 'pointer', fontWeight: 600 }}>
				{title}
			</Box>
			{children}
		</Box>
	)
}
/** The sheet of the last visit: the appointment on one page. */
function SheetOfVisit({ visits, treats }: { visits: readonly SignedLine[]; treats: boolean }) {
	const [isOpen, setIsOpen] = useState(false)
	const last = visits.find((visit) => !visit.inError)
	if (!last || !treats) return null
	return (
		<Folded title={`Sheet of the appointment, ${dayInWords(last.visitDate)}`} toggled={setIsOpen}>
			{isOpen && <SignedSheet visitId={last.visitId} />}
		</Folded>
	)
}
function HoldThisRecord({ playerId }: { playerId: string }) {
	const [holding, setHolding] = useState(false)
	return (
		<Folded title="Hold this record" toggled={setHolding}>
			{holding && (
				<Suspense>
					<HoldForm playerId={playerId} />
				</Suspense>
			)}
		</Folded>
	)
}
/** The visits stand behind the whole form for the keys: the palette goes there at once. */
function useVisitCommands(
	visits: readonly SignedLine[],
	read: ((visitId: string) => void) | undefined,
	openReport: Reports['open'],
): void {
	const commands = useMemo(
		(): Command[] =>
			read
				? visits
						.filter((visit) => !visit.inError)
						.slice(0, offered)
						.flatMap((visit) => {
							const day = dayInWords(visit.visitDate)
							return [
								{ name: `Open visit of ${day}`, run: () => read(visit.visitId) },
								{ name: `Open report of ${day}`, run: () => openReport(visit) },
							]
						})
				: [],
		[visits, read, openReport],
	)
	useCommands(commands)
}
interface VisitsProps extends Pick<Opened, 'visits' | 'drafts'> {
	playerId: string
	/** who works here */
	role: PersonRole
}
function VisitList({
	playerId,
	role,
	visits,
	drafts,
	read,
	reports,
}: VisitsProps & { read: ((visitId: string) => void) | undefined; reports: Reports }) {
	const line = (visit: SignedLine) => (
		<VisitLine key={visit.visitId} visit={visit} read={read} openReport={reports.open} />
	)
	const wrong = visits.filter((visit) => visit.inError)
	return (
		<Panel named title="Visits">
			{!visits.length && !drafts.length && (
				<Empty says="No visit yet. Start an assessment with the button at the top; once signed it stands here." />
			)}
			<Box component="ul" sx={{ listStyle: 'none', m: 0, p: 0 }}>
				{drafts.map((draft) => (
					<Line key={draft.draftId} day={draft.visitDate} about={draftWords(draft)} />
				))}
				{visits.filter((visit) => !visit.inError).map(line)}
			</Box>
			{wrong.length > 0 && (
				<Folded title={`Entered in error (${wrong.length})`}>
					<Box component="ul" sx={{ listStyle: 'none', m: 0, p: 0 }}>
						{wrong.map(line)}
					</Box>
				</Folded>
			)}
			<SheetOfVisit visits={visits} treats={read !== undefined} />
			{may(role).lead && <HoldThisRecord playerId={playerId} />}
			<Trouble says={reports.says} />
		</Panel>
	)
}
export function Visits({ playerId, role, visits, drafts }: VisitsProps) {
	const [reading, setReading] = useState('')
	const reports = useReports()
	const read = role !== undefined && may(role).treat ? setReading : undefined
	const beingRead = visits.find((visit) => visit.visitId === reading)
	useVisitCommands(visits, read, reports.open)
	return (
		<>
			<VisitList
				playerId={playerId}
				role={role}
				visits={visits}
				drafts={drafts}
				read={read}
				reports={reports}
			/>
			{beingRead && (
				<Box>
					<Suspense fallback={<Typography role="status">Opening the visit.</Typography>}>
						<VisitView
							key={reading}
							visitId={reading}
							role={role}
							close={() => setReading('')}
							report={(version) => reports.open(beingRead, version)}
						/>
					</Suspense>
				</Box>
			)}
			{reports.shown && <ReportPane shown={reports.shown} reports={reports} />}
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
	children?: ReactNode
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
