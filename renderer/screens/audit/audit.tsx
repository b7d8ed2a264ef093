/** What became of the visits of some days: counts to be read, printed and saved as a table. */
import { Alert, Box, Button, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import { call } from '../../host.ts'
import { Answered } from '../../parts/Answered.tsx'
import { DateField } from '../../parts/DateField.tsx'
import { DocumentView } from '../../parts/DocumentView.tsx'
import { saveText } from '../../parts/files.ts'
import { Outcome } from '../../parts/form.tsx'
import { Page } from '../../parts/Page.tsx'
import { parseDate } from '../../parts/parseDate.ts'
import { printPdf } from '../../parts/printPdf.ts'
import { scrollsX } from '../../parts/scrollsX.ts'
import { type HostAction, useHost, useHostAction } from '../../query.ts'
import { duePages } from '../due/pages.ts'
import { OwnBand } from './OwnBand.tsx'

interface Days {
	from: string
	to: string
}
async function print(days: Days): Promise<string> {
	const { pdf } = await call('clinicAudit.print', days)
	const by = await printPdf(pdf.base64, pdf.fileName)
	return by === 'saved' ? `Saved as ${pdf.fileName}.` : ''
}
async function save(days: Days): Promise<string> {
	const { csv, fileName } = await call('clinicAudit.export', days)
	saveText(csv, fileName, 'text/csv')
	return `Saved as ${fileName}.`
}
function Acts({ days, action }: { days: Days; action: HostAction }) {
	return (
		<>
			<Button
				variant="outlined"
				disabled={action.busy}
				onClick={() => action.run(() => save(days))}
			>
				Save as a table (CSV)
			</Button>
			<Button
				variant="contained"
				disabled={action.busy}
				onClick={() => action.run(() => print(days))}
			>
				Print
			</Button>
		</>
	)
}
/** The days as they were typed; those that are counted follow once both can be read. */
function DaysForm({ days, count }: { days: Days; count: (days: Days) => void }) {
	const [typed, setTyped] = useState(days)
	const [from, to] = [parseDate(typed.from), parseDate(typed.to)]
	const turned = from.ok && to.ok && from.iso > to.iso
	return (
		<Box
			component="form"
			aria-label="Days"
			className="lw-screen-only"
			onSubmit={(event) => {
				event.preventDefault()
				if (from.ok && to.ok && !turned) count({ from: from.iso, to: to.iso })
			}}
			sx={{
				display: 'grid',
				gridTemplateColumns: { xs: '1fr', sm: '1fr 1fr auto' },
				gap: 1.5,
				alignItems: 'start',
				maxWidth: '44rem',
			}}
		>
			<DateField
				label="Visits from"
				value={typed.from}
				set={(value) => setTyped({ ...typed, from: value })}
			/>
			<DateField
				label="to"
				value={typed.to}
				set={(value) => setTyped({ ...typed, to: value })}
				error={turned ? 'The last day is before the first. Give a later one.' : undefined}
			/>
			<Button type="submit" variant="outlined" sx={{ minHeight: 44, mt: 0.75 }}>
				Count
			</Button>
		</Box>
	)
}
/** Wider than a page to be read: the tables have many columns. */
const wide = {
	...scrollsX,
	'&& > *': { maxWidth: '68rem' },
	'& table': { minWidth: '34rem' },
	'& tbody th': { minWidth: '9rem' },
} as const

export function AuditScreen() {
	const [chosen, choose] = useState<Days>()
	const action = useHostAction()
	const audit = useHost('clinicAudit.read', chosen ? { days: chosen } : {}, { keepLast: true })
	const days = audit.value?.days
	return (
		<Page
			title="What became of it"
			line="Counts of what was recorded after the visits of some days. They describe; they prove nothing."
			acts={days && <Acts days={days} action={action} />}
			room={{ label: 'Due', pages: duePages('audit', true) }}
		>
			<Outcome of={action} />
			<Answered of={audit} what="the counts">
				{({ document, own, unread, days: counted }) => (
					<Stack spacing={2}>
						<DaysForm key={`${counted.from} ${counted.to}`} days={counted} count={choose} />
						{audit.asking && <Typography role="status">Counting.</Typography>}
						{unread > 0 && (
							<Alert severity="warning">
								Visits that cannot be read and are counted nowhere here: {unread}.
							</Alert>
						)}
						<Box sx={wide} tabIndex={0} role="region" aria-label="Counts">
							<DocumentView document={document} />
						</Box>
						<OwnBand own={own} days={counted} />
					</Stack>
				)}
			</Answered>
		</Page>
	)
}
