/** Sent in error: the steps, who is affected, and the time that is left. */
import { Alert, Box, Button, Link, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import {
	type BreachStep,
	breachStepNames,
	breachSteps,
} from '../../../shared/desk/outbox/breach.ts'
import { call } from '../../host.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { Panel, timeWords, useAction, useAnswer } from '../../parts/panels.tsx'

type Breach = OutputOf<'breaches.list'>['breaches'][number]
export function Breaches() {
	const { value, says, again } = useAnswer('breaches.list', {})
	return (
		<Stack spacing={2}>
			<Trouble says={says} />
			{value?.breaches.length === 0 && (
				<Typography color="textSecondary">
					Nothing was marked as sent in error. To mark something, open it from the queue, write what
					happened, and choose Sent in error.
				</Typography>
			)}
			{value?.breaches.map((breach) => (
				<One key={breach.breachId} one={breach} again={again} />
			))}
		</Stack>
	)
}
const left = (count: number, unit: string) =>
	count < 0 ? `passed ${-count} ${unit} ago` : `${count} ${unit} left`
function One({ one, again }: { one: Breach; again: () => void }) {
	const action = useAction()
	const firstOpen = breachStepNames.find((step) => !one.done[step])
	const [notes, setNotes] = useState<Partial<Record<BreachStep, string>>>({})
	return (
		<Panel
			title={`${one.number}: ${one.playerName}`}
			hint={`Sent to ${one.recipient}. ${one.what}`}
		>
			<Alert severity={one.authorityHoursLeft < 24 || one.assessDaysLeft < 7 ? 'error' : 'warning'}>
				Noticed {timeWords(one.noticedAt)} by {one.by}. To the authority, where the law asks: by{' '}
				{timeWords(one.authorityBy)}, {left(one.authorityHoursLeft, 'hours')}. Assessed: by{' '}
				{timeWords(one.assessBy)}, {left(one.assessDaysLeft, 'days')}.
			</Alert>
			<Box>
				<Link
					href={`#/outbox/item/${one.itemId}`}
					sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44 }}
				>
					Open what was sent
				</Link>
			</Box>
			<Trouble says={action.says} />
			<Box component="ol" sx={{ m: 0, pl: 3, display: 'grid', gap: 2 }}>
				{breachStepNames.map((step) => {
					const done = one.done[step]
					return (
						<Box component="li" key={step}>
							<Typography>{breachSteps[step]}</Typography>
							{done ? (
								<Typography color="textSecondary">
									Done {timeWords(done.at)} by {done.by}: {done.note}
								</Typography>
							) : (
								<Stack
									direction={{ xs: 'column', sm: 'row' }}
									spacing={1}
									sx={{ alignItems: { sm: 'flex-end' }, mt: 0.5 }}
								>
									<Box sx={{ flexGrow: 1, maxWidth: 560 }}>
										<Field
											label={`What was done (${step.replace('-', ' ')})`}
											value={notes[step] ?? ''}
											set={(text) => setNotes((now) => ({ ...now, [step]: text }))}
											optional
											{...(step === firstOpen
												? { hint: 'A few words first; then note it as done.' }
												: {})}
										/>
									</Box>
									<Button
										variant="outlined"
										disabled={action.busy || (notes[step] ?? '').trim().length < 3}
										onClick={() =>
											action.run(async () => {
												await call('breaches.step', {
													breachId: one.breachId,
													step,
													note: notes[step] ?? '',
												})
												again()
												return ''
											})
										}
									>
										Note as done
									</Button>
								</Stack>
							)}
						</Box>
					)
				})}
			</Box>
			<Typography variant="body2" color="textSecondary">
				Who looked at or sent anything of this player: {one.access.join('; ') || 'nobody'}.
			</Typography>
		</Panel>
	)
}
