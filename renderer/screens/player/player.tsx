/** One player: the summary first, the details on demand, earlier visits, the ways on. */

import { Alert, Box, Button } from '@mui/material'
import { useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { PlayerSummary } from '../../../shared/desk/players/summary.ts'
import { Answered } from '../../parts/Answered.tsx'
import { today } from '../../parts/dates.ts'
import { goTo } from '../../parts/goTo.ts'
import { may, type PersonRole } from '../../parts/roles.ts'
import { type HostAnswer, useHost, useReading } from '../../query.ts'
import { DetailsForm } from './DetailsForm.tsx'
import { type Form, titleOf } from './details.ts'
import { typedBefore } from './keeping.ts'
import type { SavedNotice } from './notice.ts'
import { PlayerHead } from './PlayerHead.tsx'
import { SavedWords } from './SavedWords.tsx'
import { Summary } from './Summary.tsx'
import { usePlayerForm } from './usePlayerForm.ts'
import { Visits } from './Visits.tsx'

interface PlayerProps {
	/** who works here: reception keeps the details, others assess too */
	role: PersonRole
	personId: string | undefined
	notice: SavedNotice | undefined
	saved: (notice: SavedNotice) => void
}
interface Known {
	playerId: string
	opened: OutputOf<'players.open'>
	summary: HostAnswer<PlayerSummary>
}
interface Before {
	typed?: Form
	at?: string
}
interface PageProps extends PlayerProps {
	/** undefined for a new player */
	known: Known | undefined
	/** what was typed before and not saved */
	before: Before
}
const nothing: Form = {}
/** What was typed stands nowhere on the page while its form is closed. */
function TypedElsewhere({ typed, open }: { typed: Form; open: () => void }) {
	return (
		<Alert
			severity="warning"
			role="note"
			action={
				<Button color="inherit" onClick={open} sx={{ whiteSpace: 'nowrap' }}>
					Go on with it
				</Button>
			}
		>
			Details typed and not saved yet: {Object.keys(typed).map(titleOf).join(', ')}.
		</Alert>
	)
}
/** Saved a moment ago, like nobody on record, and never assessed. */
const isAdded = (known: Known | undefined, notice: SavedNotice | undefined): boolean =>
	known !== undefined &&
	notice?.playerId === known.playerId &&
	notice.similar.length === 0 &&
	known.opened.visits.length + known.opened.drafts.length === 0
/** A visit stands to look back to, and no draft is open. */
const mayRecheck = (known: Known | undefined): boolean =>
	known !== undefined &&
	known.opened.drafts.length === 0 &&
	known.opened.visits.some(({ inError, visitDate }) => !inError && visitDate < today())
/** Whether the form stands open, and whether a person opened it. */
type Editing = 'no' | 'opened' | 'found'
function firstEditing(known: Known | undefined, before: Before): Editing {
	if (!known) return 'opened'
	return before.typed ? 'found' : 'no'
}
function PlayerPage({ known, before, role, personId, notice, saved }: PageProps) {
	const of = { personId, playerId: known?.playerId }
	const typed = usePlayerForm(of, known?.opened.player, before.typed ?? nothing, saved)
	const [editing, setEditing] = useState(firstEditing(known, before))
	const editButton = useRef<HTMLButtonElement>(null)
	const close = () => {
		setEditing('no')
		editButton.current?.focus()
	}
	const save = async (): Promise<boolean> => {
		const isSaved = await typed.save()
		if (isSaved && known) close()
		return isSaved
	}
	const begin = async (what: 'assessment' | 'recheck') => {
		if (typed.edited && !(await save())) setEditing('opened')
		else goTo(`/${what}/${known?.playerId}`)
	}
	return (
		<PlayerHead
			known={known && { ...known, ...known.opened, draft: known.opened.drafts[0] }}
			isAdded={isAdded(known, notice)}
			treats={role !== undefined && may(role).treat}
			busy={typed.busy}
			isEditing={editing !== 'no'}
			editButton={editButton}
			edit={() => setEditing(editing === 'no' ? 'opened' : 'no')}
			assess={() => void begin('assessment')}
			recheck={mayRecheck(known) ? () => void begin('recheck') : undefined}
		>
			{notice && <SavedWords notice={notice} edited={typed.edited} />}
			{editing === 'no' && typed.edited && (
				<TypedElsewhere typed={typed.typed} open={() => setEditing('opened')} />
			)}
			{editing !== 'no' && (
				<Box sx={{ maxWidth: known ? undefined : 900 }}>
					<DetailsForm
						typed={typed}
						isNew={!known}
						takesFocus={editing === 'opened'}
						since={before.typed === typed.typed ? before.at : undefined}
						save={() => void save()}
						{...(known && { close })}
					/>
				</Box>
			)}
			{known && <Told known={known} role={role} />}
		</PlayerHead>
	)
}
/** The summary, then the visits: they stand where they stay, once it is there. */
function Told({ known: { playerId, opened, summary }, role }: { known: Known; role: PersonRole }) {
	return (
		<>
			<Answered of={summary} what="the summary">
				{(told) => <Summary summary={told} opened={opened} role={role} playerId={playerId} />}
			</Answered>
			{(summary.value || summary.says) && (
				<Visits playerId={playerId} role={role} visits={opened.visits} drafts={opened.drafts} />
			)}
		</>
	)
}
/** Asked anew each time the form is opened: what was typed before stands at the host. */
const useTypedBefore = (personId: string | undefined, playerId: string | undefined) =>
	useReading('details typed before', { personId, playerId }, [], typedBefore)

function KnownPlayer({ playerId, ...rest }: PlayerProps & { playerId: string }) {
	const answer = useHost('players.open', { playerId })
	const summary = useHost('players.summary', { playerId })
	const before = useTypedBefore(rest.personId, playerId)
	return (
		<Answered of={answer} what="the player">
			{(opened) => (
				<Answered of={before} what="the details">
					{(typed) => <PlayerPage known={{ playerId, opened, summary }} before={typed} {...rest} />}
				</Answered>
			)}
		</Answered>
	)
}
function NewPlayer(props: PlayerProps) {
	const before = useTypedBefore(props.personId, undefined)
	return (
		<Answered of={before} what="the form">
			{(typed) => <PlayerPage known={undefined} before={typed} {...props} />}
		</Answered>
	)
}
/** @param playerId undefined for a new player */
export const PlayerScreen = ({
	playerId,
	...rest
}: PlayerProps & { playerId: string | undefined }) =>
	playerId ? <KnownPlayer playerId={playerId} {...rest} /> : <NewPlayer {...rest} />
