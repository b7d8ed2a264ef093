/** Ctrl+K: every place and every player by a few letters, without the mouse. */
import { Box, Dialog, DialogContent, DialogTitle, TextField, Typography } from '@mui/material'
import { useEffect, useMemo, useState } from 'react'
import { call } from '../host.ts'
import { type Command, commandsNow } from './commands.ts'
import { dayInWords } from './dates.ts'
import { keySheet } from './help/keys.ts'
import { lookNow } from './look.ts'

const go = (hash: string) => () => {
	location.hash = hash
}
const places: readonly Command[] = [
	{ name: 'Players', run: go('#/players'), single: 'p' },
	{ name: 'New player', run: go('#/players/new') },
	{ name: 'Shelf', run: go('#/shelf'), single: 's' },
	{ name: 'Outbox', run: go('#/outbox') },
	{ name: 'Squad day', run: go('#/squad') },
	{ name: 'Outreach', run: go('#/outreach') },
	{ name: 'Backups and records', run: go('#/records/backups') },
	{ name: 'Settings: letterhead', run: go('#/settings/letterhead') },
	{ name: 'Settings: protocol', run: go('#/settings/protocol') },
	{ name: 'Settings: ages, keeping and lock', run: go('#/settings/records') },
	{ name: 'Settings: look', run: go('#/settings/look') },
	{ name: 'Help: how to measure', run: go('#/help/measures') },
	{ name: 'Help: glossary', run: go('#/help/glossary') },
	{ name: 'Help: shortcuts', run: go('#/help/keys') },
]
/** What reception would only be refused: measures and packs are for those who assess. */
const assessing = [
	'Outreach',
	'This player: assessment',
	'This player: season',
	'This player: trends',
]
const open = (role: string | undefined, name: string): boolean =>
	role !== 'reception' || !assessing.includes(name)
/** Commands of the player whose page is open. */
function ofPlayer(): Command[] {
	const [, room, id] = location.hash.split('/')
	if (
		!id ||
		id === 'new' ||
		!['players', 'player', 'assessment', 'season', 'trends', 'consents'].includes(room ?? '')
	)
		return []
	return [
		{ name: 'This player: details', run: go(`#/players/${id}`) },
		{ name: 'This player: assessment', run: go(`#/assessment/${id}`) },
		{ name: 'This player: season', run: go(`#/season/${id}`) },
		{ name: 'This player: trends', run: go(`#/trends/${id}`) },
		{ name: 'This player: consents', run: go(`#/consents/${id}`) },
	]
}
const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()
const fits = (name: string, query: string): boolean =>
	plain(query)
		.split(/\s+/)
		.every((word) => plain(name).includes(word))
const typing = (target: EventTarget | null): boolean =>
	target instanceof HTMLElement &&
	(/^(INPUT|SELECT|TEXTAREA)$/.test(target.tagName) || target.isContentEditable)

