/** One report as it was signed, on the page. */
import { Box, Button, Link, Paper, Stack, Typography } from '@mui/material'
import { useEffect, useRef } from 'react'
import { call } from '../../host.ts'
import { SavePage } from '../../parts/SavePage.tsx'
import type { Reports, ShownReport } from './useReports.ts'

export function ReportPane({
	shown: { visitId, version, title, url, fileName },
	reports: { close },
}: {
	shown: ShownReport
	reports: Reports
}) {
	const pane = useRef<HTMLDivElement>(null)
	// biome-ignore lint/correctness/useExhaustiveDependencies: another report comes into view anew
	useEffect(() => {
		pane.current?.scrollIntoView({ block: 'start' })
	}, [url])
	return (
		<Paper component="section" variant="outlined" ref={pane} sx={{ p: 2 }}>
			<Stack direction="row" sx={{ alignItems: 'center', flexWrap: 'wrap', gap: 2, mb: 2 }}>
				<Typography variant="h2" sx={{ flexGrow: 1 }}>
					{title}
				</Typography>
				<SavePage ask={() => call('reports.page', { visitId, version })} />
				<Link
					href={url}
					download={fileName}
					sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, fontWeight: 600 }}
				>
					Save a copy
				</Link>
				<Button variant="outlined" onClick={close}>
					Close report
				</Button>
			</Stack>
			{/* a new frame for each report: its address never changes under the reader */}
			<Box
				component="iframe"
				key={url}
				title={title}
				src={url}
				sx={{ display: 'block', width: '100%', height: '80vh', border: 0, bgcolor: '#fff' }}
			/>
		</Paper>
	)
}
