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
import { clinicProtocol } from '../../../parts/clinicProtocol.ts'
import { decide, rawWords, undecidedFindings, undecidedWishes } from '../decide/decisions.ts'
import type { StepProps } from '../stepProps.ts'
import type { SigningState } from './useSigning.ts'

interface BeforeSigningProps extends StepProps {
	signing: SigningState
}
export function BeforeSigning(props: BeforeSigningProps) {
	const { draft, assessment, signing } = props
	const { clinician, busy, preview, sign } = signing
	const blocks = signingBlocks(draft, assessment, clinicProtocol).map((block) => block.says)
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
			<Undecided {...props} />
			<Open
				title="What keeps this from being signed"
				severity="warning"
				rows={blocks}
				none="nothing."
			/>
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

function Undecided({ draft, assessment, goTo }: StepProps) {
	const findings = assessment ? undecidedFindings(draft, assessment).length : 0
	const features = assessment ? undecidedWishes(draft, assessment).length : 0
	return (
		<Stack direction="row" spacing={2} useFlexGap sx={{ alignItems: 'center', flexWrap: 'wrap' }}>
			<Typography>
				Undecided: {findings} of {assessment?.findings.length ?? 0} findings; {features}{' '}
				{features === 1 ? 'feature' : 'features'} of the next pair. What is not dropped is printed
				in the words of the suggestion.
			</Typography>
			{findings + features > 0 && <Button onClick={() => goTo('Decide')}>Go to Decide</Button>}
		</Stack>
	)
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
