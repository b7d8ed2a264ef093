/** Sent in error: the steps, who is affected, and the time that is left. */
import { Alert, Box, Button, Link, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import {
	type BreachStep,
	breachStepNames,
	breachSteps,
} from '../../../shared/desk/outbox/breach.ts'
import { Answered } from '../../parts/Answered.tsx'
import { besideField, Field, Trouble } from '../../parts/form.tsx'
import { Panel, timeWords } from '../../parts/panels.tsx'
import { change, useHost, useHostAction } from '../../query.ts'
import { timeLeft } from './clocks.ts'

type Breach = OutputOf<'breaches.list'>['breaches'][number]
/** Below these the time left is marked as short. */
const shortHours = 24
const shortDays = 7
/** Characters below which a note says nothing. */
const shortestNote = 3

export function Breaches() {
	const list = useHost('breaches.list', {})
	return (
		<Stack spacing={2}>
			<Answered of={list} what="what was sent in error">
				{({ breaches }) =>
					breaches.length === 0 ? (
						<Typography color="textSecondary">
							Nothing was marked as sent in error. To mark something, open it from the queue, write
							what happened, and choose Sent in error.
						</Typography>
					) : (
						breaches.map((breach) => <BreachPanel key={breach.breachId} breach={breach} />)
					)
				}
			</Answered>
		</Stack>
	)
}

function BreachPanel({ breach }: { breach: Breach }) {
	const action = useHostAction()
	const firstOpen = breachStepNames.find((step) => !breach.done[step])
	const noteDone = (step: BreachStep, note: string) =>
		action.run(async () => {
			await change('breaches.step', { breachId: breach.breachId, step, note })
			return ''
		})
	return (
		<Panel
			title={`${breach.number}: ${breach.playerName}`}
			hint={`Sent to ${breach.recipient}. What happened: ${breach.what}`}
		>
			<TimeLeft breach={breach} />
			<Box>
				<Link
					href={`#/outbox/item/${breach.itemId}`}
					sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44 }}
				>
					Open what was sent
				</Link>
			</Box>
			<Trouble says={action.says} />
			<Box component="ol" sx={{ m: 0, pl: 3, display: 'grid', gap: 2 }}>
				{breachStepNames.map((step) => (
					<Box component="li" key={step}>
						<Typography>{breachSteps[step]}</Typography>
						<Step
							step={step}
							done={breach.done[step]}
							first={step === firstOpen}
							busy={action.busy}
							noteDone={noteDone}
						/>
					</Box>
				))}
			</Box>
			<Typography variant="body2" color="textSecondary">
				Who looked at or sent anything of this player: {breach.access.join('; ') || 'nobody'}.
			</Typography>
		</Panel>
	)
}

function TimeLeft({ breach }: { breach: Breach }) {
	const { authorityHoursLeft, assessDaysLeft } = breach
	const { noticedAt, authorityBy, assessBy } = breach
	const short = authorityHoursLeft < shortHours || assessDaysLeft < shortDays
	return (
		<Alert severity={short ? 'error' : 'warning'}>
			Noticed {timeWords(noticedAt)} by {breach.by}. To the authority, where the law asks: by{' '}
			{timeWords(authorityBy)}, {timeLeft(authorityHoursLeft, 'hours')}. Assessed: by{' '}
			{timeWords(assessBy)}, {timeLeft(assessDaysLeft, 'days')}.
		</Alert>
	)
}

interface StepProps {
	step: BreachStep
	/** Undefined until it is done. */
	done: Breach['done'][BreachStep]
	/** The first that is not done yet says what is asked. */
	first: boolean
	busy: boolean
	noteDone: (step: BreachStep, note: string) => void
}
function Step({ step, done, first, busy, noteDone }: StepProps) {
	const [note, setNote] = useState('')
	if (done)
		return (
			<Typography color="textSecondary">
				Done {timeWords(done.at)} by {done.by}: {done.note}
			</Typography>
		)
	return (
		<Stack
			direction={{ xs: 'column', sm: 'row' }}
			spacing={1}
			sx={{ alignItems: { sm: 'flex-start' }, mt: 0.5 }}
		>
			<Box sx={{ flexGrow: 1, maxWidth: 560 }}>
				<Field
					label={`What was done (${step.replace('-', ' ')})`}
					value={note}
					set={setNote}
					optional
					{...(first ? { hint: 'A few words first; then note it as done.' } : {})}
				/>
			</Box>
			<Box sx={besideField}>
				<Button
					variant="outlined"
					disabled={busy || note.trim().length < shortestNote}
					onClick={() => noteDone(step, note)}
				>
					Note as done
				</Button>
			</Box>
		</Stack>
	)
}
