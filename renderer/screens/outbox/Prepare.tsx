/** Choosing a player, a signed visit, a document and a recipient from the record. */

import { Box, Link, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayInWords, dayOfMoment } from '../../parts/dates.ts'
import { Field } from '../../parts/form.tsx'
import { Panel, Rows, Way } from '../../parts/panels.tsx'
import { useHost } from '../../query.ts'
import { Notes } from './Notes.tsx'
import { PutIntoOutbox } from './PutIntoOutbox.tsx'

/** Players shown at most. */
const mostShown = 12

interface PrepareProps {
	/** Undefined: the player is still to be chosen. */
	playerId: string | undefined
	mailSet: boolean
}
export function Prepare({ playerId, mailSet }: PrepareProps) {
	return playerId ? <OfPlayer playerId={playerId} mailSet={mailSet} /> : <FindPlayer />
}

function FindPlayer() {
	const [query, setQuery] = useState('')
	const found = useHost('players.search', { query, limit: mostShown }, { keepLast: true })
	return (
		<Panel title="Which player?">
			<Refused of={found} />
			<Box sx={{ maxWidth: 420 }}>
				<Field label="Search by name or birth date" value={query} set={setQuery} optional focus />
			</Box>
			{found.value && <Found {...found.value} query={query} />}
		</Panel>
	)
}
function Found({ cards, total, query }: OutputOf<'players.search'> & { query: string }) {
	return (
		<>
			<Box component="ul" sx={{ listStyle: 'none', m: 0, p: 0 }}>
				{cards.map((card) => (
					<Box component="li" key={card.playerId}>
						<Link
							href={`#/outbox/player/${card.playerId}`}
							sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, gap: 1 }}
						>
							{fullName(card)}, born {dayInWords(card.birthDate)}
						</Link>
					</Box>
				))}
			</Box>
			{total === 0 && (
				<Typography color="textSecondary">
					{query.trim() ? 'Nobody found. Type less of the name.' : 'No player on record yet.'}
				</Typography>
			)}
			{total > cards.length && (
				<Typography color="textSecondary">
					{total - cards.length} more: type more of the name.
				</Typography>
			)}
		</>
	)
}

type SignedVisit = OutputOf<'players.open'>['visits'][number]
const visitWords = ({ visitDate, signedAt }: SignedVisit): string =>
	`Visit of ${dayInWords(visitDate)}, signed ${dayOfMoment(signedAt)}`

function OfPlayer({ playerId, mailSet }: { playerId: string; mailSet: boolean }) {
	const opened = useHost('players.open', { playerId })
	const [visitId, setVisitId] = useState('')
	const visits = opened.value?.visits.filter((visit) => !visit.inError) ?? []
	const chosen = visits.find((visit) => visit.visitId === visitId) ?? visits[0]
	const choose = (words: string) =>
		setVisitId(visits.find((visit) => visitWords(visit) === words)?.visitId ?? '')
	return (
		<Stack spacing={2}>
			<Refused of={opened} />
			<Panel title={opened.value ? whoOf(opened.value.player) : 'Opening'}>
				<Box>
					<Way to="#/outbox/prepare">Another player</Way>
					<Way to={`#/consents/${playerId}`}>Consents of this player</Way>
				</Box>
				{opened.value && visits.length === 0 && (
					<Typography color="textSecondary">
						No visit of this player is signed yet. A document can be prepared once a clinician has
						signed one.
					</Typography>
				)}
				{chosen && (
					<Box sx={{ maxWidth: 520 }}>
						<Field
							label="Visit"
							value={visitWords(chosen)}
							set={choose}
							options={visits.map(visitWords)}
						/>
					</Box>
				)}
			</Panel>
			<Tell playerId={playerId} />
			{opened.value && <Notes playerId={playerId} />}
			{chosen && <PutIntoOutbox key={chosen.visitId} visitId={chosen.visitId} mailSet={mailSet} />}
		</Stack>
	)
}
const whoOf = (player: OutputOf<'players.open'>['player']): string =>
	`${fullName(player)}, born ${dayInWords(player.birthDate)}`

const handedWords: Record<string, string> = {
	print: 'on paper',
	export: 'as a file',
	send: 'by e-mail',
	'by-hand': 'by hand',
}
/** Who holds an earlier version of a visit and was not given the latest. */
function Tell({ playerId }: { playerId: string }) {
	const { value, ...answer } = useHost('outbox.tell', { playerId })
	if (!value || value.tell.length === 0) return <Refused of={{ value, ...answer }} />
	return (
		<Panel
			title="Who must be told"
			hint={
				'They hold an earlier version of a visit that was amended since. Send each the newer ' +
				'one: open what was sent, or prepare it below.'
			}
		>
			<Rows
				label="Who must be told"
				heads={['Recipient', 'Visit', 'Holds', 'Now', 'Given', 'Way']}
				empty=""
				rows={value.tell.map((holder) => ({
					key: `${holder.visitId} ${holder.recipient}`,
					cells: [
						holder.recipient,
						dayInWords(holder.visitDate),
						`version ${holder.version}`,
						`version ${holder.latest}`,
						dayOfMoment(holder.at),
						handedWords[holder.channel] ?? holder.channel,
					],
				}))}
			/>
		</Panel>
	)
}
