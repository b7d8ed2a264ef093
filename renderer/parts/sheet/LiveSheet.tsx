/** The sheet for the appointment as it stands, while the visit is open: looked at and printed. */
import { Box, Button, Stack, Typography } from '@mui/material'
import { useDeferredValue, useId, useMemo } from 'react'
import type { DraftContent } from '../../../shared/contract.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { appointmentSheet } from '../../../shared/engine/report/appointment.ts'
import { unnamedClinic } from '../../../shared/engine/report/kinds.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { useHost } from '../../query.ts'
import { DocumentView } from '../DocumentView.tsx'
import { composedOf, draftInput } from '../draftPages.ts'
import { usePrinted } from './usePrinted.tsx'

interface LiveSheetProps {
	draft: DraftContent
	/** Undefined while it cannot be worked out. */
	assessment: Assessment | undefined
	earlier: readonly Visit[]
}
export function LiveSheet({ draft, assessment, earlier }: LiveSheetProps) {
	const id = useId()
	const clinic = useHost('clinic.get', {}).value ?? unnamedClinic
	const content = useDeferredValue(draft)
	const { document, trouble } = useMemo(
		() =>
			assessment
				? composedOf(() =>
						appointmentSheet(draftInput({ draft: content, assessment, earlier, clinic })),
					)
				: { document: undefined, trouble: undefined },
		[content, assessment, earlier, clinic],
	)
	const { print, paper } = usePrinted(document)
	if (trouble) return <p role="alert">{trouble}</p>
	if (!document)
		return (
			<Typography color="text.secondary">
				The sheet stands here as soon as the findings can be worked out.
			</Typography>
		)
	return (
		<Box component="section" aria-labelledby={id}>
			<Stack
				direction="row"
				useFlexGap
				sx={{ alignItems: 'center', flexWrap: 'wrap', gap: 2, mb: 1 }}
			>
				<Typography variant="h2" id={id} sx={{ flexGrow: 1 }}>
					Sheet for the appointment
				</Typography>
				<Button variant="outlined" onClick={print}>
					Print the sheet
				</Button>
			</Stack>
			<DocumentView document={document} />
			{paper}
		</Box>
	)
}
