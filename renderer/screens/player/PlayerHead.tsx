/** Who the player is, whom to speak to, and the ways on. */
import { Button } from '@mui/material'
import { type ReactNode, type Ref, useEffect, useRef } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { languageName } from '../../../shared/engine/words/en/languages.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { dayInWords, today } from '../../parts/dates.ts'
import { goTo } from '../../parts/goTo.ts'
import { Page } from '../../parts/Page.tsx'
import type { Player } from './details.ts'

type Draft = OutputOf<'players.open'>['drafts'][number]

const prefers = (tag: string | undefined): string => (tag ? `prefers ${languageName(tag)}` : '')
const who = ({ birthDate, sex, club, preferredLanguage }: Player): string =>
	[
		`Born ${dayInWords(birthDate)}`,
		`${ageYears(birthDate, today())} years`,
		sex,
		club,
		prefers(preferredLanguage),
	]
		.filter(Boolean)
		.join(', ')
const guardianWords = ({
	name,
	relation,
	phone,
	preferredLanguage,
}: NonNullable<Player['guardian']>): string =>
	[`Guardian ${name}`, relation, phone, prefers(preferredLanguage)].filter(Boolean).join(', ')

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
	/** undefined where there is no visit to look back to, or a draft is open */
	recheck: (() => void) | undefined
	children: ReactNode
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
	recheck,
	children,
}: HeadProps) {
	const player = known?.player
	return (
		<Page
			title={player ? fullName(player) : 'New player'}
			line={player && <Who player={player} />}
			back={{ to: '#/players', words: 'Back to the list' }}
			acts={
				known && (
					<>
						<Button
							variant={treats ? 'text' : 'contained'}
							ref={editButton}
							aria-expanded={isEditing}
							onClick={edit}
						>
							Edit details
						</Button>
						{treats && <Ways {...{ known, isAdded, busy, assess, recheck }} />}
					</>
				)
			}
		>
			{children}
		</Page>
	)
}
const Who = ({ player }: { player: Player }) => (
	<>
		<div>{who(player)}</div>
		{player.guardian && <div>{guardianWords(player.guardian)}</div>}
	</>
)
function Ways({
	known: { playerId, draft },
	isAdded,
	busy,
	assess,
	recheck,
}: Pick<HeadProps, 'isAdded' | 'busy' | 'assess' | 'recheck'> & {
	known: NonNullable<HeadProps['known']>
}) {
	const start = useRef<HTMLButtonElement>(null)
	const added = useRef(isAdded)
	useEffect(() => {
		if (added.current) start.current?.focus()
	}, [])
	return (
		<>
			<Button variant="outlined" onClick={() => goTo(`/trends/${playerId}`)}>
				Trends
			</Button>
			<Button variant="outlined" onClick={() => goTo(`/season/${playerId}`)}>
				Season
			</Button>
			{recheck && (
				<Button variant="outlined" disabled={busy} onClick={recheck}>
					Re-check
				</Button>
			)}
			<Button ref={start} variant="contained" disabled={busy} onClick={assess}>
				{wayOn(draft)}
			</Button>
		</>
	)
}
