/**
 * Sign: the sheet of the appointment, what is still open, what was agreed to, a preview of the page,
 * and the signature that freezes the record.
 */
import { Alert, AlertTitle, Box, Stack, Typography } from '@mui/material'
import { useRef } from 'react'
import type { StepProps } from '../stepProps.ts'
import { BeforeSigning } from './BeforeSigning.tsx'
import { Signed } from './Signed.tsx'
import { type ShownPage, type Trouble, useSigning } from './useSigning.ts'

interface SignProps extends StepProps {
	/**
	 * Called once the record is frozen and the draft is gone: the parent must not save it again, and
	 * keeps this step on screen for the report.
	 */
	onSigned: () => void
}
export function Sign(props: SignProps) {
	const signing = useSigning(props)
	const frame = useRef<HTMLIFrameElement>(null)
	const { visitId, busy, trouble, page } = signing
	const status = (
		<Typography role="status" aria-live="polite" sx={{ minHeight: '1.5em' }}>
			{busy}
		</Typography>
	)
	const report = page && <Report page={page} frame={frame} />
	const failed = trouble && <Failed trouble={trouble} />
	if (visitId)
		return (
			<Signed
				signing={signing}
				playerId={props.playerId}
				failed={failed}
				print={() => frame.current?.contentWindow?.print()}
			>
				{status}
				{report}
			</Signed>
		)
	return (
		<Stack spacing={2}>
			<BeforeSigning {...props} signing={signing} />
			{status}
			{failed}
			{report}
		</Stack>
	)
}

interface ReportProps {
	page: ShownPage
	frame: React.RefObject<HTMLIFrameElement | null>
}
function Report({ page, frame }: ReportProps) {
	return (
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
}

function Failed({ trouble: { title, says, problems } }: { trouble: Trouble }) {
	return (
		<Alert severity="error" role="alert">
			<AlertTitle>{title}</AlertTitle>
			{says}
			{problems.length > 0 && (
				<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
					{problems.map(({ path, message }) => (
						<li key={`${path} ${message}`}>
							{path}: {message}
						</li>
					))}
				</Box>
			)}
		</Alert>
	)
}
