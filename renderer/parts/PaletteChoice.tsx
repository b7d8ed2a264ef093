/** The palette while it is open: a few letters, the places and players that fit, Enter. */

import { Box, Dialog, DialogContent, TextField, Typography } from '@mui/material'
import { type KeyboardEvent, useEffect, useMemo, useState } from 'react'
import { useHashLocation } from 'wouter/use-hash-location'
import { fullName } from '../../shared/engine/words/names.ts'
import { useHost } from '../query.ts'
import { type Command, commandsNow } from './commands.ts'
import { dayInWords } from './dates.ts'
import { fits } from './fits.ts'
import { goTo } from './goTo.ts'
import { openTo, places, placesOfPlayer } from './places.ts'
import type { PersonRole } from './roles.ts'
import { useSettled } from './useSettled.ts'

/** Letters from which on players are looked for, and how many are offered. */
const leastLetters = 2
const mostPlayers = 8
const settledMs = 120

/** Players by the letters, once nothing was typed for a moment. */
function usePlayerCommands(query: string): Command[] {
	const enough = query.trim().length >= leastLetters
	const settled = useSettled(query, settledMs)
	const { value } = useHost(
		'players.search',
		{ query, limit: mostPlayers },
		{ when: enough && settled, keepLast: true },
	)
	if (!enough || !value) return []
	return value.cards.map((card) => ({
		name: `${fullName(card)}, born ${dayInWords(card.birthDate)}`,
		run: () => goTo(`/players/${card.playerId}`),
	}))
}
function useRows(query: string, role: PersonRole): Command[] {
	const [address] = useHashLocation()
	const own = useMemo(
		() =>
			[...commandsNow(), ...placesOfPlayer(address), ...places].filter((command) =>
				openTo(role, command.name),
			),
		[role, address],
	)
	const players = usePlayerCommands(query)
	return [...own.filter((command) => query.trim() === '' || fits(command.name, query)), ...players]
}
const markedStyle = {
	bgcolor: 'primary.main',
	color: 'primary.contrastText',
	'@media (forced-colors: active)': {
		bgcolor: 'Highlight',
		color: 'HighlightText',
		forcedColorAdjust: 'none',
	},
} as const

function CommandList({
	rows,
	marked,
	run,
}: {
	rows: readonly Command[]
	/** place of the one that Enter runs */
	marked: number
	run: (command: Command) => void
}) {
	useEffect(() => {
		document.getElementById(`command-${marked}`)?.scrollIntoView({ block: 'nearest' })
	}, [marked])
	return (
		<Box
			component="ul"
			role="listbox"
			id="command-list"
			aria-label="Commands"
			sx={{ listStyle: 'none', m: 0, mt: 1, p: 0, maxHeight: '50vh', overflow: 'auto' }}
		>
			{rows.map((row, index) => (
				<Box
					component="li"
					key={row.name}
					id={`command-${index}`}
					role="option"
					aria-selected={index === marked}
					onClick={() => run(row)}
					sx={{
						minHeight: 44,
						px: 2,
						display: 'flex',
						alignItems: 'center',
						justifyContent: 'space-between',
						borderRadius: 1,
						cursor: 'pointer',
						...(index === marked ? markedStyle : {}),
					}}
				>
					<span>{row.name}</span>
					<span>{row.keys}</span>
				</Box>
			))}
		</Box>
	)
}
function LettersField({
	query,
	type,
	marked,
	onKeyDown,
}: {
	query: string
	type: (query: string) => void
	/** undefined where nothing fits */
	marked: number | undefined
	onKeyDown: (event: KeyboardEvent) => void
}) {
	return (
		<TextField
			autoFocus
			fullWidth
			value={query}
			placeholder="Step, player, place"
			onChange={(event) => type(event.target.value)}
			onKeyDown={onKeyDown}
			slotProps={{
				htmlInput: {
					'aria-label': 'Command',
					role: 'combobox',
					'aria-expanded': true,
					'aria-controls': 'command-list',
					'aria-activedescendant': marked === undefined ? undefined : `command-${marked}`,
					autoComplete: 'off',
				},
			}}
		/>
	)
}
const steps: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1 }

/** @param role who works here: places that only refuse are left out */
export function PaletteChoice({ close, role }: { close: () => void; role: PersonRole }) {
	const [query, setQuery] = useState('')
	const [at, setAt] = useState(0)
	const rows = useRows(query, role)
	const marked = Math.min(at, rows.length - 1)
	// the dialog gives its focus back first; the command may then move it
	const run = (command: Command | undefined) => {
		if (!command) return
		close()
		setTimeout(command.run, 0)
	}
	const onKeyDown = (event: KeyboardEvent) => {
		const step = steps[event.key]
		if (!step && event.key !== 'Enter') return
		event.preventDefault()
		if (step) setAt((marked + step + rows.length) % Math.max(1, rows.length))
		else run(rows[marked])
	}
	return (
		<Dialog
			open
			onClose={close}
			maxWidth="sm"
			fullWidth
			aria-label="Command palette"
			slotProps={{ paper: { sx: { alignSelf: 'flex-start', mt: 8 } } }}
			transitionDuration={0}
		>
			<DialogContent>
				<LettersField
					query={query}
					type={(letters) => {
						setQuery(letters)
						setAt(0)
					}}
					marked={rows.length > 0 ? marked : undefined}
					onKeyDown={onKeyDown}
				/>
				<CommandList rows={rows} marked={marked} run={run} />
				<Typography role="status" variant="body2" color="text.secondary" sx={{ mt: 1 }}>
					{rows.length === 0
						? 'Nothing fits. Try other letters.'
						: `${rows.length} to choose from. Arrow keys, then Enter.`}
				</Typography>
			</DialogContent>
		</Dialog>
	)
}
