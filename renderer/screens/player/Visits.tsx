/** Drafts and signed visits of one player, and the report of one of them on the page. */
import { Box, Button, Link, Paper, Stack, Typography } from '@mui/material'
import { useEffect, useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call, wordsOf } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Trouble } from '../../parts/form.tsx'

type Opened = OutputOf<'players.open'>
interface Shown { title: string; url: string; fileName: string }

export function Visits({ visits, drafts }: Pick<Opened, 'visits' | 'drafts'>) {
	const [shown, setShown] = useState<Shown>()
	const [says, setSays] = useState('')
	const pane = useRef<HTMLDivElement>(null)
	useEffect(() => {
		if (!shown) return
		pane.current?.scrollIntoView({ block: 'start' })
		return () => URL.revokeObjectURL(shown.url)
	}, [shown])
	const report = async (visit: Opened['visits'][number]) => {
		setSays('')
		try {
			const { base64, fileName } = await call('reports.open', { visitId: visit.visitId })
			const bytes = Uint8Array.from(atob(base64), (one) => one.charCodeAt(0))
			setShown({ title: `Report of ${dayInWords(visit.visitDate)}`, url: URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' })), fileName })
		} catch (error) { setSays(wordsOf(error)) }
	}
	return (
		<>
			<Paper component="section" variant="outlined" sx={{ p: { xs: 2, sm: 3 } }}>
				<Typography variant="h2">Visits</Typography>
				{!visits.length && !drafts.length && <Typography color="textSecondary" sx={{ mt: 1 }}>No visits yet.</Typography>}
				<Box component="ul" sx={{ listStyle: 'none', m: 0, p: 0 }}>
					{drafts.map((draft) => (
						<Line key={draft.draftId} day={draft.visitDate} about={`Draft, saved ${dayInWords(draft.savedAt)}`} />
					))}
					{visits.map((visit) => (
						<Line key={visit.visitId} day={visit.visitDate} about={`Signed ${dayInWords(visit.signedAt)}`}>
							<Button variant="outlined" aria-label={`Open report of ${dayInWords(visit.visitDate)}`} onClick={() => void report(visit)}>Open report</Button>
						</Line>
					))}
				</Box>
				<Trouble says={says} />
			</Paper>
			{shown && (
				<Paper component="section" variant="outlined" ref={pane} sx={{ p: 2, gridColumn: '1 / -1' }}>
					<Stack direction="row" sx={{ alignItems: 'center', flexWrap: 'wrap', gap: 2, mb: 2 }}>
						<Typography variant="h2" sx={{ flexGrow: 1 }}>{shown.title}</Typography>
						<Link href={shown.url} download={shown.fileName} sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, fontWeight: 600 }}>Save a copy</Link>
						<Button variant="outlined" onClick={() => setShown(undefined)}>Close report</Button>
					</Stack>
					{/* a new frame for each report: its address never changes under the reader */}
					<Box component="iframe" key={shown.url} title={shown.title} src={shown.url} sx={{ display: 'block', width: '100%', height: '80vh', border: 0, bgcolor: '#fff' }} />
				</Paper>
			)}
		</>
	)
}
function Line({ day, about, children }: { day: string; about: string; children?: React.ReactNode }) {
	return (
		<Box component="li" sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', justifyContent: 'space-between', gap: 1, py: 1.5, borderBottom: 1, borderColor: 'divider', '&:last-of-type': { borderBottom: 0 } }}>
			<Box><Typography sx={{ fontWeight: 600 }}>{dayInWords(day)}</Typography><Typography variant="body2" color="textSecondary">{about}</Typography></Box>
			{children}
		</Box>
	)
}
