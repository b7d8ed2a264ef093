/**
 * What can be done with a signed visit: amend, late entry, hand-over noted, entered in error,
 * countersign. Nothing signed is changed by any of it.
 */
import { Alert, Box, Button, Stack } from '@mui/material'
import { type ReactNode, useState } from 'react'
import { call } from '../../host.ts'
import { today } from '../../parts/dates.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { useAction } from '../../parts/panels.tsx'

type Act = 'amend' | 'late' | 'handed' | 'error' | 'countersign'
const names: Record<Act, string> = {
	amend: 'Amend',
	late: 'Late entry',
	handed: 'Report was handed over',
	error: 'Entered in error',
	countersign: 'Countersign',
}
const channels = ['by-hand', 'print', 'export', 'send'] as const
type Channel = (typeof channels)[number]
const words = { occurred: 'late entry', statement: 'statement of the player' } as const
const leastReason = 3
function reasonOf(text: string, what: string): string {
	const reason = text.trim()
	if (reason.length < leastReason)
		throw new Error(
			`The reason for ${what} is ${reason ? `"${reason}"` : 'empty'}. Write at least ` +
				`${leastReason} letters.`,
		)
	return reason
}
interface ActsProps {
	visitId: string
	playerId: string
	may: { amend: boolean; note: boolean; hand: boolean; countersign: boolean; error: boolean }
	done: () => void
}
export function Acts({ visitId, playerId, may, done }: ActsProps) {
	const [open, setOpen] = useState<Act>()
	const [form, setForm] = useState({
		reason: '',
		text: '',
		what: words.occurred as string,
		occurredOn: today(),
		recipient: '',
		channel: '',
	})
	const action = useAction()
	const put = (name: keyof typeof form) => (value: string) =>
		setForm((now) => ({ ...now, [name]: value }))
	const finish = (says: string) => {
		setOpen(undefined)
		setForm((now) => ({ ...now, reason: '', text: '', recipient: '' }))
		done()
		return says
	}
	const work: Record<Act, () => Promise<string>> = {
		amend: async () => {
			await call('visits.amend', { visitId, reason: reasonOf(form.reason, 'the amendment') })
			location.hash = `#/assessment/${playerId}`
			return ''
		},
		late: async () => {
			if (!form.text.trim()) throw new Error('The text is empty. Write what happened.')
			await call('visits.addNote', {
				visitId,
				what: form.what === words.statement ? 'statement' : 'late-entry',
				text: form.text,
				occurredOn: form.occurredOn,
			})
			return finish('Added beside the visit, with today as the day it was written.')
		},
		handed: async () => {
			if (!form.recipient.trim() || !form.channel)
				throw new Error('Recipient and way are needed. Fill in whom it went to and choose how.')
			await call('reports.handedOver', {
				visitId,
				recipient: form.recipient,
				channel: form.channel as Channel,
			})
			return finish('Noted.')
		},
		error: async () => {
			await call('visits.markInError', { visitId, reason: reasonOf(form.reason, 'the mark') })
			return finish('Marked as entered in error. It is left out of summaries and kept here.')
		},
		countersign: async () => {
			await call('visits.countersign', { visitId, text: form.text })
			return finish('Countersigned.')
		},
	}
	const fields: Record<Act, ReactNode> = {
		amend: (
			<Field
				label="Reason for the amendment"
				value={form.reason}
				set={put('reason')}
				focus
				hint="A draft opens. When it is signed it becomes the next version; this one stays."
			/>
		),
		late: (
			<>
				<Field label="Kind" value={form.what} set={put('what')} options={Object.values(words)} />
				<Field label="It happened on" type="date" value={form.occurredOn} set={put('occurredOn')} />
				<Field label="What happened" value={form.text} set={put('text')} rows={3} />
			</>
		),
		handed: (
			<>
				<Field
					label="Recipient"
					value={form.recipient}
					set={put('recipient')}
					focus
					hint="Whom to tell if this visit is amended later."
				/>
				<Field label="Way" value={form.channel} set={put('channel')} options={channels} />
			</>
		),
		error: (
			<Field
				label="Reason why it was entered in error"
				value={form.reason}
				set={put('reason')}
				focus
				hint="This cannot be taken back. The visit stays in the history."
			/>
		),
		countersign: (
			<Field
				label="Words beside the countersignature"
				value={form.text}
				set={put('text')}
				optional
				focus
			/>
		),
	}
	const submits: Record<Act, string> = {
		amend: 'Open the amendment',
		late: 'Add this entry',
		handed: 'Note it',
		error: 'Mark as entered in error',
		countersign: 'Countersign this version',
	}
	const shown = (Object.keys(names) as Act[]).filter(
		(key) =>
			({
				amend: may.amend,
				late: may.note,
				handed: may.hand,
				error: may.error,
				countersign: may.countersign,
			})[key],
	)
	return (
		<Stack spacing={2}>
			<Box
				role="group"
				aria-label="What to do with this visit"
				sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}
			>
				{shown.map((act) => (
					<Button
						key={act}
						variant={act === 'countersign' ? 'contained' : 'outlined'}
						aria-expanded={open === act}
						onClick={() => setOpen((now) => (now === act ? undefined : act))}
					>
						{names[act]}
					</Button>
				))}
			</Box>
			{open && shown.includes(open) && (
				<Box
					component="form"
					noValidate
					aria-label={names[open]}
					sx={{ display: 'grid', gap: 2, maxWidth: 620 }}
					onSubmit={(event: React.FormEvent) => {
						event.preventDefault()
						action.run(work[open])
					}}
				>
					{fields[open]}
					<Box sx={{ display: 'flex', gap: 1 }}>
						<Button
							type="submit"
							variant="contained"
							color={open === 'error' ? 'error' : 'primary'}
							disabled={action.busy}
						>
							{submits[open]}
						</Button>
						<Button onClick={() => setOpen(undefined)}>Cancel</Button>
					</Box>
				</Box>
			)}
			<Trouble says={action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
		</Stack>
	)
}
