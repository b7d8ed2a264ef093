/** What was sent and heard of is closed together, so that the queue shows what still waits. */
import { Box, Button, Checkbox, FormControlLabel, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import type { OutboxState } from '../../../shared/desk/outbox/item.ts'
import { Disclosure } from '../../parts/Disclosure.tsx'
import { Field } from '../../parts/form.tsx'
import { counted } from '../../parts/Needs.tsx'
import { change, type HostAction } from '../../query.ts'

/** Nothing is left to be done with these but to be put aside. */
const settled: readonly OutboxState[] = ['sent', 'delivered']
const canClose = ({ state, sending, breachId }: OutboxView): boolean =>
	settled.includes(state) && !sending && breachId === undefined

interface CloseManyProps {
	/** those that are shown */
	items: readonly OutboxView[]
	run: HostAction['run']
	busy: boolean
}
export function CloseMany({ items, run, busy }: CloseManyProps) {
	const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
	const [note, setNote] = useState('')
	const open = items.filter(canClose)
	const chosen = open.filter(({ itemId }) => !left.has(itemId))
	if (open.length === 0) return null
	const close = () =>
		run(async () => {
			// one after the other: each is a record of its own
			for (const { itemId } of chosen) await change('outbox.close', { itemId, note })
			setNote('')
			return `${counted(chosen.length, 'sending')} closed.`
		})
	const toggle = (itemId: string) =>
		setLeft((now) => {
			const next = new Set(now)
			if (!next.delete(itemId)) next.add(itemId)
			return next
		})
	return (
		<Disclosure label={`Close what was sent (${open.length})`}>
			<Box sx={{ display: 'grid', gap: 1, pt: 1, maxWidth: 640 }}>
				<Typography color="textSecondary">
					Closed ones leave the list; each stays on the page of its player and under Closed.
				</Typography>
				{open.map(({ itemId, number, playerName, recipient }) => (
					<FormControlLabel
						key={itemId}
						control={<Checkbox checked={!left.has(itemId)} onChange={() => toggle(itemId)} />}
						label={`${number}, ${playerName}, to ${recipient.name}`}
					/>
				))}
				<Field label="Note, kept with each" value={note} set={setNote} optional />
				<Box>
					<Button variant="outlined" disabled={busy || chosen.length === 0} onClick={close}>
						Close {counted(chosen.length, 'sending')}
					</Button>
				</Box>
			</Box>
		</Disclosure>
	)
}
