/**
 * What was sent or handed over, to whom, when and by whom, and how it ended: what needs a person
 * first, then the newest.
 */

import { Box, Chip, Link, Typography } from '@mui/material'
import { kindWords, roleWords, stateWords } from '../../../shared/desk/outbox/item.ts'
import type { SummarySent } from '../../../shared/desk/players/summary.ts'
import { dayInWords, dayOfMoment } from '../../parts/dates.ts'
import { Empty } from '../../parts/Page.tsx'
import { Panel } from '../../parts/panels.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'

type State = SummarySent['state']
const tones: Readonly<Partial<Record<State, 'warning' | 'error' | 'success'>>> = {
	'to-check': 'warning',
	uncertain: 'error',
	returned: 'error',
	delivered: 'success',
}
const handedOver: Readonly<Record<SummarySent['way'], string>> = {
	smtp: 'Sent by hand',
	eml: 'Sent by hand',
	print: 'Printed',
	export: 'Saved as a copy',
	'hand-over': 'Handed over',
}
function stateOf({ state, way, leftAt }: SummarySent): string {
	if (state === 'handed-over') return handedOver[way]
	if (state === 'not-sent') return 'Withdrawn, not sent'
	return state === 'closed' && leftAt !== undefined ? 'Sent, closed' : stateWords[state]
}
/** What went to the wrong one is never shown as plainly sent. */
function chipOf(sending: SummarySent): string {
	if (!sending.isInError) return stateOf(sending)
	return sending.state === 'sent' ? 'Sent in error' : `${stateOf(sending)}, sent in error`
}
/** Sendings on the first screen; the others are folded. */
const mostShown = 4
const needsAPerson = ({ state, isInError }: SummarySent): boolean =>
	state === 'uncertain' || state === 'returned' || state === 'to-check' || isInError

const wayOf: Readonly<Record<SummarySent['way'], string | undefined>> = {
	smtp: 'by e-mail',
	eml: 'by the mail program',
	print: 'by post',
	'hand-over': 'by hand',
	export: undefined,
}
/** Of which visit, which way, when and by whom, as far as that is known. */
function detailOf(sending: SummarySent): string {
	const { visitDate, leftAt, at, by, state } = sending
	const when = leftAt ? `left ${dayOfMoment(leftAt)}` : `since ${dayOfMoment(at)}`
	return [
		visitDate && `visit of ${dayInWords(visitDate)}`,
		state === 'handed-over' ? undefined : wayOf[sending.way],
		when,
		by && `by ${by}`,
	]
		.filter(Boolean)
		.join(', ')
}
const whom = ({ to, role }: SummarySent): string => (role ? `${to} (${roleWords[role]})` : to)

function Line({ sending, isDesk }: { sending: SummarySent; isDesk: boolean }) {
	const tone = sending.isInError ? 'error' : tones[sending.state]
	const what = `${kindWords[sending.kind]} to ${whom(sending)}`
	return (
		<Box
			component="li"
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				alignItems: 'baseline',
				columnGap: 1,
				py: 0.5,
			}}
		>
			<Box sx={{ flex: '1 1 12rem', overflowWrap: 'anywhere' }}>
				{isDesk && sending.itemId ? (
					<Link
						href={`#/outbox/item/${sending.itemId}`}
						underline="hover"
						sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 24 }}
					>
						{what}
					</Link>
				) : (
					<Typography>{what}</Typography>
				)}
				<Typography variant="body2" color="textSecondary">
					{detailOf(sending)}
				</Typography>
			</Box>
			<Chip size="small" variant="outlined" color={tone ?? 'default'} label={chipOf(sending)} />
		</Box>
	)
}
const plain = { listStyle: 'none', m: 0, p: 0 } as const
const keyOf = ({ itemId, at, to, state }: SummarySent): string =>
	`${itemId ?? ''} ${state} ${at} ${to}`
export function Sent({
	sent,
	role,
	playerId,
	hasVisits,
}: {
	sent: readonly SummarySent[]
	role: PersonRole
	playerId: string
	hasVisits: boolean
}) {
	const ordered = [...sent.filter(needsAPerson), ...sent.filter((one) => !needsAPerson(one))]
	const more = ordered.slice(mostShown)
	const isDesk = role !== undefined && may(role).desk
	const lines = (some: readonly SummarySent[]) => (
		<Box component="ul" sx={plain}>
			{some.map((sending) => (
				<Line key={keyOf(sending)} sending={sending} isDesk={isDesk} />
			))}
		</Box>
	)
	return (
		<Panel
			named
			title="Sent"
			beside={
				isDesk &&
				hasVisits && (
					<Link
						href={`#/outbox/player/${playerId}`}
						sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, fontWeight: 600 }}
					>
						Send, print or hand over
					</Link>
				)
			}
		>
			{ordered.length === 0 && (
				<Empty says="Nothing was sent yet. Each report and letter stands here with whether it arrived." />
			)}
			{lines(ordered.slice(0, mostShown))}
			{more.length > 0 && (
				<Box component="details">
					<Box component="summary" sx={{ minHeight: 44, py: 1.25, cursor: 'pointer' }}>
						{more.length} more
					</Box>
					{lines(more)}
				</Box>
			)}
		</Panel>
	)
}
