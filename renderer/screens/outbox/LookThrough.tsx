/** One after another: each first page beside its recipient, found right or left, then the next. */
import { Alert, Box, Button, Stack, type Theme, Typography, useMediaQuery } from '@mui/material'
import { useEffect, useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { Refused } from '../../parts/Answered.tsx'
import { Outcome } from '../../parts/form.tsx'
import { counted } from '../../parts/Needs.tsx'
import { Panel, Way } from '../../parts/panels.tsx'
import { change, type HostAction, type HostAnswer, useHostAction } from '../../query.ts'
import { BesidePage } from './BesidePage.tsx'
import { ManyDone, useMany } from './ManyDone.tsx'
import { Tick } from './Release.tsx'
import { lookAgainIfWarned, useLook } from './useLook.ts'

interface LookThroughProps {
	/** those that were chosen in the queue, in its order */
	itemIds: readonly string[]
	list: HostAnswer<OutputOf<'outbox.list'>>
	/** told once they are released: none is chosen any more */
	released: () => void
}
export function LookThrough({ itemIds, list, released }: LookThroughProps) {
	const [at, setAt] = useState(0)
	const items = list.value?.items ?? []
	const item = items.find(({ itemId }) => itemId === itemIds[at])
	if (itemIds.length === 0)
		return (
			<Panel title="Look through">
				<Typography color="textSecondary">
					Choose documents in the queue first: they are then shown here one after another.
				</Typography>
				<Way to="#/outbox">Back to the queue</Way>
			</Panel>
		)
	if (at >= itemIds.length)
		return (
			<Through items={items.filter(({ itemId }) => itemIds.includes(itemId))} released={released} />
		)
	const onward = () => setAt((now) => now + 1)
	return (
		<Stack spacing={2}>
			<Place key={at} at={at} of={itemIds.length} />
			{item ? (
				<OneOf key={item.itemId} item={item} onward={onward} isLast={at + 1 === itemIds.length} />
			) : (
				<Alert severity="warning">
					This one is not in the outbox any more.{' '}
					<Button size="small" onClick={onward}>
						On to the next
					</Button>
				</Alert>
			)}
		</Stack>
	)
}

/** Page and recipient stand beside one another; below it, one under the other. */
const useIsWide = () => useMediaQuery((theme: Theme) => theme.breakpoints.up('md'))

/** Where the page stands above what is done next, each one begins at its top. */
function Place({ at, of }: { at: number; of: number }) {
	const isWide = useIsWide()
	const head = useRef<HTMLHeadingElement>(null)
	useEffect(() => {
		if (!isWide) head.current?.focus()
	}, [isWide])
	return (
		<Box>
			<Typography ref={head} variant="h2" tabIndex={-1} aria-live="polite">
				Look through: {at + 1} of {of}
			</Typography>
		</Box>
	)
}

interface OneOfProps {
	item: OutboxView
	onward: () => void
	isLast: boolean
}
function OneOf({ item, onward, isLast }: OneOfProps) {
	const look = useLook(item.itemId, item.history.length)
	const action = useHostAction()
	return (
		<>
			<Refused of={look} />
			<BesidePage item={item} look={look.value}>
				<Found
					// another warning is ticked anew
					key={look.value?.warnings.join('\n')}
					item={item}
					look={look.value}
					again={look.again}
					isShown={look.value !== undefined || look.says !== ''}
					to={isLast ? 'to the end' : 'on to the next'}
					action={action}
					onward={onward}
				/>
			</BesidePage>
		</>
	)
}

interface FoundProps {
	item: OutboxView
	look: OutputOf<'outbox.look'> | undefined
	/** asks for the page and its warnings anew */
	again: () => void
	/** the page stands there, or why it does not */
	isShown: boolean
	/** where the next key leads, in words */
	to: string
	action: HostAction
	onward: () => void
}
function Found({ item, look, again, isShown, to, action, onward }: FoundProps) {
	const [read, setRead] = useState(false)
	const acts = useRef<HTMLDivElement>(null)
	const isWide = useIsWide()
	const isWaiting = item.state === 'to-check' && look !== undefined
	const warned = isWaiting && look.warnings.length > 0
	// the key that leads on is at hand once the page stands there, and the warnings come before it
	useEffect(() => {
		if (!isShown || !isWide) return
		acts.current?.querySelector<HTMLElement>('input, button:enabled')?.focus()
		acts.current?.scrollIntoView({ block: 'nearest' })
	}, [isShown, isWide])
	const right = () =>
		action.run(async () => {
			const { itemId, sha256 } = item
			await lookAgainIfWarned(async () => {
				await change('outbox.compared', { itemId, sha256, warningsRead: read })
			}, again)
			onward()
			return ''
		})
	return (
		<Panel title="Next">
			<Outcome of={action} />
			<Box ref={acts} sx={{ display: 'grid', gap: 1, justifyItems: 'start' }}>
				{warned && (
					<Tick
						label="I read the warnings above and checked what they say"
						on={read}
						set={setRead}
					/>
				)}
				{isWaiting && (
					<Typography>
						Are name and birth date on the first page this player's, and is the recipient right?
					</Typography>
				)}
				<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
					{isWaiting && (
						<Button variant="contained" disabled={action.busy || (warned && !read)} onClick={right}>
							Right: {to}
						</Button>
					)}
					<Button
						variant={isWaiting ? 'outlined' : 'contained'}
						disabled={action.busy || !isShown}
						onClick={onward}
					>
						{item.state === 'to-check' ? `Leave it: ${to}` : `Seen: ${to}`}
					</Button>
				</Box>
				<Typography variant="body2" color="textSecondary">
					{isWide && 'Enter presses the marked button. '}
					Nothing leaves before it is released at the end.
				</Typography>
			</Box>
		</Panel>
	)
}

interface ThroughProps extends Pick<LookThroughProps, 'released'> {
	items: readonly OutboxView[]
}
/** What was found right is released in one step; what was left stays to be checked. */
function Through({ items, released }: ThroughProps) {
	const many = useMany()
	const head = useRef<HTMLDivElement>(null)
	useEffect(() => {
		head.current?.querySelector<HTMLElement>('button:enabled, a')?.focus()
	}, [])
	const right = items.filter(({ compared }) => compared)
	const left = items.filter(({ state, compared }) => state === 'to-check' && !compared)
	const went = many.lines.length > 0
	return (
		<Panel title="Looked through">
			{!went && (
				<Typography>
					{counted(right.length, 'document')} found right, {left.length} left to be checked.
				</Typography>
			)}
			<ManyDone of={many} items={items} />
			<Box ref={head} sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
				{right.length > 0 && (
					<Button
						variant="contained"
						disabled={many.action.busy}
						onClick={() => many.run('release', right, '', released)}
					>
						Release {counted(right.length, 'document')}
					</Button>
				)}
				<Way to="#/outbox">Back to the queue</Way>
			</Box>
		</Panel>
	)
}
