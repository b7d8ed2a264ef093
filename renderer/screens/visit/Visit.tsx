/**
 * One signed visit, to be read: fields, decisions, report, history; and the ways to correct it
 * without changing it.
 */
import { Alert, Box, Button, Chip, Stack, Typography } from '@mui/material'
import { useEffect, useRef, useState } from 'react'
import type { SignedVisit } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { Answered } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { Panel, timeWords } from '../../parts/panels.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'
import { useReading } from '../../query.ts'
import { Acts } from './Acts.tsx'
import { type Amending, Amendment, amendmentOf } from './Amendment.tsx'
import { Agreed, Decisions, Entries, FindingsThen } from './SignedParts.tsx'
import { AddedAfterwards, type History, Versions, WhoMustBeTold } from './VisitHistory.tsx'

interface Opened {
	signed: SignedVisit
	history: History
	amending: Amending | undefined
}
async function open({ visitId }: { visitId: string }): Promise<Opened> {
	const [signed, history] = await Promise.all([
		call('visits.open', { visitId }),
		call('visits.history', { visitId }),
	])
	return { signed, history, amending: await amendmentOf(signed) }
}
interface VisitProps {
	role: PersonRole
	close: () => void
	/** shows the report, of an earlier version where one is named */
	report: (version?: number) => void
}
/** What stands over a signed visit: an error that was marked, a signature it still waits for. */
function standing({ signed, history: { notes } }: Opened) {
	const version = signed.version ?? 1
	return {
		version,
		inError: notes.find((note) => note.what === 'in-error'),
		awaits:
			signed.signer?.role === 'student' &&
			!notes.some((note) => note.what === 'countersign' && note.version === version),
	}
}
function Head({
	signed,
	past,
	setPast,
	close,
	report,
}: Omit<VisitProps, 'role'> & {
	signed: SignedVisit
	past: boolean
	setPast: (past: boolean) => void
}) {
	const heading = useRef<HTMLHeadingElement>(null)
	useEffect(() => heading.current?.focus(), [])
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'center' }}>
			<Box sx={{ flexGrow: 1 }}>
				<Typography variant="h2" ref={heading} tabIndex={-1}>
					Visit of {dayInWords(signed.visit.visitDate)}
				</Typography>
				<Typography color="textSecondary">
					Version {signed.version ?? 1}, signed {timeWords(signed.signedAt)} by{' '}
					{signed.signedBy.name}, {signed.signedBy.registration}. It can be read, not changed.
				</Typography>
			</Box>
			<Button variant="outlined" onClick={() => report()}>
				Show its report
			</Button>
			<Button variant="outlined" aria-expanded={past} onClick={() => setPast(!past)}>
				History of versions
			</Button>
			<Button variant="outlined" onClick={close}>
				Close visit
			</Button>
		</Box>
	)
}
/** Marks over the visit, and what can be done with it. */
function State({ opened, lead }: { opened: Opened; lead: boolean }) {
	const { signed, amending } = opened
	const { inError, awaits } = standing(opened)
	return (
		<>
			<Box sx={{ display: 'flex', gap: 1 }}>
				{awaits && <Chip color="warning" label="Awaits countersignature" />}
				{signed.amends && <Chip label={`Amended: ${signed.amends.reason}`} />}
			</Box>
			{inError && (
				<Alert severity="warning">
					Entered in error, says {inError.by} on {timeWords(inError.at)}: {inError.text}. It is left
					out of summaries and of later assessments.
				</Alert>
			)}
			<Acts
				visitId={signed.visitId}
				playerId={signed.playerId}
				may={{
					amend: lead && !inError && !amending,
					late: lead,
					handed: lead && !inError && !awaits,
					error: lead && !inError,
					countersign: lead && awaits && !inError,
				}}
			/>
		</>
	)
}
function VisitPage({ opened, role, close, report }: VisitProps & { opened: Opened }) {
	const [past, setPast] = useState(false)
	const { signed, history, amending } = opened
	const { lead } = may(role)
	return (
		<Stack spacing={3}>
			<Panel title="">
				<Head signed={signed} past={past} setPast={setPast} close={close} report={report} />
				<State opened={opened} lead={lead} />
			</Panel>
			<WhoMustBeTold tell={history.tell} version={standing(opened).version} />
			{amending && lead && <Amendment signed={signed} amending={amending} />}
			{past && <Versions versions={history.versions} report={report} />}
			<AddedAfterwards history={history} />
			<Entries signed={signed} />
			<Agreed signed={signed} />
			<Decisions signed={signed} />
			<FindingsThen signed={signed} />
		</Stack>
	)
}
export function Visit({ visitId, ...rest }: VisitProps & { visitId: string }) {
	const answer = useReading(
		'visit',
		{ visitId },
		['visits.open', 'visits.history', 'players.open'],
		open,
	)
	return (
		<Answered of={answer} what="the visit">
			{(opened) => <VisitPage opened={opened} {...rest} />}
		</Answered>
	)
}
