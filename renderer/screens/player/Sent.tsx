/** What was sent to whom, and how it stands: what needs a person first, then the newest. */

import { Box, Chip, Link, Typography } from '@mui/material'
import { kindWords, stateWords } from '../../../shared/desk/outbox/item.ts'
import type { SummarySent } from '../../../shared/desk/players/summary.ts'
import { dayOfMoment } from '../../parts/dates.ts'
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
const stateOf = ({ state, way }: SummarySent): string =>
	state === 'handed-over' ? handedOver[way] : stateWords[state]
/** Sendings on the first screen; the others are folded. */
const mostShown = 4
const needsAPerson = ({ state }: SummarySent): boolean =>
	state === 'uncertain' || state === 'returned' || state === 'to-check'

function Line({ sending }: { sending: SummarySent }) {
	const tone = tones[sending.state]
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
			<Typography sx={{ flex: '1 1 12rem', overflowWrap: 'anywhere' }}>
				{kindWords[sending.kind]} to {sending.to}
			</Typography>
			<Typography variant="body2" color="textSecondary">
				{dayOfMoment(sending.at)}
			</Typography>
			<Chip size="small" variant="outlined" color={tone ?? 'default'} label={stateOf(sending)} />
		</Box>
	)
}
const plain = { listStyle: 'none', m: 0, p: 0 } as const
const keyOf = ({ itemId, at, to }: SummarySent): string => itemId ?? `${at} ${to}`
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
	const lines = (some: readonly SummarySent[]) => (
		<Box component="ul" sx={plain}>
			{some.map((sending) => (
				<Line key={keyOf(sending)} sending={sending} />
			))}
		</Box>
	)
	return (
		<Panel
			named
			title="Sent"
			beside={
				role !== undefined &&
				may(role).desk &&
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
