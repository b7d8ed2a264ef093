/** What stands first in the morning, beside the players: referrals, the outbox, who is due. */
import { Box, Link, Typography } from '@mui/material'
import { Fragment, type ReactNode } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { unsentDays } from '../../../shared/desk/outbox/many.ts'
import type { RecallLine } from '../../../shared/desk/recall/calls.ts'
import { dueWords } from '../../../shared/desk/recall/item.ts'
import { addDays } from '../../../shared/engine/plain/days.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayInWords, today } from '../../parts/dates.ts'
import { may, type PersonRole } from '../../parts/roles.ts'
import { type HostAnswer, useHost } from '../../query.ts'
import { waitingCounts } from '../outbox/filters.ts'

/** Lines that are shown; the rest stand on the page of the room. */
const mostLines = 5

const isAnswered = ({ value, says }: HostAnswer<unknown>): boolean =>
	value !== undefined || says !== ''

export function Morning({ role }: { role: PersonRole }) {
	const { desk, treat } = may(role)
	const due = useHost('recall.list', { limit: mostLines })
	const outbox = useHost('outbox.list', {}, { when: desk })
	const unsent = useHost(
		'outbox.unsent',
		{ from: addDays(today(), -unsentDays), limit: 0 },
		{ when: desk },
	)
	const referrals = useHost('recall.referrals', {}, { when: treat })
	// all of it at once: nothing that stands here is pushed down by what comes later
	const isKnown =
		isAnswered(due) &&
		(!desk || (isAnswered(outbox) && isAnswered(unsent))) &&
		(!treat || isAnswered(referrals))
	if (!isKnown)
		return (
			<Box component="aside" aria-label="This morning" className="lw-screen-only">
				<Typography role="status">Looking.</Typography>
			</Box>
		)
	return (
		<Box
			component="aside"
			aria-label="This morning"
			className="lw-screen-only"
			sx={{ display: 'grid', gap: 2, alignContent: 'start' }}
		>
			<Refused of={referrals} />
			{referrals.value && <NotHeard answer={referrals.value} />}
			{!treat && due.value && due.value.followUps > 0 && (
				<Typography>
					The clinician has referrals to follow up: <strong>{due.value.followUps}</strong>
				</Typography>
			)}
			{desk && (
				<Part title="To send" to="#/outbox" way="Outbox">
					<Refused of={outbox} />
					{outbox.value && <Waiting items={outbox.value.items} />}
					<Refused of={unsent} />
					{unsent.value && unsent.value.more > 0 && (
						<Link
							href="#/outbox/unsent"
							underline="hover"
							sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44 }}
						>
							Signed, and nobody was given anything: {unsent.value.more}
						</Link>
					)}
				</Part>
			)}
			<Part title="Due to be seen" to="#/due" way="All that are due">
				<Refused of={due} />
				{due.value && <DueFirst answer={due.value} />}
			</Part>
		</Box>
	)
}
interface PartProps {
	title: string
	to: string
	way: string
	children: ReactNode
}
const Part = ({ title, to, way, children }: PartProps) => (
	<Box
		component="section"
		aria-label={title}
		sx={{ borderTop: 1, borderColor: 'divider', pt: 1, display: 'grid', gap: 0.5 }}
	>
		<Box sx={{ display: 'flex', justifyContent: 'space-between', alignItems: 'center', gap: 1 }}>
			<Typography variant="h2">{title}</Typography>
			<Link
				href={to}
				underline="hover"
				sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, fontWeight: 600 }}
			>
				{way}
			</Link>
		</Box>
		{children}
	</Box>
)
/** Never silent while one stands: it goes away by a written outcome alone. */
function NotHeard({ answer: { referrals } }: { answer: OutputOf<'recall.referrals'> }) {
	if (referrals.length === 0) return null
	return (
		<Box
			component="section"
			aria-label="Referrals not heard from"
			sx={{ borderLeft: 4, borderColor: 'error.main', pl: 1.5, display: 'grid', gap: 0.5 }}
		>
			<Typography variant="h2">Referrals not heard from</Typography>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{referrals.slice(0, mostLines).map(({ playerId, name, asked, since }) => (
					<Typography key={playerId} component="li">
						{`${name}: ${asked.toLowerCase()}, ${dayInWords(since)}`}
					</Typography>
				))}
			</Box>
			<Link
				href="#/due/referrals"
				underline="hover"
				sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, fontWeight: 600 }}
			>
				{referrals.length === 1 ? 'Follow it up' : `Follow up all ${referrals.length}`}
			</Link>
		</Box>
	)
}
function Waiting({ items }: { items: OutputOf<'outbox.list'>['items'] }) {
	const counts = waitingCounts(items)
	if (counts.length === 0)
		return (
			<Typography color="textSecondary">
				Nothing waits: nothing to check, nothing returned.
			</Typography>
		)
	return (
		<Typography>
			{counts.map(({ words, count, wrong }, index) => (
				<Fragment key={words}>
					{index === 0 ? '' : ', '}
					<Box component="span" sx={wrong ? { color: 'error.main', fontWeight: 600 } : {}}>
						{count} {words}
					</Box>
				</Fragment>
			))}
		</Typography>
	)
}
const lineWords = ({ name, items, day }: RecallLine): string => {
	const first = items.find((item) => item.day === day && item.standing !== 'ended')
	const what = first ? dueWords[first.kind].toLowerCase() : ''
	return `${name}: ${first?.standing === 'booked' ? 'booked, ' : ''}${what}, ${dayInWords(day)}`
}
function DueFirst({ answer: { counts, lines } }: { answer: OutputOf<'recall.list'> }) {
	if (lines.length === 0)
		return (
			<Typography color="textSecondary">
				Nobody is due. Whom a signed visit asks to see again stands here.
			</Typography>
		)
	return (
		<>
			<Typography>
				<Box
					component="span"
					sx={counts.overdue > 0 ? { color: 'error.main', fontWeight: 600 } : {}}
				>
					{counts.overdue} overdue
				</Box>
				, {counts.thisWeek} this week
			</Typography>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{lines.map((line) => (
					<Typography key={line.playerId} component="li">
						{lineWords(line)}
					</Typography>
				))}
			</Box>
		</>
	)
}
