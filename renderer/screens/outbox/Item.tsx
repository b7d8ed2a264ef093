/**
 * One item: its first page beside the recipient's name and the player's birth date, and what can be
 * done next.
 */
import { Alert, Box, Stack } from '@mui/material'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { kindWords, stateWords } from '../../../shared/desk/outbox/item.ts'
import { call } from '../../host.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { Panel, Rows, timeWords, Way } from '../../parts/panels.tsx'
import { useFileUrl } from '../../parts/useFileUrl.ts'
import { useHost, useReading } from '../../query.ts'
import { shownItems } from './filters.ts'
import { ItemFacts } from './ItemFacts.tsx'
import { Next } from './Next.tsx'

/** How often an open item is looked at again: it may be sent while it is on screen. */
const lookEveryMs = 3000

/**
 * The first page with the consents and warnings of now: asked anew each time something happened to
 * the item, for which the number of happenings stands.
 */
const useLook = (itemId: string, happenings: number | undefined) =>
	useReading(
		'first page of an item',
		{ itemId, happenings },
		[],
		() => call('outbox.look', { itemId }),
		{ when: happenings !== undefined, keepLast: true },
	)

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
			<Box
				sx={{
					display: 'grid',
					gap: 2,
					gridTemplateColumns: { xs: '1fr', md: 'minmax(0, 3fr) minmax(320px, 2fr)' },
					alignItems: 'start',
				}}
			>
				<FirstPage item={item} base64={look.value?.base64} />
				<Stack spacing={2}>
					<ItemFacts item={item} look={look.value} />
					<Next
						key={item.state}
						item={item}
						look={look.value}
						mine={item.owner.personId === personId}
					/>
					<OnToNext item={item} items={list.value?.items ?? []} />
				</Stack>
			</Box>
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

interface FirstPageProps {
	item: OutboxView
	base64: string | undefined
}
function FirstPage({ item, base64 }: FirstPageProps) {
	const url = useFileUrl(base64)
	const title = `First page of ${item.number}`
	return (
		<Panel
			title={title}
			hint={
				`${kindWords[item.kind]}, version ${item.version}, visit of ` +
				`${dayInWords(item.visitDate)}. These are the stored bytes.`
			}
		>
			{url && (
				<Box
					component="iframe"
					key={url}
					title={title}
					src={`${url}#page=1&toolbar=0&navpanes=0&view=FitH`}
					sx={{
						display: 'block',
						width: '100%',
						height: { xs: '60vh', md: '78vh' },
						border: 0,
						bgcolor: '#fff',
					}}
				/>
			)}
		</Panel>
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
