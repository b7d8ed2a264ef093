/** Who the player is, whom to speak to, and the ways on. */
import { Box, Button, Typography } from '@mui/material'
import { type Ref, useEffect, useRef } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { dayInWords, today } from '../../parts/dates.ts'
import { goTo } from '../../parts/goTo.ts'
import type { Player } from './details.ts'

type Draft = OutputOf<'players.open'>['drafts'][number]

const who = ({ birthDate, sex, club }: Player): string =>
	[`Born ${dayInWords(birthDate)}`, `${ageYears(birthDate, today())} years`, sex, club]
		.filter(Boolean)
		.join(', ')
const guardianWords = ({ name, relation, phone }: NonNullable<Player['guardian']>): string =>
	[`Guardian ${name}`, relation, phone].filter(Boolean).join(', ')

function wayOn(draft: Draft | undefined): string {
	if (!draft) return 'Start assessment'
	return draft.amends ? 'Resume amendment' : 'Resume assessment'
}
interface HeadProps {
	/** undefined for a new player */
	known: { playerId: string; player: Player; draft: Draft | undefined } | undefined
	treats: boolean
	/** just added: what comes next is the assessment */
	isAdded: boolean
	busy: boolean
	/** the form stands open */
	isEditing: boolean
	editButton: Ref<HTMLButtonElement>
	edit: () => void
	assess: () => void
}
export function PlayerHead({
	known,
	treats,
	isAdded,
	busy,
	isEditing,
	editButton,
	edit,
	assess,
}: HeadProps) {
	const player = known?.player
	return (
		<Box
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				alignItems: 'center',
				justifyContent: 'space-between',
				gap: 2,
			}}
		>
			<Box sx={{ minWidth: 0 }}>
				<Typography variant="h1">{player ? fullName(player) : 'New player'}</Typography>
				{player && <Typography color="textSecondary">{who(player)}</Typography>}
				{player?.guardian && (
					<Typography color="textSecondary">{guardianWords(player.guardian)}</Typography>
				)}
			</Box>
			{known && (
				<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
					<Button
						variant={treats ? 'text' : 'contained'}
						size="large"
						ref={editButton}
						aria-expanded={isEditing}
						onClick={edit}
					>
						Edit details
					</Button>
					{treats && <Ways known={known} isAdded={isAdded} busy={busy} assess={assess} />}
				</Box>
			)}
		</Box>
	)
}
function Ways({
	known: { playerId, draft },
	isAdded,
	busy,
	assess,
}: Pick<HeadProps, 'isAdded' | 'busy' | 'assess'> & { known: NonNullable<HeadProps['known']> }) {
	const start = useRef<HTMLButtonElement>(null)
	const added = useRef(isAdded)
	useEffect(() => {
		if (added.current) start.current?.focus()
	}, [])
	return (
		<>
			<Button variant="outlined" size="large" onClick={() => goTo(`/trends/${playerId}`)}>
				Trends
			</Button>
			<Button variant="outlined" size="large" onClick={() => goTo(`/season/${playerId}`)}>
				Season
			</Button>
			<Button ref={start} variant="contained" size="large" disabled={busy} onClick={assess}>
				{wayOn(draft)}
			</Button>
		</>
	)
}
