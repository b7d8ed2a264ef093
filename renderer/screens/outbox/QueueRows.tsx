/** The rows of the queue. */
import { Box, Button, Checkbox, Link, Typography } from '@mui/material'
import { navigate } from 'wouter/use-hash-location'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { channelWords, kindWords, type OutboxState } from '../../../shared/desk/outbox/item.ts'
import { dayInWords } from '../../parts/dates.ts'
import { counted } from '../../parts/Needs.tsx'
import { Empty } from '../../parts/Page.tsx'
import { Rows, ticks, timeWords } from '../../parts/panels.tsx'
import { type Choice, pressed } from './choosing.ts'
import { firstFilter } from './filters.ts'
import { StateChip } from './StateChip.tsx'

const heads = [
	ticks,
	'Number',
	'Player',
	'Document',
	'Recipient',
	'Way',
	'State',
	'Owner',
	'Due',
	'Age',
]
interface QueueRowsProps {
	items: readonly OutboxView[]
	/** the title of the part of the queue that is shown */
	filter: string
	/** words are looked for */
	isFound: boolean
	choice: Choice
	choose: (choice: Choice) => void
}
export function QueueRows({ items, filter, isFound, choice, choose }: QueueRowsProps) {
	const shown = items.map(({ itemId }) => itemId)
	const press = (id: string, isRange: boolean) => choose(pressed(choice, shown, { id, isRange }))
	return (
		<Rows
			label="Outbox"
			empty={
				isFound ? (
					`Nothing here fits what is looked for. Type less of it, or choose another part.`
				) : filter === '' || filter === firstFilter ? (
					<NothingYet />
				) : (
					`Nothing here is ${filter.toLowerCase()}. Choose ${firstFilter} to see the rest.`
				)
			}
			figures={['Age']}
			heads={heads}
			rows={items.map((item) => ({
				key: item.itemId,
				cells: [
					<ChosenTick
						key="chosen"
						item={item}
						on={choice.ids.has(item.itemId)}
						press={(isRange) => press(item.itemId, isRange)}
					/>,
					<Open key="open" item={item} />,
					<Player key="player" item={item} />,
					<Document key="kind" item={item} />,
					item.recipient.name,
					channelWords[item.channel],
					<State key="state" item={item} />,
					item.owner.name,
					<Due key="due" item={item} />,
					<Typography key="age" variant="body2" noWrap>
						{counted(item.ageDays, 'day')}
					</Typography>,
				],
			}))}
		/>
	)
}
const NothingYet = () => (
	<Empty
		says="No document is on its way. Prepare one from a signed visit: it is checked here before it leaves."
		act={
			<Button variant="contained" onClick={() => navigate('/outbox/prepare')}>
				Prepare a document
			</Button>
		}
	/>
)
interface OfItem {
	item: OutboxView
}
interface ChosenTickProps extends OfItem {
	on: boolean
	/** with Shift: all from the row pressed before */
	press: (isRange: boolean) => void
}
function ChosenTick({ item, on, press }: ChosenTickProps) {
	return (
		<Checkbox
			checked={on}
			onChange={({ nativeEvent }) =>
				press(nativeEvent instanceof MouseEvent && nativeEvent.shiftKey)
			}
			slotProps={{ input: { 'aria-label': `Choose ${item.number}, ${item.playerName}` } }}
		/>
	)
}
function Open({ item }: OfItem) {
	return (
		<Link
			href={`#/outbox/item/${item.itemId}`}
			sx={{
				display: 'inline-flex',
				alignItems: 'center',
				minHeight: 44,
				fontWeight: 600,
				whiteSpace: 'nowrap',
			}}
		>
			{item.number}
		</Link>
	)
}
function Player({ item }: OfItem) {
	return (
		<Box sx={{ minWidth: '11rem' }}>
			<Typography variant="body2">{item.playerName}</Typography>
			<Typography variant="body2" color="textSecondary">
				born {dayInWords(item.birthDate)}
			</Typography>
		</Box>
	)
}
function Document({ item }: OfItem) {
	return (
		<Box>
			<Typography variant="body2">{kindWords[item.kind]}</Typography>
			{item.newerVersion && (
				<Typography variant="body2" color="error">
					version {item.version}; version {item.newerVersion} is newer
				</Typography>
			)}
		</Box>
	)
}
/** States in which something went otherwise than meant, and the row says how. */
const untold: readonly OutboxState[] = ['uncertain', 'returned']
/** The state; where it waits or came back, why, and when it is tried next. */
function State({ item }: OfItem) {
	const tells = untold.includes(item.state) || (item.state === 'ready' && item.attempts > 0)
	const last = item.history.at(-1)
	return (
		<Box sx={{ minWidth: tells ? '14rem' : undefined }}>
			<StateChip item={item} />
			{item.compared && (
				<Typography variant="body2" color="textSecondary">
					compared, not released
				</Typography>
			)}
			{tells && last && <Typography variant="body2">{last.says}</Typography>}
			{item.state === 'ready' && item.notBefore && (
				<Typography variant="body2" color="textSecondary">
					Next try {timeWords(item.notBefore)}
				</Typography>
			)}
		</Box>
	)
}
function Due({ item }: OfItem) {
	return (
		<Typography
			variant="body2"
			{...(item.overdue ? { color: 'error', sx: { fontWeight: 600 } } : {})}
		>
			{dayInWords(item.due)}
			{item.overdue ? ', overdue' : ''}
		</Typography>
	)
}
