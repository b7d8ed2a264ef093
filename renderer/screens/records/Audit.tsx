/** The audit trail: who saw or changed what and when; checked on request, saved as a table. */
import { Alert, Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { auditFunctions } from '../../../shared/desk/records/audit.ts'
import { call } from '../../host.ts'
import { Answered } from '../../parts/Answered.tsx'
import { saveText } from '../../parts/files.ts'
import { Field, Outcome } from '../../parts/form.tsx'
import { PrintButton } from '../../parts/Print.tsx'
import { Panel, timeWords } from '../../parts/panels.tsx'
import { type HostAction, useHost, useHostAction } from '../../query.ts'
import { Alarms } from './Alarms.tsx'
import { AuditRows, onPage } from './AuditRows.tsx'

type Page = OutputOf<'audit.page'>
type Place = Page['places'][number]
const hereWords = 'This PC'
/** A laptop's trail is a section of its own, by the name of its records and its days. */
const placeWords = (place: Place) =>
	`Laptop ${place.workstation.slice(0, 6)}, ${place.rows} rows, to ${timeWords(place.to)}`
const placeOf = (places: readonly Place[], words: string) =>
	places.find((place) => placeWords(place) === words)?.workstation

async function save(): Promise<string> {
	const { csv, rows, leftOut = '' } = await call('audit.export', {})
	saveText(csv, 'audit-trail.csv', 'text/csv')
	return `${rows} rows saved as audit-trail.csv. ${leftOut}`.trim()
}
function TrailButtons({
	action: { busy, run },
	setChecked,
}: {
	action: HostAction
	setChecked: (checked: OutputOf<'audit.verify'>) => void
}) {
	return (
		<>
			<Button
				variant="outlined"
				disabled={busy}
				onClick={() =>
					run(async () => {
						setChecked(await call('audit.verify', {}))
						return ''
					})
				}
			>
				Check the trail
			</Button>
			<Button variant="outlined" disabled={busy} onClick={() => run(save)}>
				Save as a table (CSV)
			</Button>
			<PrintButton what="these rows" />
		</>
	)
}
function Checked({ of: { rows, awayRows, problems } }: { of: OutputOf<'audit.verify'> }) {
	if (problems.length === 0)
		return (
			<Alert severity="success" role="status">
				{rows} rows checked
				{awayRows > 0 ? `, and ${awayRows} that laptops brought home` : ''}: none is missing, none
				was altered.
			</Alert>
		)
	return (
		<Alert severity="error" role="alert">
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{problems.map((problem) => (
					<li key={problem}>{problem}</li>
				))}
			</Box>
		</Alert>
	)
}
export function Audit() {
	const [wanted, setWanted] = useState('')
	const [place, setPlace] = useState<{ words: string; workstation?: string | undefined }>({
		words: '',
	})
	const [checked, setChecked] = useState<OutputOf<'audit.verify'>>()
	const action = useHostAction()
	const asked = { limit: onPage, function: wanted || undefined, workstation: place.workstation }
	const page = useHost('audit.page', asked, { keepLast: true })
	const places = page.value?.places ?? []
	return (
		<Panel
			title="Audit trail"
			hint={
				'Every reading, change, print, export, sending and unlock. Rows hold references, no ' +
				'measures. Nobody can change or delete one unseen.'
			}
		>
			<Box
				className="lw-screen-only"
				sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'end' }}
			>
				<Box sx={{ width: 240 }}>
					<Field
						label="Show only"
						value={wanted}
						set={setWanted}
						options={auditFunctions}
						optional
					/>
				</Box>
				{places.length > 0 && (
					<Box sx={{ width: 360 }}>
						<Field
							label="Trail of"
							value={place.words}
							set={(words) => setPlace({ words, workstation: placeOf(places, words) })}
							options={[hereWords, ...places.map(placeWords)]}
							optional
						/>
					</Box>
				)}
				<TrailButtons action={action} setChecked={setChecked} />
			</Box>
			<Alarms />
			<Outcome of={action} />
			{checked && <Checked of={checked} />}
			{page.value?.leftOut !== undefined && (
				<Alert severity="warning" role="status">
					{page.value.leftOut}
				</Alert>
			)}
			<Answered of={page} what="the audit trail">
				{(first) => (
					<AuditRows
						key={`${wanted} ${place.words}`}
						first={first.rows}
						asked={asked}
						asking={page.asking}
					/>
				)}
			</Answered>
			<Typography variant="body2" color="textSecondary">
				Times are shown in the zone of this PC.
			</Typography>
		</Panel>
	)
}
