/** What can be done with the rows that are chosen: with how many of them, and why not with the others. */
import { Alert, Box, Button, Checkbox, FormControlLabel, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { type ManyAct, manyActs, possible } from '../../../shared/desk/outbox/many.ts'
import { Field } from '../../parts/form.tsx'
import { counted } from '../../parts/Needs.tsx'
import { allShown, type Choice, nothingChosen } from './choosing.ts'
import { ManyDone, useMany } from './ManyDone.tsx'

const actWords: Record<ManyAct, string> = {
	release: 'Release',
	back: 'Call back',
	close: 'Close',
}
/** Characters of a reason below which it says nothing. */
const shortestNote = 3

interface ChosenProps {
	/** those that are shown, in order */
	shown: readonly OutboxView[]
	choice: Choice
	choose: (choice: Choice) => void
	/** shows these one after another */
	lookThrough: (items: readonly OutboxView[]) => void
}
export function Chosen({ shown, choice, choose, lookThrough }: ChosenProps) {
	const many = useMany()
	const [note, setNote] = useState('')
	const chosen = shown.filter(({ itemId }) => choice.ids.has(itemId))
	const hidden = choice.ids.size - chosen.length
	const run = (act: ManyAct, items: readonly OutboxView[]) =>
		many.run(act, items, note, () => {
			setNote('')
			choose(nothingChosen)
		})
	return (
		<Box className="lw-screen-only" sx={{ display: 'grid', gap: 1 }}>
			<ManyDone of={many} items={shown} />
			{shown.length > 0 && <All {...{ shown, choice, choose }} count={chosen.length} />}
			{hidden > 0 && (
				<Typography variant="body2" color="textSecondary">
					{hidden} more chosen and not shown here: nothing is done with{' '}
					{hidden === 1 ? 'it' : 'them'}.
				</Typography>
			)}
			{chosen.length > 0 && (
				<Box
					role="group"
					aria-label="With those chosen"
					sx={{
						borderLeft: 3,
						borderColor: 'primary.main',
						pl: 1.5,
						display: 'grid',
						gridTemplateColumns: 'minmax(0, 1fr)',
						gap: 1,
					}}
				>
					<Acts
						{...{ chosen, note, run }}
						busy={many.action.busy}
						look={() => lookThrough(chosen)}
					/>
					<Box sx={{ maxWidth: 560 }}>
						<Field
							label="Note or reason for all of them"
							value={note}
							set={setNote}
							optional
							hint="Write a few words before: Call back. Kept with each."
						/>
					</Box>
				</Box>
			)}
		</Box>
	)
}

interface AllProps extends Pick<ChosenProps, 'shown' | 'choice' | 'choose'> {
	count: number
}
const All = ({ shown, choice, choose, count }: AllProps) => (
	<FormControlLabel
		control={
			<Checkbox
				checked={count === shown.length}
				indeterminate={count > 0 && count < shown.length}
				onChange={() =>
					choose(
						allShown(
							choice,
							shown.map(({ itemId }) => itemId),
							count < shown.length,
						),
					)
				}
			/>
		}
		label={
			count > 0 ? `${count} of ${shown.length} shown are chosen` : `Choose all ${shown.length}`
		}
		sx={{ justifySelf: 'start' }}
	/>
)

interface ActsProps {
	chosen: readonly OutboxView[]
	note: string
	busy: boolean
	run: (act: ManyAct, items: readonly OutboxView[]) => void
	look: () => void
}
function Acts({ chosen, note, busy, run, look }: ActsProps) {
	const of = manyActs.map((act) => ({ act, ...possible(act, chosen) }))
	const reasonless = note.trim().length < shortestNote
	const unsent = of
		.filter(({ act }) => act === 'close')
		.flatMap(({ can }) => can)
		.filter(({ sentAt, taken, state }) => !sentAt && !taken && state !== 'returned').length
	return (
		<>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
				<Button variant="contained" disabled={busy} onClick={look}>
					Look through {chosen.length}
				</Button>
				{of.map(({ act, can }) => (
					<Button
						key={act}
						variant="outlined"
						disabled={busy || can.length === 0 || (act === 'back' && reasonless)}
						onClick={() => run(act, can)}
					>
						{actWords[act]} {can.length} of {chosen.length}
					</Button>
				))}
			</Box>
			{of
				.filter(({ because }) => because.length > 0)
				.map(({ act, can, because }) => (
					<Typography key={act} variant="body2">
						<strong>{actWords[act]}:</strong> {chosen.length - can.length} cannot (
						{because.map(({ says, count }) => `${count} ${says}`).join(', ')}).
					</Typography>
				))}
			{unsent > 0 && (
				<Alert severity="info">
					{counted(unsent, 'document')} of those that can be closed {unsent === 1 ? 'has' : 'have'}{' '}
					not left: closed, {unsent === 1 ? 'it is' : 'they are'} not sent.
				</Alert>
			)}
		</>
	)
}
