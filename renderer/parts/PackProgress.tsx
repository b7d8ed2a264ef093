/** How far work with a pack is, in words and as a bar, and the way to stop it. */
import { Box, Button, LinearProgress, Typography } from '@mui/material'
import { useEffect, useState } from 'react'
import type { OutputOf } from '../../shared/contract.ts'
import type { WorkStep } from '../../shared/desk/outreach/work.ts'
import { call } from '../host.ts'
import { useHost } from '../query.ts'
import { spokenOnly } from './spokenOnly.ts'

type Progress = OutputOf<'outreach.progress'>
/** How often it is asked while something goes on. */
const everyMs = 250
const percent = 100

/** What is done, and what of it is counted. */
const steps: Readonly<Record<WorkStep, readonly [doing: string, counted: string]>> = {
	passphrase: ['Working with the passphrase', ''],
	gathering: ['Gathering', 'records'],
	verifying: ['Checking what stands here', 'records'],
	sealing: ['Sealing', 'records'],
	writing: ['Writing the file', 'MB'],
	opening: ['Opening', 'records'],
	checking: ['Checking against the records here', 'records'],
	taking: ['Taking it in: this last step is done at once', ''],
}
const mega = 1_000_000
const shown = (step: WorkStep, count: number): string =>
	step === 'writing' ? (count / mega).toFixed(1) : count.toLocaleString('en')

/** Such as "Sealing: 120 of 602 records." */
function stepWords({ step, done = 0, total = 0, mayCancel }: Progress): string {
	if (!step) return 'Beginning.'
	if (!mayCancel && step !== 'taking') return 'Stopping.'
	const [doing, counted] = steps[step]
	if (total > 0) return `${doing}: ${shown(step, done)} of ${shown(step, total)} ${counted}.`
	return `${doing}.`
}
const kinds: Readonly<Record<NonNullable<Progress['what']>, string>> = {
	pack: 'Making the pack',
	'way-back': 'Making the file for the way back',
	look: 'Looking into the file',
	merge: 'Bringing it in',
	open: 'Opening the pack',
}
function CancelButton({ mayCancel }: { mayCancel: boolean }) {
	const [asked, setAsked] = useState(false)
	return (
		<Button
			variant="outlined"
			disabled={!mayCancel || asked}
			onClick={() => {
				setAsked(true)
				call('outreach.cancel', {}).catch(() => setAsked(false))
			}}
		>
			Cancel
		</Button>
	)
}
function Bar({ progress }: { progress: Progress }) {
	const { what = 'pack', done = 0, total = 0, mayCancel = false } = progress
	const words = stepWords(progress)
	return (
		<Box sx={{ display: 'grid', gap: 1, maxWidth: '40rem' }}>
			<Typography>
				{kinds[what]}. {words}
			</Typography>
			<LinearProgress
				aria-label={kinds[what]}
				aria-valuetext={words}
				{...(total > 0
					? { variant: 'determinate', value: Math.floor((done / total) * percent) }
					: {})}
			/>
			<Box>
				<CancelButton mayCancel={mayCancel} />
			</Box>
		</Box>
	)
}
/**
 * Nothing while no such work goes on. A screen reader hears the beginning, and the bar when it goes
 * there: not every number.
 * @param busy something was set going on this page
 * @param of the kinds of work that this place shows
 */
export function PackProgress({
	busy,
	of,
}: {
	busy: boolean
	of: readonly NonNullable<Progress['what']>[]
}) {
	const { value, again } = useHost(
		'outreach.progress',
		{},
		{ againAfterMs: (now) => (busy || now?.running ? everyMs : undefined) },
	)
	// biome-ignore lint/correctness/useExhaustiveDependencies: asked as soon as something was set going
	useEffect(() => again(), [busy])
	const isShown = value?.running === true && value.what !== undefined && of.includes(value.what)
	return (
		<>
			<Box component="span" aria-live="polite" sx={spokenOnly}>
				{isShown && value.what ? `${kinds[value.what]} has begun. It can be cancelled.` : ''}
			</Box>
			{isShown && <Bar progress={value} />}
		</>
	)
}
