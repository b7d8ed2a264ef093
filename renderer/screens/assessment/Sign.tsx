/**
 * Sign: what is still open, consent, a preview of the page, and the signature that freezes the
 * record.
 */
import {
	Alert,
	AlertTitle,
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	Stack,
	Typography,
} from '@mui/material'
import { useEffect, useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { signingBlocks } from '../../../shared/engine/report/signing.ts'
import { call, HostRefusal } from '../../host.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { urlOf } from '../../parts/files.ts'
import { decide, rawWords, undecidedFindings, undecidedWishes } from './decide/decisions.ts'
import type { StepProps } from './stepProps.ts'

type Pdf = OutputOf<'drafts.preview'>
interface Page {
	url: string
	fileName: string
	signed: boolean
}
interface Trouble {
	title: string
	says: string
	problems: { path: string; message: string }[]
}

const pageOf = (pdf: Pdf, signed: boolean): Page => ({
	url: urlOf(pdf.base64),
	fileName: pdf.fileName,
	signed,
})
const troubleOf = (title: string, error: unknown): Trouble => ({
	title,
	says: error instanceof Error ? error.message : String(error),
	problems: error instanceof HostRefusal ? error.problems : [],
})

function List({
	title,
	rows,
	none,
	severity,
}: {
	title: string
	rows: readonly string[]
	none: string
	severity: 'info' | 'warning'
}) {
	if (rows.length === 0)
		return (
			<Typography color="text.secondary">
				{title}: {none}
			</Typography>
		)
	return (
		<Alert severity={severity}>
			<AlertTitle>{title}</AlertTitle>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{rows.map((row) => (
					<li key={row}>{row}</li>
				))}
			</Box>
		</Alert>
	)
}
/**
 * `onSigned` is called once the record is frozen and the draft is gone: the parent must not save it
 * again, and keeps this step on screen for the report.
 */
export function Sign(props: StepProps & { onSigned: () => void }) {
	const { draft, change, assessment, draftId, playerId, saveNow, goTo, onSigned } = props
	const [clinician, setClinician] = useState<{ name: string; registration: string }>()
	const [page, setPage] = useState<Page>()
	const [busy, setBusy] = useState('')
	const [trouble, setTrouble] = useState<Trouble>()
	const [visitId, setVisitId] = useState('')
	const frame = useRef<HTMLIFrameElement>(null)
	// the button that had the focus is gone: the next Tab goes to saving and printing
	const done = useRef<HTMLDivElement>(null)
	useEffect(() => {
		if (visitId) done.current?.focus()
	}, [visitId])
	const here = useRef(true)

	useEffect(() => {
		here.current = true
		call('clinic.get', {}).then(
			(clinic) => here.current && setClinician(clinic.clinician),
			(error) => here.current && setTrouble(troubleOf('The clinic file did not open', error)),
		)
		return () => {
			here.current = false
		}
	}, [])
	useEffect(
		() => () => {
			if (page) URL.revokeObjectURL(page.url)
		},
		[page],
	)

	const run = async (words: string, title: string, work: () => Promise<void>) => {
		setTrouble(undefined)
		setBusy(words)
		try {
			await work()
		} catch (error) {
			if (here.current) setTrouble(troubleOf(title, error))
		} finally {
			if (here.current) setBusy('')
		}
	}
	const show = (pdf: Pdf, signed: boolean) => {
		if (here.current) setPage(pageOf(pdf, signed))
	}
	const preview = () =>
		run('Preparing the page', 'The preview was not made', async () => {
			await saveNow()
			show(await call('drafts.preview', { draftId }), false)
		})
	const openReport = (id: string) =>
		run('Opening the report', 'The record is signed, but the report did not open', async () =>
			show(await call('reports.open', { visitId: id }), true),
		)
	const sign = async () => {
		let id = ''
		await run('Signing', 'Not signed', async () => {
			await saveNow()
			id = (await call('visits.sign', { draftId })).visitId
			onSigned()
			if (here.current) {
				setVisitId(id)
				setPage(undefined)
			}
		})
		if (id) await openReport(id)
	}

	const blocks = signingBlocks(draft, assessment, clinicProtocol).map((block) => block.says)
	const undecided = assessment ? undecidedFindings(draft, assessment).length : 0
	const features = assessment ? undecidedWishes(draft, assessment).length : 0
	const report = page && (
		<Box
			component="iframe"
			ref={frame}
			title={page.signed ? 'Signed report' : 'Report preview'}
			src={page.url}
			sx={{
				width: '100%',
				height: '75vh',
				border: 1,
				borderColor: 'divider',
				borderRadius: 1,
				bgcolor: 'background.paper',
			}}
		/>
	)
	const status = (
		<Typography role="status" aria-live="polite" sx={{ minHeight: '1.5em' }}>
			{busy}
		</Typography>
	)
	const error = trouble && (
		<Alert severity="error" role="alert">
			<AlertTitle>{trouble.title}</AlertTitle>
			{trouble.says}
			{trouble.problems.length > 0 && (
				<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
					{trouble.problems.map((problem) => (
						<li key={`${problem.path} ${problem.message}`}>
							{problem.path}: {problem.message}
						</li>
					))}
				</Box>
			)}
		</Alert>
	)

	if (visitId)
		return (
			<Stack spacing={2}>
				<Alert severity="success" ref={done} tabIndex={-1}>
					Signed{clinician ? ` as ${clinician.name}, ${clinician.registration}` : ''}. The record
					can no longer be changed; a correction becomes a new version: open the visit on the
					player's page, then Amend.
				</Alert>
				{error}
				<Stack direction="row" spacing={1} useFlexGap sx={{ flexWrap: 'wrap' }}>
					{page ? (
						<Button variant="contained" href={page.url} download={page.fileName}>
							Save PDF
						</Button>
					) : (
						<Button variant="contained" disabled={busy !== ''} onClick={() => openReport(visitId)}>
							Open the report
						</Button>
					)}
					<Button
						variant="outlined"
						disabled={!page}
						onClick={() => frame.current?.contentWindow?.print()}
					>
						Print
					</Button>
					<Button
						variant="outlined"
						onClick={() => {
							location.hash = `#/player/${playerId}`
						}}
					>
						Back to player
					</Button>
				</Stack>
				{status}
				{report}
			</Stack>
		)

	return (
		<Stack spacing={2}>
			<List
				title="Still missing"
				severity="info"
				rows={(assessment?.missing ?? []).map((missed) => missed.says)}
				none="nothing that the findings need."
			/>
			<List
				title="Fields that are not a value yet"
				severity="warning"
				rows={Object.entries(draft.raw).map(([path, text]) => rawWords(path, text))}
				none="none."
			/>
			<Stack direction="row" spacing={2} useFlexGap sx={{ alignItems: 'center', flexWrap: 'wrap' }}>
				<Typography>
					Undecided: {undecided} of {assessment?.findings.length ?? 0} findings; {features}{' '}
					{features === 1 ? 'feature' : 'features'} of the next pair. What is not dropped is printed
					in the words of the suggestion.
				</Typography>
				{undecided + features > 0 && <Button onClick={() => goTo('Decide')}>Go to Decide</Button>}
			</Stack>
			<List
				title="What keeps this from being signed"
				severity="warning"
				rows={blocks}
				none="nothing."
			/>
			<FormControlLabel
				sx={{ minHeight: 44 }}
				label="Consent to assessment and record was given and noted"
				control={
					<Checkbox
						required
						disabled={busy !== ''}
						checked={draft.decisions.consentNoted ?? false}
						onChange={(event) => {
							const on = event.target.checked
							change((now) => decide(now, { consentNoted: on }))
						}}
					/>
				}
			/>
			<Typography>
				Signing as:{' '}
				{clinician
					? `${clinician.name}, ${clinician.registration}`
					: 'the clinic file is not open yet'}
			</Typography>
			<Stack direction="row" spacing={1}>
				<Button variant="outlined" disabled={busy !== ''} onClick={preview}>
					Preview
				</Button>
				<Button
					variant="contained"
					disabled={busy !== '' || blocks.length > 0 || !clinician}
					onClick={sign}
				>
					Sign
				</Button>
			</Stack>
			{status}
			{error}
			{report}
		</Stack>
	)
}
