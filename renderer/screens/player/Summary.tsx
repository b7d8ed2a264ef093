/** What stands first on a player's page: what holds now, what is due, what was sent. */
import { Alert, Box, Stack, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { PlanLine, PlayerSummary } from '../../../shared/desk/players/summary.ts'
import { dayInWords, dayOfMoment } from '../../parts/dates.ts'
import { Empty } from '../../parts/Page.tsx'
import { Panel } from '../../parts/panels.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'
import { Course } from './Course.tsx'
import { DetailsShown } from './DetailsShown.tsx'
import { Facts } from './Facts.tsx'
import { Pairs, Sizes } from './Measured.tsx'
import { Sent } from './Sent.tsx'

const lineNames: Readonly<Record<PlanLine['what'], string>> = {
	size: 'Size',
	raise: 'Heel raise',
	'stop-wearing': 'Not to be worn',
	replace: 'Replace',
	insert: 'Insert',
}
/** What danger holds back stands over all else. */
function Held({ held }: { held: readonly string[] }) {
	if (held.length === 0) return null
	return (
		<Box sx={{ borderLeft: 4, borderColor: 'error.main', pl: 1.5, mb: 1 }}>
			<Typography variant="h3" color="error">
				Held
			</Typography>
			{held.map((line) => (
				<Typography key={line}>{line}</Typography>
			))}
		</Box>
	)
}
type Draft = OutputOf<'players.open'>['drafts'][number]
const draftWords = ({ visitDate, savedAt, amends }: Draft): string =>
	`${amends ? 'An amendment' : 'A draft'} of the visit of ${dayInWords(visitDate)} is open, last ` +
	`saved ${dayOfMoment(savedAt)}.`

interface NowProps extends Pick<PlayerSummary, 'plan' | 'troubles'> {
	draft: Draft | undefined
}
function Now({ plan, troubles, draft }: NowProps) {
	return (
		<Panel
			named
			title="Now"
			beside={
				plan && (
					<Typography color="textSecondary">{`Visit of ${dayInWords(plan.visitDate)}`}</Typography>
				)
			}
		>
			{troubles.map((says) => (
				<Alert key={says} severity="warning" role="note" sx={{ mb: 1 }}>
					{says}
				</Alert>
			))}
			{plan ? (
				<>
					<Held held={plan.held} />
					{plan.lines.length > 0 ? (
						<Facts strong facts={plan.lines.map(({ what, says }) => [lineNames[what], says])} />
					) : (
						plan.held.length === 0 && (
							<Empty says="This visit asked for no size, raise, insert or replacement." />
						)
					)}
				</>
			) : (
				<Empty says="No visit is signed yet. Once one is, its size, raise and what to replace stand here." />
			)}
			{draft && <Typography sx={{ mt: 0.5 }}>{draftWords(draft)}</Typography>}
		</Panel>
	)
}
function Due({ due, hasVisits }: { due: PlayerSummary['due']; hasVisits: boolean }) {
	if (!due)
		return (
			<Panel named title="Due">
				<Empty
					says={
						hasVisits
							? 'The last visit set no day for a review.'
							: 'The day of the next review stands here once a visit is signed.'
					}
				/>
			</Panel>
		)
	return (
		<Panel named title="Due">
			<Typography sx={{ fontWeight: 600 }} color={due.isOverdue ? 'warning' : 'textPrimary'}>
				{due.isOverdue ? 'Overdue: review was due by ' : 'Review by '}
				{dayInWords(due.date)}
			</Typography>
			{due.why && <Typography color="textSecondary">Asked for by {due.why}</Typography>}
		</Panel>
	)
}
/** Two columns where the letters leave room for both, one below the other elsewhere. */
function Columns({ left, right }: { left: ReactNode; right: ReactNode }) {
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 4, rowGap: 2 }}>
			<Stack spacing={2} sx={{ flex: '3 1 32rem', minWidth: 0 }}>
				{left}
			</Stack>
			<Stack spacing={2} sx={{ flex: '2 1 22rem', minWidth: 0 }}>
				{right}
			</Stack>
		</Box>
	)
}
interface SummaryProps {
	summary: PlayerSummary
	opened: OutputOf<'players.open'>
	role: PersonRole
	playerId: string
}
export function Summary({ summary, opened, role, playerId }: SummaryProps) {
	const { plan, due, sent, sizes, troubles } = summary
	const hasVisits = opened.visits.some((visit) => !visit.inError)
	const details = <DetailsShown player={opened.player} />
	const desk = (
		<>
			<Due due={due} hasVisits={hasVisits} />
			<Sent sent={sent} role={role} playerId={playerId} hasVisits={hasVisits} />
		</>
	)
	if (role === undefined || !may(role).treat) return <Columns left={details} right={desk} />
	return (
		<Columns
			left={
				<>
					<Now plan={plan} troubles={troubles} draft={opened.drafts[0]} />
					<Pairs pairs={plan?.pairs ?? []} hasVisits={plan !== undefined} />
					<Course playerId={playerId} />
					<Sizes sizes={sizes} />
				</>
			}
			right={
				<>
					{desk}
					{details}
				</>
			}
		/>
	)
}
