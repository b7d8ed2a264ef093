/** The audit trail: who saw or changed what and when; checked on request, saved as a table. */
import { Alert, Box, Button, Link, Typography } from '@mui/material'
import { type ReactNode, useEffect, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { type AuditFunction, auditFunctions } from '../../../shared/desk/records/audit.ts'
import { call } from '../../host.ts'
import { saveText } from '../../parts/files.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { PrintButton } from '../../parts/Print.tsx'
import { Panel, Rows, timeWords, useAction } from '../../parts/panels.tsx'

const onPage = 100
const hereWords = 'This PC'
type Place = OutputOf<'audit.page'>['places'][number]
/** A laptop's trail is a section of its own, by the name of its records and its days. */
const placeWords = (one: Place) =>
	`Laptop ${one.workstation.slice(0, 6)}, ${one.rows} rows, to ${timeWords(one.to)}`
const placeOf = (places: readonly Place[], words: string) =>
	places.find((place) => placeWords(place) === words)?.workstation
type Row = OutputOf<'audit.page'>['rows'][number]
const did: Record<AuditFunction, string> = {
	read: 'read',
	search: 'searched',
	create: 'made',
	update: 'changed',
	sign: 'signed',
	amend: 'amended',
	print: 'printed',
	export: 'took out',
	send: 'sent',
	unlock: 'unlocked',
	'unlock-failed': 'failed to unlock',
	lock: 'locked',
	switch: 'handed over',
	merge: 'joined',
	destroy: 'destroyed',
	backup: 'backed up',
	restore: 'restored',
	verify: 'checked',
	refused: 'was refused',
}
const outcomes: Record<Row['outcome'], string> = {
	done: 'done',
	refused: 'refused',
	failed: 'failed',
}
/**
 * A mark of 36 characters is shown by its first eight, enough to tell two apart; the saved table
 * has it whole.
 */
const short = (mark: string) => (/^[0-9a-f]{8}-[0-9a-f-]{27}$/.test(mark) ? mark.slice(0, 8) : mark)
function whatOf({ objectRef, playerId, purpose }: Row): ReactNode {
	const [kind = '', ...rest] = objectRef.split(':')
	const mark = rest.join(':').trim()
	const words =
		kind === 'query'
			? mark
				? `players named like “${mark}”`
				: 'the list of players'
			: [kind.replaceAll('-', ' '), short(mark)].filter(Boolean).join(' ')
	const player =
		playerId && kind !== 'player' ? (
			<>
				{words ? ', ' : ''}
				<Link href={`#/players/${playerId}`}>player {short(playerId)}</Link>
			</>
		) : null
	return (
		<>
			{kind === 'player' && playerId ? (
				<Link href={`#/players/${playerId}`}>{words}</Link>
			) : (
				words || (player ? '' : 'the records')
			)}
			{player}
			{purpose && !/^\w+\.\w+$/.test(purpose) ? ` (${purpose})` : ''}
		</>
	)
}

export function Audit() {
	const [rows, setRows] = useState<Row[]>([])
	const [wanted, setWanted] = useState('')
	const [place, setPlace] = useState('')
	const [places, setPlaces] = useState<OutputOf<'audit.page'>['places']>([])
	const [more, setMore] = useState(false)
	const [checked, setChecked] = useState<OutputOf<'audit.verify'>>()
	const { busy, says, done, run } = useAction()
	// the rows come by themselves: meanwhile no button is taken away
	const reading = useAction()
	const page = async (before?: number) => {
		const answer = await call('audit.page', {
			limit: onPage,
			...(before === undefined ? {} : { before }),
			...(wanted ? { function: wanted } : {}),
			...(placeOf(places, place) ? { workstation: placeOf(places, place) } : {}),
		})
		setPlaces(answer.places)
		setRows((now) => (before === undefined ? answer.rows : [...now, ...answer.rows]))
		setMore(answer.rows.length === onPage)
		return ''
	}
	// biome-ignore lint/correctness/useExhaustiveDependencies: a new choice brings the first page anew
	useEffect(() => reading.run(() => page()), [wanted, place])
	const save = async () => {
		const { csv, rows: count } = await call('audit.export', {})
		saveText(csv, 'audit-trail.csv', 'text/csv')
		return `${count} rows saved as audit-trail.csv.`
	}
	return (
		<Panel
			title="Audit trail"
			hint="Every reading, change, print, export, sending and unlock. Rows hold references, no measures. Nobody can change or delete one unseen."
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
							value={place}
							set={setPlace}
							options={[hereWords, ...places.map(placeWords)]}
							optional
						/>
					</Box>
				)}
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
			</Box>
			<Trouble says={says || reading.says} />
			{done && (
				<Alert severity="success" role="status">
					{done}
				</Alert>
			)}
			{checked && checked.problems.length === 0 && (
				<Alert severity="success" role="status">
					{checked.rows} rows checked
					{checked.awayRows > 0 ? `, and ${checked.awayRows} that laptops brought home` : ''}: none
					is missing, none was altered.
				</Alert>
			)}
			{checked && checked.problems.length > 0 && (
				<Alert severity="error" role="alert">
					<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
						{checked.problems.map((problem) => (
							<li key={problem}>{problem}</li>
						))}
					</Box>
				</Alert>
			)}
			<Rows
				label="Audit rows"
				heads={['Row', 'When', 'Who', 'Role', 'Did', 'What', 'Outcome']}
				empty="No rows."
				rows={rows.map((row) => ({
					key: String(row.seq),
					cells: [
						row.seq,
						timeWords(row.utcTime),
						row.person || 'nobody',
						row.role,
						did[row.function],
						whatOf(row),
						outcomes[row.outcome],
					],
				}))}
			/>
			{more && (
				<Box>
					<Button
						variant="outlined"
						disabled={reading.busy}
						onClick={() => reading.run(() => page(rows.at(-1)?.seq))}
					>
						Older rows
					</Button>
				</Box>
			)}
			<Typography variant="body2" color="textSecondary">
				Times are shown in the zone of this PC.
			</Typography>
		</Panel>
	)
}
