/** Checked beside its page: what is ticked before an item may leave. */
import { Button, Checkbox, FormControlLabel, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { change } from '../../query.ts'
import type { Act } from './acts.ts'

interface ReleaseProps {
	item: OutboxView
	look: OutputOf<'outbox.look'> | undefined
	busy: boolean
	run: (act: Pick<Act, 'work' | 'done'>) => void
}
export function Release({ item, look, busy, run }: ReleaseProps) {
	const [compared, setCompared] = useState(false)
	const [read, setRead] = useState(false)
	const warned = look !== undefined && look.warnings.length > 0
	const release = async () => {
		if (!compared)
			throw new Error('Tick first that page, name, birth date and recipient were compared.')
		if (warned && !read) throw new Error('Tick first that the warnings were read and checked.')
		await change('outbox.release', {
			itemId: item.itemId,
			sha256: look?.sha256 ?? '',
			compared: true,
			warningsRead: read,
		})
	}
	return (
		<Stack spacing={1} sx={{ alignItems: 'flex-start' }}>
			<Tick
				label="Name and birth date on the first page are this player's, and the recipient is right"
				on={compared}
				set={setCompared}
			/>
			{warned && (
				<Tick label="I read the warnings above and checked what they say" on={read} set={setRead} />
			)}
			<Button
				variant="contained"
				disabled={busy || item.sending || !look}
				onClick={() => run({ work: release, done: 'Released.' })}
			>
				Release
			</Button>
			{!look && (
				<Typography variant="body2" color="textSecondary">
					The first page is being opened.
				</Typography>
			)}
		</Stack>
	)
}

interface TickProps {
	label: string
	on: boolean
	set: (on: boolean) => void
}
function Tick({ label, on, set }: TickProps) {
	return (
		<FormControlLabel
			control={<Checkbox checked={on} onChange={(event) => set(event.target.checked)} />}
			label={label}
		/>
	)
}
