/**
 * One item: its first page beside the recipient's name and the player's birth date, and what can be
 * done next.
 */
import { Alert, Stack } from '@mui/material'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { stateWords } from '../../../shared/desk/outbox/item.ts'
import { Refused } from '../../parts/Answered.tsx'
import { Panel, Rows, timeWords, Way } from '../../parts/panels.tsx'
import { useHost } from '../../query.ts'
import { BesidePage } from './BesidePage.tsx'
import { shownItems } from './filters.ts'
import { Next } from './Next.tsx'
import { useLook } from './useLook.ts'

/** How often an open item is looked at again: it may be sent while it is on screen. */
const lookEveryMs = 3000

interface ItemProps {
	itemId: string
	/** Who works here; undefined while nobody unlocked. */
	personId: string | undefined
}
export function Item({ itemId, personId }: ItemProps) {
	const list = useHost('outbox.list', {}, { againAfterMs: () => lookEveryMs })
	const item = list.value?.items.find((listed) => listed.itemId === itemId)
	const look = useLook(itemId, item?.history.length)
	if (list.value && !item)
		return (
			<Alert severity="warning" role="alert">
				This is not in the outbox any more.
			</Alert>
		)
	if (!item) return <Refused of={list} />
	return (
		<Stack spacing={2}>
			<Refused of={list} />
			<Refused of={look} />
			<BesidePage item={item} look={look.value}>
				<Next
					key={item.state}
					item={item}
					look={look.value}
					lookAgain={look.again}
					mine={item.owner.personId === personId}
				/>
				<OnToNext item={item} items={list.value?.items ?? []} />
			</BesidePage>
			<Happenings item={item} />
		</Stack>
	)
}

/** One after the other: once this is checked, the way to the one that waits longest. */
function OnToNext({ item, items }: { item: OutboxView; items: readonly OutboxView[] }) {
	const waiting = shownItems(items, stateWords['to-check']).filter(
		({ itemId }) => itemId !== item.itemId,
	)
	const [next] = waiting
	if (item.state === 'to-check' || !next) return null
	return (
		<Way to={`#/outbox/item/${next.itemId}`}>
			On to the next to check ({waiting.length} left): {next.playerName}, to {next.recipient.name}
		</Way>
	)
}

function Happenings({ item }: { item: OutboxView }) {
	return (
		<Panel title="What happened">
			<Rows
				label="What happened"
				heads={['When', 'Who', 'State', 'What']}
				empty="Nothing yet."
				rows={item.history.map(({ at, by, state, says }, index) => ({
					key: String(index),
					cells: [timeWords(at), by, stateWords[state], says],
				}))}
			/>
		</Panel>
	)
}
