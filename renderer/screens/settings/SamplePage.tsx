/** A page of an invented player that follows each change of the letterhead. */
import { Box, Typography } from '@mui/material'
import { useDeferredValue, useMemo } from 'react'
import { assess } from '../../../shared/engine/assess.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { playerReport } from '../../../shared/engine/report/player.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import { type Visit, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { DocumentView } from '../../parts/DocumentView.tsx'

/** An invented player of the sample page. */
const sample: Visit = visitSchema.parse({
	format: 'lastwright-visit',
	version: 1,
	player: { givenName: 'Sample', familyName: 'Player', birthDate: '1999-04-02', sex: 'female' },
	visitDate: '2027-01-20',
	play: { code: 'association' },
	feet: {
		left: { heelToToeMm: [246, 247], ballWidthMm: 95 },
		right: { heelToToeMm: 249, ballWidthMm: 97 },
	},
	ankles: { left: { lungeCm: 7 }, right: { lungeCm: 9.5 } },
	screening: { nightPain: false },
})

function sampleOf(clinic: Clinic) {
	try {
		return playerReport({
			visit: sample,
			assessment: assess(sample, [], clinicProtocol.file),
			decisions: noDecisions,
			clinic,
			signedAt: undefined,
			draft: true,
			protocol: clinicProtocol,
		})
	} catch {
		return undefined
	}
}
/** @param clinic undefined while the fields cannot stand */
export function SamplePage({
	clinic,
	paper,
}: {
	clinic: Clinic | undefined
	paper: Clinic['paper']
}) {
	const settled = useDeferredValue(clinic)
	const page = useMemo(() => settled && sampleOf(settled), [settled])
	return (
		<Box
			component="section"
			aria-label="Sample page"
			tabIndex={0}
			sx={{
				position: { lg: 'sticky' },
				top: 'calc(var(--frame-stays, 0rem) + 8px)',
				maxHeight: { lg: 'calc(100vh - var(--frame-stays, 0rem) - 16px)' },
				overflow: 'auto',
			}}
		>
			<Typography variant="h2" sx={{ mb: 1 }}>
				Sample page, {paper ?? 'A4'}
			</Typography>
			{page ? (
				<DocumentView document={page} />
			) : (
				<Typography role="status">The sample follows as soon as the fields can stand.</Typography>
			)}
		</Box>
	)
}