export function KeySheet() {
	return (
		<>
			{keySheet.map((part) => (
				<Box component="section" key={part.where} sx={{ mb: 2 }}>
					<Typography variant="h2" component="h3">
						{part.where}
					</Typography>
					<Box
						component="dl"
						sx={{
							m: 0,
							display: 'grid',
							gridTemplateColumns: 'minmax(140px, max-content) 1fr',
							columnGap: 3,
							rowGap: 0.5,
						}}
					>
						{part.keys.map(([keys, does]) => [
							<Box component="dt" key={keys} sx={{ fontWeight: 600 }}>
								{keys}
							</Box>,
							<Box component="dd" key={`${keys} does`} sx={{ m: 0 }}>
								{does}
							</Box>,
						])}
					</Box>
				</Box>
			))}
		</>
	)
}
/** @param role who works here: places that only refuse are left out */
export function Palette({ role }: { role: string | undefined }) {
	const [shown, setShown] = useState<'palette' | 'keys'>()
	useEffect(() => {
		const pressed = (event: KeyboardEvent) => {
			const key = event.key.toLowerCase()
			if (event.ctrlKey && !event.shiftKey && !event.altKey && (key === 'k' || key === '/')) {
				event.preventDefault()
				return setShown(key === 'k' ? 'palette' : 'keys')
			}
			if (key === 'f1' && !event.defaultPrevented) {
				event.preventDefault()
				location.hash = '#/help/measures'
				return
			}
			if (
				!lookNow().singleKeys ||
				event.ctrlKey ||
				event.altKey ||
				event.metaKey ||
				typing(event.target) ||
				document.querySelector('[role=dialog]')
			)
				return
			if (event.key === '?') return setShown('keys')
			const found = [...commandsNow(), ...places].find((command) => command.single === key)
			// y and n belong to the question in focus; no command uses them
			if (found) {
				event.preventDefault()
				found.run()
			}
		}
		addEventListener('keydown', pressed)
		return () => removeEventListener('keydown', pressed)
	}, [])
	const close = () => setShown(undefined)
	if (shown === 'keys')
		return (
			<Dialog open onClose={close} maxWidth="md" fullWidth aria-labelledby="keys-title">
				<DialogTitle id="keys-title">Shortcuts</DialogTitle>
				{/* it scrolls with large letters, so the keys must reach it */}
				<DialogContent tabIndex={0}>
					<KeySheet />
				</DialogContent>
			</Dialog>
		)
	return shown === 'palette' ? <Choose close={close} role={role} /> : null
}
function Choose({ close, role }: { close: () => void; role: string | undefined }) {
	const [query, setQuery] = useState('')
	const [at, setAt] = useState(0)
	const [players, setPlayers] = useState<Command[]>([])
	const own = useMemo(
		() =>
			[...commandsNow(), ...ofPlayer(), ...places].filter((command) => open(role, command.name)),
		[role],
	)
	useEffect(() => {
		if (query.trim().length < 2) return setPlayers([])
		let wanted = true
		const timer = setTimeout(
			() =>
				call('players.search', { query, limit: 8 }).then(
					({ cards }) => {
						if (wanted)
							setPlayers(
								cards.map((card) => ({
									name: `${card.givenName} ${card.familyName}, born ${dayInWords(card.birthDate)}`,
									run: go(`#/players/${card.playerId}`),
								})),
							)
					},
					() => {},
				),
			120,
		)
		return () => {
			wanted = false
			clearTimeout(timer)
		}
	}, [query])
	const rows = [
		...own.filter((command) => query.trim() === '' || fits(command.name, query)),
		...players,
	]
	const now = Math.min(at, rows.length - 1)
	// the dialog gives its focus back first; the command may then move it
	const run = (one: Command | undefined) => {
		if (one) {
			close()
			setTimeout(one.run, 0)
		}
	}
	useEffect(() => {
		document.getElementById(`command-${now}`)?.scrollIntoView({ block: 'nearest' })
	}, [now])
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
				<TextField
					autoFocus
					fullWidth
					value={query}
					placeholder="Step, player, place"
					onChange={(event) => {
						setQuery(event.target.value)
						setAt(0)
					}}
					onKeyDown={(event) => {
						if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
							event.preventDefault()
							setAt(
								(now + (event.key === 'ArrowDown' ? 1 : -1) + rows.length) %
									Math.max(1, rows.length),
							)
						}
						if (event.key === 'Enter') {
							event.preventDefault()
							run(rows[now])
						}
					}}
					slotProps={{
						htmlInput: {
							'aria-label': 'Command',
							role: 'combobox',
							'aria-expanded': true,
							'aria-controls': 'command-list',
							'aria-activedescendant': rows.length ? `command-${now}` : undefined,
							autoComplete: 'off',
						},
					}}
				/>
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
							aria-selected={index === now}
							onClick={() => run(row)}
							sx={{
								minHeight: 44,
								px: 2,
								display: 'flex',
								alignItems: 'center',
								justifyContent: 'space-between',
								borderRadius: 1,
								cursor: 'pointer',
								...(index === now
									? {
											bgcolor: 'primary.main',
											color: 'primary.contrastText',
											'@media (forced-colors: active)': {
												bgcolor: 'Highlight',
												color: 'HighlightText',
												forcedColorAdjust: 'none',
											},
										}
									: {}),
							}}
						>
							<span>{row.name}</span>
							<span>{row.keys}</span>
						</Box>
					))}
				</Box>
				<Typography role="status" variant="body2" color="text.secondary" sx={{ mt: 1 }}>
					{rows.length === 0
						? 'Nothing fits. Try other letters.'
						: `${rows.length} to choose from. Arrow keys, then Enter.`}
				</Typography>
			</DialogContent>
		</Dialog>
	)
}
