/** The thresholds of one room, folded until wanted: each with its unit, source and strength. */
import { Box, Button, Chip, Collapse, TextField, Typography } from '@mui/material'
import { useState } from 'react'
import type { ThresholdKey } from '../../../shared/engine/protocol/protocol.ts'
import { rows } from '../../../shared/engine/protocol/rows.ts'
import { roomNames } from '../../../shared/engine/words/en/terms.table.ts'
import { thresholdName } from '../../../shared/engine/words/reading.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { strengthWords } from '../../parts/Basis.tsx'
import type { Scheme } from './thresholds.ts'
import type { ProtocolDraft } from './useProtocolDraft.ts'

/** undefined where who works here may not change the protocol */
type Put = ProtocolDraft['put'] | undefined
interface SchemeChoice {
	now: Scheme | undefined
	set: ((scheme: Scheme | undefined) => void) | undefined
}
function Bands({ scheme: { now, set } }: { scheme: SchemeChoice }) {
	return (
		<Box sx={{ py: 1.5, maxWidth: 520 }}>
			<TextField
				select
				fullWidth
				label="Bands of the foot posture index"
				value={now ?? 'raw'}
				disabled={!set}
				onChange={(event) => set?.(event.target.value === 'trial' ? 'trial' : undefined)}
				slotProps={{ select: { native: true }, inputLabel: { shrink: true } }}
			>
				<option value="raw">raw banding (shipped)</option>
				<option value="trial">trial banding</option>
			</TextField>
		</Box>
	)
}
interface RowProps {
	id: ThresholdKey
	/** what was typed; undefined for the shipped value */
	text: string | undefined
	wrong: string | undefined
	put: Put
}
function Name({ id, isSet }: { id: ThresholdKey; isSet: boolean }) {
	return (
		<Box>
			<Typography sx={{ fontWeight: 600 }}>{thresholdName(id)}</Typography>
			<Typography variant="body2" color="text.secondary" sx={{ overflowWrap: 'anywhere' }}>
				{id}
			</Typography>
			{isSet ? (
				<Chip
					size="small"
					color="warning"
					variant="outlined"
					label={`set here; shipped ${rows[id].value}`}
				/>
			) : null}
		</Box>
	)
}
function Source({ id, text, wrong, put }: RowProps) {
	const { value, unit, population, source, strength, surety } = rows[id]
	return (
		<Box>
			<Typography variant="body2">
				<strong>{unit}</strong>. {population}. {source}
				{surety === 'from memory' ? ' (from memory)' : ''}; {strengthWords[strength]}.
			</Typography>
			{wrong ? (
				<Typography variant="body2" role="alert" color="error">
					{wrong}
				</Typography>
			) : null}
			{text !== undefined && put ? (
				<Button size="small" onClick={() => put(id, undefined)}>
					Restore the shipped value, {value}
				</Button>
			) : null}
		</Box>
	)
}
function ThresholdRow(row: RowProps) {
	const { id, text, wrong, put } = row
	const shipped = String(rows[id].value)
	const isSet = text !== undefined && text !== shipped
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: {
					xs: '1fr',
					md: 'minmax(200px, 1.2fr) 150px minmax(200px, 2fr)',
				},
				gap: 2,
				alignItems: 'start',
				py: 1.5,
				borderBottom: 1,
				borderColor: 'divider',
				...(isSet ? { borderLeft: 4, borderLeftColor: 'warning.main', pl: 1.5 } : {}),
			}}
		>
			<Name id={id} isSet={isSet} />
			<TextField
				size="small"
				value={text ?? shipped}
				disabled={!put}
				error={wrong !== undefined}
				onChange={(event) => put?.(id, event.target.value)}
				slotProps={{
					htmlInput: {
						'aria-label': `${thresholdName(id)} (${id})`,
						inputMode: 'decimal',
						style: { fontVariantNumeric: 'tabular-nums' },
					},
				}}
			/>
			<Source {...row} />
		</Box>
	)
}
interface RoomProps {
	room: string
	/** unfolded, whether or not a person unfolded it */
	open: boolean
	shown: readonly ThresholdKey[]
	draft: ProtocolDraft
	put: Put
	/** undefined where it does not belong to what is shown */
	scheme: SchemeChoice | undefined
}
export function ThresholdRoom({ room, open, shown, draft, put, scheme }: RoomProps) {
	const [unfolded, setUnfolded] = useState(false)
	const stands = open || unfolded
	const set = shown.filter((key) => key in draft.texts).length
	if (shown.length === 0) return null
	return (
		<Box
			component="section"
			aria-label={`Thresholds: ${roomNames[room] ?? room}`}
			sx={{ borderTop: 1, borderColor: 'divider', pt: 0.5 }}
		>
			<Button
				aria-expanded={stands}
				onClick={() => setUnfolded(!unfolded)}
				sx={{ px: 0, fontSize: '1.2rem' }}
			>
				{capital(roomNames[room] ?? room)}: {shown.length}{' '}
				{shown.length === 1 ? 'threshold' : 'thresholds'}
				{set > 0 ? `, ${set} set here` : ''}
			</Button>
			<Collapse in={stands} unmountOnExit>
				{scheme ? <Bands scheme={scheme} /> : null}
				{shown.map((key) => (
					<ThresholdRow
						key={key}
						id={key}
						text={draft.texts[key]}
						wrong={draft.wrong[key]}
						put={put}
					/>
				))}
			</Collapse>
		</Box>
	)
}
