/** Before the signature: the sheet, what is open, what was explained and agreed to, the signature. */
import { Alert, AlertTitle, Box, Button, Stack, Typography } from '@mui/material'
import { gateFirst, signingBlocks } from '../../../../shared/engine/report/signing.ts'
import { clinicProtocol } from '../../../parts/clinicProtocol.ts'
import { LiveSheet } from '../../../parts/sheet/LiveSheet.tsx'
import type { StepProps } from '../stepProps.ts'
import { stepsFor } from '../steps.ts'
import { AgreementForm } from './agreement/AgreementForm.tsx'
import { isMinorIn } from './agreement/agreeing.ts'
import { twoColumns } from './columns.ts'
import { type Block, isOfAgreement, keptByOthers, notMeasured } from './openThings.ts'
import { Papers } from './papers/Papers.tsx'
import { StillOpen } from './StillOpen.tsx'
import type { SigningState } from './useSigning.ts'

interface BeforeSigningProps extends StepProps {
	signing: SigningState
}
export function BeforeSigning(props: BeforeSigningProps) {
	const { draft, change, assessment, earlier, goTo, signing } = props
	const blocks = signingBlocks(draft, assessment, clinicProtocol)
	const steps = stepsFor(isMinorIn(draft, clinicProtocol))
	return (
		<Box sx={twoColumns}>
			<LiveSheet draft={draft} assessment={assessment} earlier={earlier} />
			<Stack spacing={2}>
				<StillOpen
					title="Open on other steps: it cannot be signed yet"
					severity="warning"
					things={keptByOthers(blocks, draft, steps)}
					goTo={goTo}
				/>
				<StillOpen
					title="Not measured"
					severity="info"
					things={assessment ? notMeasured(assessment, steps) : []}
					goTo={goTo}
				/>
				<AgreementForm
					draft={draft}
					change={change}
					urgent={assessment !== undefined && gateFirst(assessment)}
					goTo={goTo}
				/>
				<Papers draft={draft} change={change} assessment={assessment} earlier={earlier} />
				<Signature blocks={blocks} signing={signing} />
			</Stack>
		</Box>
	)
}

interface SignatureProps {
	blocks: readonly Block[]
	signing: SigningState
}
/** Signing is a button of its own; what of this step keeps it shut stands over it. */
function Signature({ blocks, signing }: SignatureProps) {
	const { clinician, busy, preview, sign } = signing
	const own = blocks.filter(isOfAgreement)
	return (
		<Stack spacing={1.5}>
			{own.length > 0 && (
				<Alert severity="warning" role="note" id="open-here">
					<AlertTitle>Open on this step</AlertTitle>
					<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
						{own.map(({ path, code, says }) => (
							<li key={`${path} ${code}`}>{says}</li>
						))}
					</Box>
				</Alert>
			)}
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
					aria-describedby={own.length > 0 ? 'open-here' : undefined}
					onClick={sign}
				>
					Sign the visit
				</Button>
			</Stack>
		</Stack>
	)
}
