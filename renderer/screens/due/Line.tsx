/** One player with all that is due, and the way to answer it. */
import { Box, Button, Checkbox, Chip, Link, Typography } from '@mui/material'
import { useRef, useState } from 'react'
import { stateWords } from '../../../shared/desk/outbox/item.ts'
import type { RecallItem, RecallLine } from '../../../shared/desk/recall/calls.ts'
import { dayInWords, dayOfMoment } from '../../parts/dates.ts'
import { may, type PersonRole } from '../../parts/roles.ts'
import { Answering } from './Answering.tsx'
import { itemName } from './words.ts'

interface LineProps {
	line: RecallLine
	role: PersonRole
	today: string
	isChosen: boolean
	choose: (on: boolean) => void
}
export function Line({ line, role, today, isChosen, choose }: LineProps) {
	const [isOpen, setIsOpen] = useState(false)
	const button = useRef<HTMLButtonElement>(null)
	const close = () => {
		setIsOpen(false)
		button.current?.focus()
	}
	const { desk, treat: treats } = may(role)
	return (
		<Box
			component="li"
			sx={{ borderBottom: 1, borderColor: 'divider', py: 0.75, breakInside: 'avoid' }}
		>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: desk ? 'auto minmax(0, 1fr) auto' : 'minmax(0, 1fr)',
					columnGap: 1.5,
					alignItems: 'start',
					'@media print': { gridTemplateColumns: 'minmax(0, 1fr)' },
				}}
			>
				{desk && (
					<Checkbox
						className="lw-screen-only"
						checked={isChosen}
						onChange={(event) => choose(event.target.checked)}
						slotProps={{ input: { 'aria-label': `Tick ${line.name}` } }}
					/>
				)}
				<Box
					sx={{
						display: 'grid',
						gridTemplateColumns: 'repeat(auto-fit, minmax(min(100%, 17rem), 1fr))',
						columnGap: 2,
						'@media print': { gridTemplateColumns: '2fr 3fr' },
					}}
				>
					<Who line={line} today={today} treats={treats} />
					<Box
						component="ul"
						aria-label={`Due: ${line.name}`}
						sx={{ m: 0, pl: 2.5, py: 1, '@media print': { py: 0 } }}
					>
						{line.items.map((item) => (
							<Item
								key={`${item.kind} ${item.from} ${item.pair ?? ''}`}
								item={item}
								today={today}
							/>
						))}
					</Box>
				</Box>
				{desk && (
					<Button
						ref={button}
						aria-expanded={isOpen}
						aria-label={`Answer for ${line.name}`}
						onClick={() => setIsOpen(!isOpen)}
					>
						Answer
					</Button>
				)}
			</Box>
			{isOpen && <Answering line={line} role={role} close={close} />}
		</Box>
	)
}
interface WhoProps extends Pick<LineProps, 'line' | 'today'> {
	treats: boolean
}
const Who = ({ line, today, treats }: WhoProps) => (
	<Box>
		<Link
			href={`#/players/${line.playerId}`}
			underline="hover"
			sx={{
				display: 'inline-flex',
				alignItems: 'center',
				minHeight: 44,
				fontWeight: 600,
				color: 'text.primary',
				'@media print': { minHeight: 0 },
			}}
		>
			{line.name}
		</Link>
		{treats && line.visitDate && line.visitDate < today && (
			<Link
				className="lw-screen-only"
				href={`#/recheck/${line.playerId}`}
				aria-label={`Re-check ${line.name}`}
				sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, ml: 2 }}
			>
				Re-check
			</Link>
		)}
		<Typography variant="body2" color="textSecondary">
			born {dayInWords(line.birthDate)}
			{line.isMinor ? ', minor' : ''}
			{line.club ? `, ${line.club}` : ''}
		</Typography>
		<Typography variant="body2" color="textSecondary">
			{line.visitDate
				? `seen ${dayInWords(line.visitDate)} by ${line.clinician}`
				: 'no visit signed yet'}
		</Typography>
		{line.reminded && (
			<Typography variant="body2">
				Reminder: {stateWords[line.reminded.state].toLowerCase()}, {dayOfMoment(line.reminded.at)}
			</Typography>
		)}
	</Box>
)
function Item({ item, today }: { item: RecallItem; today: string }) {
	const isLate = item.standing === 'due' && item.day < today
	const { answered } = item
	return (
		<Typography component="li">
			{itemName(item)} by{' '}
			<Box
				component="span"
				sx={
					isLate ? { color: 'error.main', fontWeight: 600 } : { fontVariantNumeric: 'tabular-nums' }
				}
			>
				{dayInWords(item.on)}
				{isLate ? ', overdue' : ''}
			</Box>
			{answered && (
				<>
					{' '}
					<Chip size="small" variant="outlined" label={answered.says} />{' '}
					<Box component="span" sx={{ color: 'text.secondary', fontSize: '0.875rem' }}>
						{answered.by}, {dayOfMoment(answered.at)}
					</Box>
				</>
			)}
		</Typography>
	)
}
