/** The sheet of a signed visit as it was kept at signing: in short, opened and printed. */
import { Alert, Box, Button, Link, Stack, Typography } from '@mui/material'
import { Fragment, useId, useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { useHost } from '../../query.ts'
import { Answered } from '../Answered.tsx'
import { SavePage } from '../SavePage.tsx'
import { useFileUrl } from '../useFileUrl.ts'

type Sheet = NonNullable<OutputOf<'reports.sheet'>['sheet']>

export function SignedSheet({ visitId }: { visitId: string }) {
	const answer = useHost('reports.sheet', { visitId })
	return (
		<Answered of={answer} what="the sheet for the appointment">
			{({ sheet }) => <KeptSheet sheet={sheet} visitId={visitId} />}
		</Answered>
	)
}
interface OfVisit {
	visitId: string
}
/** @param sheet undefined where the visit was signed before sheets were kept */
export const KeptSheet = ({ sheet, visitId }: OfVisit & { sheet: Sheet | undefined }) =>
	sheet ? (
		<Kept sheet={sheet} visitId={visitId} />
	) : (
		<Typography color="text.secondary">
			No sheet was kept: this visit was signed before sheets were. Its report and its entries are
			there as they were signed.
		</Typography>
	)
function Kept({ sheet: { pdf, held, facts }, visitId }: OfVisit & { sheet: Sheet }) {
	const id = useId()
	const [open, setOpen] = useState(false)
	return (
		<Box component="section" aria-labelledby={id} sx={{ display: 'grid', gap: 1 }}>
			<Stack direction="row" useFlexGap sx={{ alignItems: 'center', flexWrap: 'wrap', gap: 2 }}>
				<Typography variant="h3" component="h2" id={id} sx={{ flexGrow: 1 }}>
					Sheet for the appointment
				</Typography>
				<Button variant="outlined" aria-expanded={open} onClick={() => setOpen(!open)}>
					{open ? 'Close the sheet' : 'Open the sheet'}
				</Button>
			</Stack>
			{held && <Alert severity="error">{held}</Alert>}
			<InShort facts={facts} />
			{open && <Opened pdf={pdf} visitId={visitId} />}
		</Box>
	)
}
/** Of a sheet that a newer version kept in a form not known here, nothing: its pages are there. */
const InShort = ({ facts }: Pick<Sheet, 'facts'>) =>
	facts.length === 0 ? null : (
		<Box
			component="dl"
			sx={{
				display: 'grid',
				gridTemplateColumns: 'minmax(6rem, auto) 1fr',
				columnGap: 2,
				rowGap: 0.5,
				m: 0,
				'& dt': { color: 'text.secondary' },
				'& dd': { m: 0 },
			}}
		>
			{facts.map(({ label, text }) => (
				<Fragment key={label}>
					<dt>{label}</dt>
					<dd>{text}</dd>
				</Fragment>
			))}
		</Box>
	)
/** Its pages as they were drawn, to be looked at, printed and saved. */
function Opened({ pdf: { base64, fileName }, visitId }: OfVisit & Pick<Sheet, 'pdf'>) {
	const url = useFileUrl(base64)
	const frame = useRef<HTMLIFrameElement>(null)
	if (!url) return null
	return (
		<>
			<Stack direction="row" useFlexGap sx={{ alignItems: 'center', flexWrap: 'wrap', gap: 2 }}>
				<Button variant="outlined" onClick={() => frame.current?.contentWindow?.print()}>
					Print the sheet
				</Button>
				<Link
					href={url}
					download={fileName}
					sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, fontWeight: 600 }}
				>
					Save a copy of the sheet
				</Link>
				<SavePage
					label="Save the sheet as a page for a screen reader"
					ask={() => call('reports.sheetPage', { visitId })}
				/>
			</Stack>
			<Box
				component="iframe"
				key={url}
				ref={frame}
				title="Sheet for the appointment"
				src={url}
				sx={{ display: 'block', width: '100%', height: '80vh', border: 0, bgcolor: '#fff' }}
			/>
		</>
	)
}
