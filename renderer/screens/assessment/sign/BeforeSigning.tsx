/** Before the signature: what is missing, undecided or in the way; consent; preview and signing. */
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
import { signingBlocks } from '../../../../shared/engine/report/signing.ts'
import type { ParamsOf } from '../../../../shared/engine/words/statement.ts'
import { clinicProtocol } from '../../../parts/clinicProtocol.ts'
import { countSettled } from '../decide/answering.ts'
import { decide, rawWords } from '../decide/decisions.ts'
import { questionOfPath, titleOfQuestion } from '../decide/questionTitles.ts'
import type { StepProps } from '../stepProps.ts'
import type { SigningState } from './useSigning.ts'

interface BeforeSigningProps extends StepProps {
	signing: SigningState
}
export function BeforeSigning(props: BeforeSigningProps) {
	const { draft, assessment, signing } = props
	const { clinician, busy, preview, sign } = signing
	const blocks = signingBlocks(draft, assessment, clinicProtocol)
	return (
		<>
			<Open
				title="Still missing"
				severity="info"
				rows={(assessment?.missing ?? []).map((missed) => missed.says)}
				none="nothing that the findings need."
			/>
			<Open
				title="Fields that are not a value yet"
				severity="warning"
				rows={Object.entries(draft.raw).map(([path, text]) => rawWords(path, text))}
				none="none."
			/>
			<Settled {...props} />
			<Blocked blocks={blocks} goTo={props.goTo} />
			<Consent {...props} />
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
		</>
	)
}

interface OpenProps {
	title: string
	rows: readonly string[]
	/** Said where there are no rows. */
	none: string
	severity: 'info' | 'warning'
}
function Open({ title, rows, none, severity }: OpenProps) {
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

function Settled({ draft, assessment, goTo }: StepProps) {
	if (!assessment) return null
	const { settled, asked } = countSettled(draft, assessment.prescription.questions)
	return (
		<Stack direction="row" spacing={2} useFlexGap sx={{ alignItems: 'center', flexWrap: 'wrap' }}>
			<Typography>
				{settled} of {asked} questions settled.
			</Typography>
			{settled < asked && <Button onClick={() => goTo('Decide')}>Go to Decide</Button>}
		</Stack>
	)
}

type Block = ReturnType<typeof signingBlocks>[number]
interface BlockedProps extends Pick<StepProps, 'goTo'> {
	blocks: readonly Block[]
}
/** What keeps it from being signed, each with the way to where it is mended. */
function Blocked({ blocks, goTo }: BlockedProps) {
	const title = 'What keeps this from being signed'
	if (blocks.length === 0) return <Typography color="text.secondary">{title}: nothing.</Typography>
	return (
		<Alert severity="warning">
			<AlertTitle>{title}</AlertTitle>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{blocks.map((block) => (
					<li key={`${block.path} ${block.code}`}>
						{saidOf(block)}
						<Box sx={{ display: 'flex', flexWrap: 'wrap' }}>
							{placesOf(block).map(({ title, step, question }) => (
								<Button key={title} size="small" onClick={() => goTo(step, question)}>
									{title}
								</Button>
							))}
						</Box>
					</li>
				))}
			</Box>
		</Alert>
	)
}
/** Questions that are open are named by the ways to them alone. */
const saidOf = ({ code, says }: Block): string =>
	code === 'signing.open-questions' ? 'Questions without an answer:' : says
interface Place {
	title: string
	step: string
	question?: string
}
const atQuestion = (question: string): Place => ({
	title: `Go to ${titleOfQuestion(question)}`,
	step: 'Decide',
	question,
})
/** Where what is written about one question by itself stands. */
const questionAt: Readonly<Record<string, string>> = {
	'decisions.referralDone': 'gate',
	'decisions.heelRaiseWhy': 'raise',
	'decisions.insert': 'insert',
}
/** Where it is mended; none where it is on this step. */
function placesOf({ path, code, params }: Block): Place[] {
	if (code === 'signing.open-questions')
		return (params as ParamsOf<typeof code>).questions.map(atQuestion)
	if (path.startsWith('conditions.')) return [{ title: 'Go to Play', step: 'Play' }]
	if (path === 'visit.screening') return [{ title: 'Go to Flags', step: 'Flags' }]
	const question = questionAt[path] ?? questionOfPath(path)
	if (question !== undefined) return [atQuestion(question)]
	const ofDecide = path.startsWith('decisions.') && path !== 'decisions.consentNoted'
	return ofDecide ? [{ title: 'Go to Decide', step: 'Decide' }] : []
}

function Consent({ draft, change, signing }: BeforeSigningProps) {
	return (
		<FormControlLabel
			sx={{ minHeight: 44 }}
			label="Consent to assessment and record was given and noted"
			control={
				<Checkbox
					required
					disabled={signing.busy !== ''}
					checked={draft.decisions.consentNoted ?? false}
					onChange={(event) => {
						const noted = event.target.checked
						change((now) => decide(now, { consentNoted: noted }))
					}}
				/>
			}
		/>
	)
}
