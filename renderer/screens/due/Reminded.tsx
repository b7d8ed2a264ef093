/** What became of reminders: what stands in the outbox, and who is left for a letter or a call. */
import { Box, Button, Link, Typography } from '@mui/material'
import { roleWords } from '../../../shared/desk/outbox/item.ts'
import type { Reminded } from '../../../shared/desk/recall/calls.ts'
import { Panel } from '../../parts/panels.tsx'

interface RemindedListsProps {
	/** empty where none was asked for */
	reminded: readonly Reminded[]
	busy: boolean
	byLetter: (playerIds: readonly string[]) => void
}
export function RemindedLists({ reminded, busy, byLetter }: RemindedListsProps) {
	const of = (list: Reminded['list']) => reminded.filter((line) => line.list === list)
	const [made, letter, telephone, nothing] = [
		of('made'),
		of('by-letter'),
		of('by-telephone'),
		of('nothing'),
	]
	if (reminded.length === 0) return null
	return (
		<Panel title="Reminders" named>
			{made.length > 0 && (
				<Typography role="status">
					{made.length === 1
						? 'One reminder stands in the outbox to be checked: '
						: `${made.length} reminders stand in the outbox to be checked: `}
					{made.map(({ name, to }) => (to === name ? name : `${to}, for ${name}`)).join('; ')}.{' '}
					<Link href="#/outbox" sx={{ fontWeight: 600 }}>
						Open the outbox
					</Link>
				</Typography>
			)}
			<Left title="By letter" lines={letter}>
				<Button
					variant="outlined"
					disabled={busy}
					onClick={() => byLetter(letter.map(({ playerId }) => playerId))}
				>
					{letter.length === 1 ? 'Make the letter' : `Make ${letter.length} letters`}
				</Button>
			</Left>
			<Left title="By telephone" lines={telephone} withPhones />
			<Left title="Nobody is asked" lines={nothing} />
		</Panel>
	)
}
interface LeftProps {
	title: string
	lines: readonly Reminded[]
	withPhones?: boolean
	children?: React.ReactNode
}
function Left({ title, lines, withPhones = false, children }: LeftProps) {
	if (lines.length === 0) return null
	return (
		<Box
			component="section"
			aria-label={title}
			sx={{ display: 'grid', gap: 0.5, justifyItems: 'start' }}
		>
			<Typography variant="h3">{title}</Typography>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{lines.map((line) => (
					<li key={line.playerId}>
						<strong>
							{line.to && line.to !== line.name ? `${line.to}, for ${line.name}` : line.name}
						</strong>
						{withPhones ? `: ${phoneWords(line)}. ` : '. '}
						{line.says}
					</li>
				))}
			</Box>
			{children}
		</Box>
	)
}
const phoneWords = ({ phones }: Reminded): string =>
	phones.length === 0
		? 'no telephone number on record'
		: phones.map(({ name, role, phone }) => `${phone} (${name}, ${roleWords[role]})`).join('; ')
