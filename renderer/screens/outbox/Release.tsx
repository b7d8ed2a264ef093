/** Checked beside its page: what is ticked before an item may leave. */
import { Box, Button, Checkbox, FormControlLabel, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { isMail } from '../../../shared/desk/outbox/item.ts'
import { change } from '../../query.ts'
import { type Act, onPaperInstead, printedWaiting, printItem } from './acts.ts'
import { lookAgainIfWarned } from './useLook.ts'

interface ReleaseProps {
	item: OutboxView
	look: OutputOf<'outbox.look'> | undefined
	/** asks for the page and its warnings anew */
	again: () => void
	busy: boolean
	run: (act: Pick<Act, 'work' | 'done'>) => void
}
export function Release({ item, look, again, busy, run }: ReleaseProps) {
	const [compared, setCompared] = useState(false)
	const [read, setRead] = useState(false)
	const warned = look !== undefined && look.warnings.length > 0
	const found = () => {
		if (!compared)
			throw new Error('Tick first that page, name, birth date and recipient were compared.')
		if (warned && !read) throw new Error('Tick first that the warnings were read and checked.')
		return { itemId: item.itemId, sha256: look?.sha256 ?? '', warningsRead: read }
	}
	const release = () =>
		lookAgainIfWarned(async () => {
			await change('outbox.release', { ...found(), compared: true })
		}, again)
	const print = () =>
		lookAgainIfWarned(async () => {
			await change('outbox.compared', found())
			await printItem(item.itemId)
		}, again)
	const off = busy || item.sending || !look
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
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
				<Button
					variant="contained"
					disabled={off}
					onClick={() => run({ work: release, done: 'Released.' })}
				>
					Release
				</Button>
				<Button
					variant="outlined"
					disabled={off}
					onClick={() => run({ work: print, done: printedWaiting })}
				>
					{isMail(item.channel) ? onPaperInstead : 'Release and print'}
				</Button>
			</Box>
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
export function Tick({ label, on, set }: TickProps) {
	return (
		<FormControlLabel
			control={<Checkbox checked={on} onChange={(event) => set(event.target.checked)} />}
			label={label}
		/>
	)
}
