/** What came of a referral, or that somebody tried to hear. */
import { Box, Button, Link, Typography } from '@mui/material'
import { type KeyboardEvent, useState } from 'react'
import type { InputOf } from '../../../shared/contract.ts'
import type { NotHeardView } from '../../../shared/desk/recall/calls.ts'
import { Field, Form, Trouble } from '../../parts/form.tsx'
import { parseDate } from '../../parts/parseDate.ts'
import { change, useHostAction } from '../../query.ts'

type Entry = InputOf<'recall.followUp'>['entry']
const results = { Excluded: 'excluded', Confirmed: 'confirmed', Recovered: 'recovered' } as const
const isResult = (title: string): title is keyof typeof results => Object.hasOwn(results, title)

const needed = (title: string, text: string, least = 1): string => {
	if (text.trim().length >= least) return text.trim()
	throw new Error(`${title} is empty or too short. Write at least ${least} characters.`)
}
const dayOf = (title: string, text: string): string => {
	const read = parseDate(text)
	if (read.ok) return read.iso
	throw new Error(`${title}: ${read.says}`)
}
type Entries = Record<'result' | 'found' | 'how' | 'from' | 'on' | 'says' | 'again', string>
const outcomeOf = ({ result, found, how, from, on }: Entries): Entry => {
	if (!isResult(result)) throw new Error('Result is not chosen. Choose one from the list.')
	return {
		what: 'outcome',
		result: results[result],
		found: needed('What was found', found, 3),
		how: needed('How', how),
		from: needed('By whom', from),
		on: dayOf('On', on),
	}
}
const tryOf = ({ says, again }: Entries): Entry => ({
	what: 'try',
	says: needed('What happened', says, 3),
	...(again.trim() && { again: dayOf('Ring again on', again) }),
})

interface FollowingUpProps {
	referral: NotHeardView
	today: string
	what: 'outcome' | 'try'
	close: () => void
}
export function FollowingUp({ referral, today, what, close }: FollowingUpProps) {
	const [entries, setEntries] = useState<Entries>({
		result: '',
		found: '',
		how: '',
		from: '',
		on: today,
		says: '',
		again: '',
	})
	const action = useHostAction()
	const { playerId, visitIds, name } = referral
	const save = () =>
		action.run(async () => {
			const entry = what === 'outcome' ? outcomeOf(entries) : tryOf(entries)
			await change('recall.followUp', { playerId, visitIds, entry })
			close()
			return ''
		})
	const onKey = ({ key }: KeyboardEvent) => {
		if (key === 'Escape') close()
	}
	const field = (key: keyof Entries) => ({
		value: entries[key],
		set: (value: string) => setEntries((now) => ({ ...now, [key]: value })),
	})
	return (
		<Box onKeyDown={onKey}>
			<Form
				label={what === 'outcome' ? `What came of it: ${name}` : `A try: ${name}`}
				submit={save}
				sx={{ display: 'grid', gap: 1.5, maxWidth: '52rem' }}
			>
				{what === 'outcome' ? <OutcomeFields field={field} /> : <TryFields field={field} />}
				{what === 'outcome' && <HoldsStay playerId={playerId} />}
				<Trouble says={action.says} />
				<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
					<Button type="submit" variant="contained" disabled={action.busy}>
						{what === 'outcome' ? 'Keep the outcome' : 'Keep the try'}
					</Button>
					<Button onClick={close}>Leave it</Button>
				</Box>
			</Form>
		</Box>
	)
}
interface FieldsProps {
	field: (key: keyof Entries) => { value: string; set: (value: string) => void }
}
const two = {
	display: 'grid',
	gridTemplateColumns: 'repeat(auto-fit, minmax(min(100%, 15rem), 1fr))',
	gap: 1.5,
	alignItems: 'start',
} as const
const OutcomeFields = ({ field }: FieldsProps) => (
	<>
		<Box sx={two}>
			<Field label="Result" {...field('result')} options={Object.keys(results)} focus />
			<Field label="On" type="date" {...field('on')} />
		</Box>
		<Field label="What was found or excluded" {...field('found')} rows={2} />
		<Box sx={two}>
			<Field label="How it was found" {...field('how')} hint="Such as film, MRI, rang the ward" />
			<Field label="By whom" {...field('from')} />
		</Box>
	</>
)
const TryFields = ({ field }: FieldsProps) => (
	<Box sx={two}>
		<Field label="What happened" {...field('says')} focus hint="Such as rang, no answer" />
		<Field
			label="Ring again on"
			type="date"
			{...field('again')}
			hint="The referral stands until then and after"
		/>
	</Box>
)
/** What is held is lifted where the signs are: each hold by the outcome that names it. */
const HoldsStay = ({ playerId }: { playerId: string }) => (
	<Typography variant="body2" color="textSecondary">
		This ends the asking and lifts nothing that is held. Holds are lifted with the outcome at Flags
		of the next visit:{' '}
		<Link href={`#/assessment/${playerId}`} sx={{ fontWeight: 600 }}>
			open the assessment
		</Link>
		.
	</Typography>
)
