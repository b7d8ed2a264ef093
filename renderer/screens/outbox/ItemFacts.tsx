/** Recipient and player of an item in large type, and what must be known before it leaves. */
import { Alert, Box, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { channelWords, isMail, roleWords } from '../../../shared/desk/outbox/item.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Panel } from '../../parts/panels.tsx'
import { StateChip } from './StateChip.tsx'

interface ItemFactsProps {
	item: OutboxView
	/** Undefined until the first page is opened. */
	look: OutputOf<'outbox.look'> | undefined
}
/** How the copy opens: only what goes by mail is a file that can be locked. */
function copyWords({ protection, channel }: OutboxView): string {
	if (protection === 'password') return ', copy opens by a password'
	return isMail(channel) ? ', copy opens without a password' : ''
}

export function ItemFacts({ item, look }: ItemFactsProps) {
	const { recipient, channel, owner } = item
	return (
		<Panel title="Recipient and player">
			<Box component="dl" sx={{ display: 'grid', gap: 1.5, m: 0 }}>
				<Fact name="Recipient" large>
					{recipient.name}
				</Fact>
				<Fact name="As">
					{roleWords[recipient.role]}
					{recipient.email && isMail(channel) ? `, ${recipient.email}` : ''}
				</Fact>
				<Fact name="Player" large>
					{item.playerName}
				</Fact>
				<Fact name="Birth date" large>
					{dayInWords(item.birthDate)}
				</Fact>
				<Fact name="Way">
					{channelWords[channel]}
					{copyWords(item)}
				</Fact>
				<Fact name="State">
					<StateChip item={item} />
				</Fact>
				<Fact name="Owner, due">
					{owner.name}, {dayInWords(item.due)}
					{item.overdue ? ' (overdue)' : ''}
				</Fact>
			</Box>
			{item.newerVersion && (
				<Alert severity="warning" role="status">
					Version {item.newerVersion} of this visit is newer than the one here.
				</Alert>
			)}
			{look && <Told look={look} />}
		</Panel>
	)
}

function Told({ look }: { look: OutputOf<'outbox.look'> }) {
	const rows = [
		...look.missing.map((says) => ({ says, severity: 'error' as const })),
		...look.consents.map((says) => ({ says, severity: 'info' as const })),
		...look.warnings.map((says) => ({ says, severity: 'warning' as const })),
	]
	return (
		<>
			{look.blocked && (
				<Alert severity="error" role="alert">
					{look.blocked}
				</Alert>
			)}
			{rows.map(({ says, severity }) => (
				<Alert key={`${severity} ${says}`} severity={severity}>
					{says}
				</Alert>
			))}
		</>
	)
}

interface FactProps {
	name: string
	children: ReactNode
	large?: boolean
}
function Fact({ name, children, large = false }: FactProps) {
	return (
		<Box>
			<Typography component="dt" variant="body2" color="textSecondary">
				{name}
			</Typography>
			<Typography
				component="dd"
				sx={{
					m: 0,
					fontWeight: large ? 700 : 400,
					fontSize: large ? '1.35rem' : '1rem',
					overflowWrap: 'anywhere',
				}}
			>
				{children}
			</Typography>
		</Box>
	)
}
