/**
 * One signed visit, to be read: fields, decisions, report, history; and the ways to correct it
 * without changing it.
 */
import { Alert, Box, Button, Chip, Paper, Stack, Typography } from '@mui/material'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { call, wordsOf } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Trouble } from '../../parts/form.tsx'
import { Panel, Rows, timeWords } from '../../parts/panels.tsx'
import { Acts } from './Acts.tsx'
import { type Amending, Amendment, amendmentOf } from './Amendment.tsx'
import { Differences } from './Differences.tsx'
import { assessmentOf, decisionRows, groupsOf, otherDecisions } from './rows.ts'

type History = OutputOf<'visits.history'>
interface Opened {
	signed: SignedVisit
	history: History
	amending: Amending | undefined
}
const noteNames: Record<History['notes'][number]['what'], string> = {
	'in-error': 'Entered in error',
	'late-entry': 'Late entry',
	countersign: 'Countersigned',
	statement: 'Statement of the player',
}

export function Visit({
	visitId,
	role,
	changed,
	close,
	report,
}: {
	visitId: string
	role: string
	changed: () => void
	close: () => void
	report: (version?: number) => void
}) {
	const [opened, setOpened] = useState<Opened>()
	const [says, setSays] = useState('')
	const [past, setPast] = useState(false)
	const heading = useRef<HTMLHeadingElement>(null)
	const look = useCallback(async () => {
		try {
			const [signed, history] = await Promise.all([
				call('visits.open', { visitId }),
				call('visits.history', { visitId }),
			])
			setOpened({ signed, history, amending: await amendmentOf(signed) })
			setSays('')
		} catch (error) {
			setSays(wordsOf(error))
		}
	}, [visitId])
	useEffect(() => {
		void look()
	}, [look])
	const there = opened !== undefined
	useEffect(() => {
		if (there) heading.current?.focus()
	}, [there])
	if (!opened)
		return says ? (
			<Trouble says={says} />
		) : (
			<Typography role="status">Opening the visit.</Typography>
		)
	const { signed, history, amending } = opened
	const version = signed.version ?? 1
	const inError = history.notes.find((note) => note.what === 'in-error')
	const student = signed.signer?.role === 'student'
	const awaits =
		student &&
		!history.notes.some((note) => note.what === 'countersign' && note.version === version)
	const clinician = role === 'clinician' || role === 'owner'
	const again = () => {
		void look()
		changed()
	}
	const ordered = decisionRows(signed)
	const { findings, protocol } = assessmentOf(signed)
	return (
		<Stack spacing={3}>
			<Panel title="">
				<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'center' }}>
					<Box sx={{ flexGrow: 1 }}>
						<Typography variant="h2" ref={heading} tabIndex={-1}>
							Visit of {dayInWords(signed.visit.visitDate)}
						</Typography>
						<Typography color="textSecondary">
							Version {version}, signed {timeWords(signed.signedAt)} by {signed.signedBy.name},{' '}
							{signed.signedBy.registration}. It can be read, not changed.
						</Typography>
					</Box>
					<Button variant="outlined" onClick={() => report()}>
						Show its report
					</Button>
					<Button variant="outlined" aria-expanded={past} onClick={() => setPast((now) => !now)}>
						History of versions
					</Button>
					<Button variant="outlined" onClick={close}>
						Close visit
					</Button>
				</Box>
				<Box sx={{ display: 'flex', gap: 1 }}>
					{awaits && <Chip color="warning" label="Awaits countersignature" />}
					{signed.amends && <Chip label={`Amended: ${signed.amends.reason}`} />}
				</Box>
				{inError && (
					<Alert severity="warning">
						Entered in error, says {inError.by} on {timeWords(inError.at)}: {inError.text}. It is
						left out of summaries and of later assessments.
					</Alert>
				)}
				<Acts
					visitId={visitId}
					playerId={signed.playerId}
					done={again}
					may={{
						amend: clinician && !inError && !amending,
						note: clinician,
						hand: clinician && !inError && !awaits,
						error: clinician && !inError,
						countersign: clinician && awaits && !inError,
					}}
				/>
				<Trouble says={says} />
			</Panel>
			{history.tell.length > 0 && (
				<Alert severity="warning" role="region" aria-label="Who must be told">
					<strong>Who must be told</strong>: they hold an earlier version than {version}.
					<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
						{history.tell.map((one) => (
							<li key={one.recipient}>
								{one.recipient}: holds version {one.version}, {one.channel.replace('-', ' ')},{' '}
								{timeWords(one.at)}
							</li>
						))}
					</Box>
					Note it under "Report was handed over" once they have the new one.
				</Alert>
			)}
			{amending && clinician && <Amendment signed={signed} amending={amending} done={again} />}
			{past && (
				<Panel title="History of versions" hint="Every version is kept as it was signed.">
					{history.versions.toReversed().map((one) => (
						<Box key={one.version} component="article" aria-label={`Version ${one.version}`}>
							<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'center' }}>
								<Typography variant="h3">Version {one.version}</Typography>
								<Button variant="outlined" onClick={() => report(one.version)}>
									Report of version {one.version}
								</Button>
							</Box>
							<Typography color="textSecondary">
								Signed {timeWords(one.signedAt)} by {one.by}.
								{one.reason ? ` Reason: ${one.reason}.` : ''}
							</Typography>
							{one.version > 1 && (
								<Differences
									label={`Changed in version ${one.version}`}
									differences={one.differences}
									none="No entry and no decision differs."
								/>
							)}
						</Box>
					))}
				</Panel>
			)}
			{history.notes.length > 0 && (
				<Panel title="Added afterwards">
					<Rows
						label="Added afterwards"
						heads={['What', 'Text', 'Happened on', 'Written', 'By']}
						empty=""
						rows={history.notes.map((note) => ({
							key: `${note.what} ${note.at}`,
							cells: [
								noteNames[note.what],
								note.text || 'no words',
								note.occurredOn ? dayInWords(note.occurredOn) : '',
								timeWords(note.at),
								note.by,
							],
						}))}
					/>
				</Panel>
			)}
			<Panel title="Entries">
				<Box
					sx={{
						display: 'grid',
						gap: 3,
						gridTemplateColumns: { xs: 'minmax(0, 1fr)', lg: 'minmax(0, 1fr) minmax(0, 1fr)' },
						alignItems: 'start',
					}}
				>
					{groupsOf(signed.visit).map((group) => (
						<Box key={group.title}>
							<Typography variant="h3" sx={{ mb: 0.5 }}>
								{group.title}
							</Typography>
							<Rows
								label={group.title}
								heads={group.sided ? ['Field', 'Left', 'Right'] : ['Field', 'Value']}
								empty="Nothing entered."
								rows={group.rows.map((row) => ({
									key: row.key,
									cells: [
										row.title,
										...row.values,
										...(group.sided && row.values.length === 1 ? [''] : []),
									],
								}))}
							/>
						</Box>
					))}
				</Box>
			</Panel>
			<Panel title="Decisions">
				<Rows
					label="Decisions about findings"
					heads={['Finding', 'Decision', 'Reason']}
					empty="No finding was decided one by one: they stand in the words of the suggestion."
					rows={ordered.map((one) => ({ key: one.key, cells: [one.says, one.choice, one.why] }))}
				/>
				<Rows
					label="Other decisions"
					heads={['What', 'Value']}
					empty=""
					rows={otherDecisions(signed).map((row) => ({
						key: row.key,
						cells: [row.title, ...row.values],
					}))}
				/>
			</Panel>
			<Panel
				title="Findings at the time"
				hint={
					`${protocol.id === 'shipped' ? 'The protocol as shipped' : 'The protocol of this clinic'}, ` +
					`version ${protocol.version}. They stand as they were on that day.`
				}
			>
				<Paper variant="outlined" component="ul" sx={{ m: 0, py: 1, pr: 2, pl: 4 }}>
					{findings.map((finding) => (
						<li key={finding.id}>{finding.says}</li>
					))}
				</Paper>
			</Panel>
		</Stack>
	)
}
