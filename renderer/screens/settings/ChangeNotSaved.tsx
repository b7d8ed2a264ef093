/** A change of the protocol before it is kept: what it would do, why, save or discard. */
import { Box, Button, Paper, Typography } from '@mui/material'
import type { OutputOf } from '../../../shared/contract.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { Field } from '../../parts/form.tsx'
import { useSettled } from '../../parts/useSettled.ts'
import { useHost } from '../../query.ts'
import type { ProtocolDraft } from './useProtocolDraft.ts'

type Effect = OutputOf<'protocol.preview'>
const settledMs = 300
const leastWhy = 3

function EffectOf({ effect: { visits, changes } }: { effect: Effect }) {
	return (
		<Box role="status">
			<Typography>
				{changes.length === 0
					? `No finding of the ${visits} demo visits changes.`
					: `Findings change in ${changes.length} of ${visits} demo visits:`}
			</Typography>
			{changes.map((change) => (
				<Box
					key={`${change.name} ${change.visitDate}`}
					sx={{ my: 1, pl: 1.5, borderLeft: 3, borderColor: 'divider' }}
				>
					<Typography sx={{ fontWeight: 600 }}>
						{change.name}, {dayInWords(change.visitDate)}
					</Typography>
					{change.gone.map((words) => (
						<Typography key={words} variant="body2">
							No more: {words}
						</Typography>
					))}
					{change.added.map((words) => (
						<Typography key={words} variant="body2">
							New: {words}
						</Typography>
					))}
				</Box>
			))}
		</Box>
	)
}
/** What the demo visits would say: asked once nothing was typed for a while. */
function useEffectOf({ values, scheme }: ProtocolDraft, bad: number) {
	const settled = useSettled(JSON.stringify([values, scheme]), settledMs)
	return useHost(
		'protocol.preview',
		{ values: { ...values }, fpiScheme: scheme },
		{ when: settled && bad === 0 },
	)
}
export function ChangeNotSaved({
	draft,
	busy,
	save,
}: {
	draft: ProtocolDraft
	busy: boolean
	save: () => void
}) {
	const bad = Object.keys(draft.wrong).length
	const effect = useEffectOf(draft, bad)
	return (
		<Paper
			component="section"
			aria-label="Change not saved"
			variant="outlined"
			sx={{
				p: 2,
				position: 'sticky',
				top: 'calc(var(--frame-stays, 0rem) + 8px)',
				zIndex: 2,
				borderColor: 'primary.main',
				borderWidth: 2,
				maxHeight: '60vh',
				overflow: 'auto',
			}}
		>
			<Typography variant="h2">Change not saved yet</Typography>
			{bad > 0 ? (
				<Typography role="alert" color="error">
					{bad} {bad === 1 ? 'value' : 'values'} cannot be used: see the fields.
				</Typography>
			) : null}
			<Refused of={effect} />
			{effect.value ? <EffectOf effect={effect.value} /> : null}
			{!effect.value && bad === 0 && !effect.says ? (
				<Typography role="status">Trying it on the demo visits.</Typography>
			) : null}
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: '1fr auto auto',
					gap: 2,
					alignItems: 'end',
					mt: 1,
				}}
			>
				<Field label="Why it is changed" value={draft.why} set={draft.setWhy} />
				<Button
					variant="contained"
					disabled={busy || bad > 0 || draft.why.trim().length < leastWhy}
					onClick={save}
				>
					Save as a new version
				</Button>
				<Button onClick={draft.discard}>Discard</Button>
			</Box>
		</Paper>
	)
}
