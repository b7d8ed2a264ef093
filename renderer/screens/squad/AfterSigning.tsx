/** What is made once players are signed: the reports of each, and the summaries of the day. */
import { Alert, Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { PlaceField } from '../../parts/choose/PlaceField.tsx'
import { saveBytes, saveText } from '../../parts/files.ts'
import { Form, Outcome } from '../../parts/form.tsx'
import { counted, Needs } from '../../parts/Needs.tsx'
import { Panel } from '../../parts/panels.tsx'
import { change, type HostAction, useHost, useHostAction } from '../../query.ts'
import { Families } from './Families.tsx'

type Progress = OutputOf<'squad.progress'>
/** How often the progress is asked while reports are written. */
const progressEveryMs = 300
const againAfterMs = (progress: Progress | undefined) =>
	progress?.running ? progressEveryMs : undefined

const hintFor = (signed: number): string =>
	signed === 0
		? 'Nobody is signed yet. Once the first player is signed, the reports and the summary ' +
			'for the club are made here.'
		: `${counted(signed, 'player is', 'players are')} signed. Reports are written for ` +
			`them alone; for minors the guardian's page with them.`

interface AfterSigningProps {
	squadId: string
	/** Number of players signed. */
	signed: number
	/** Nobody is left to be seen: the reports are what comes next. */
	over: boolean
	/** Whether who works here answers for the clinic: the summaries are theirs. */
	lead: boolean
}
export function AfterSigning({ squadId, signed, over, lead }: AfterSigningProps) {
	const { value } = useHost('squad.progress', { squadId }, { againAfterMs })
	const action = useHostAction()
	const write = (folder: string) =>
		action.run(async () => {
			await change('squad.reports', { squadId, folder })
			return ''
		})
	const cancel = () =>
		action.run(async () => {
			await change('squad.cancel', { squadId })
			return ''
		})
	const running = value?.running === true
	return (
		<Panel title="After signing" hint={hintFor(signed)}>
			{signed > 0 && <Reports over={over} running={running} write={write} cancel={cancel} />}
			{value && <Written progress={value} />}
			{signed > 0 && <Families squadId={squadId} />}
			<Summaries squadId={squadId} lead={lead} some={signed > 0} action={action} />
		</Panel>
	)
}

interface ReportsProps {
	over: boolean
	running: boolean
	write: (folder: string) => void
	cancel: () => void
}
function Reports({ over, running, write, cancel }: ReportsProps) {
	const [folder, setFolder] = useState('')
	return (
		<Form submit={() => write(folder)} sx={{ display: 'grid', gap: 1 }}>
			<PlaceField
				label="Folder for the reports"
				purpose="reports"
				value={folder}
				set={setFolder}
				hint="The files there are not sealed: use a safe place."
			/>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
				<Button
					type="submit"
					variant={over ? 'contained' : 'outlined'}
					disabled={running || !folder}
				>
					Write the reports
				</Button>
				{running ? (
					<Button variant="outlined" onClick={cancel}>
						Cancel
					</Button>
				) : (
					<Needs fields={[[folder, 'folder for the reports']]} />
				)}
			</Box>
		</Form>
	)
}

function Written({ progress }: { progress: Progress }) {
	const { running, done, total, files, said, failed } = progress
	return (
		<>
			{total > 0 && (
				<Typography role="status">
					{said || `${done} of ${total} players, ${files} files${running ? '' : '. Done.'}`}
				</Typography>
			)}
			{failed.map((failure) => (
				<Alert key={failure} severity="error">
					{failure}
				</Alert>
			))}
		</>
	)
}

interface SummariesProps {
	squadId: string
	lead: boolean
	/** Whether anybody is signed: the club is told of signed players only. */
	some: boolean
	action: HostAction
}
const summaries = [
	{ version: 'clinician', label: 'Summary for the clinician', ofSigned: false },
	// the club is told of signed players only
	{ version: 'club', label: 'Summary for the club', ofSigned: true },
] as const
function Summaries({ squadId, lead, some, action }: SummariesProps) {
	const [leftOut, setLeftOut] = useState<string[]>([])
	const summary = (version: 'club' | 'clinician') =>
		action.run(async () => {
			const answer = await call('squad.summary', { squadId, version })
			setLeftOut(answer.leftOut)
			saveBytes(answer.pdf.base64, answer.pdf.fileName)
			return `${answer.pdf.fileName} was made.`
		})
	const asPage = (version: 'club' | 'clinician') =>
		action.run(async () => {
			const answer = await call('squad.summaryPage', { squadId, version })
			setLeftOut(answer.leftOut)
			saveText(answer.page.html, answer.page.fileName, 'text/html')
			return `${answer.page.fileName} was made.`
		})
	const offered = lead ? summaries.filter(({ ofSigned }) => some || !ofSigned) : []
	return (
		<>
			{offered.map(({ version, label }) => (
				<Box key={version} sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
					<Button variant="outlined" disabled={action.busy} onClick={() => summary(version)}>
						{label}
					</Button>
					<Button disabled={action.busy} onClick={() => asPage(version)}>
						{label} as a page for a screen reader
					</Button>
				</Box>
			))}
			<Outcome of={action} />
			{leftOut.length > 0 && (
				<Alert severity="info">
					Left out of it: {counted(leftOut.length, 'player')}.
					<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
						{leftOut.map((name) => (
							<li key={name}>{name}</li>
						))}
					</Box>
				</Alert>
			)}
		</>
	)
}
