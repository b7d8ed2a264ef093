/** The entries of a folder: one is marked, and keys or the mouse open it. */
import { Box } from '@mui/material'
import { type KeyboardEvent, memo, useEffect, useId, useRef } from 'react'
import type { PlaceEntry } from '../../../shared/desk/places/calls.ts'
import type { Purpose } from '../../../shared/desk/places/purposes.table.ts'
import { jumpTo, markedBy, type Typed, typedOn } from './placeKeys.ts'
import { besideName, emptyWords } from './placeWords.ts'
import type { Places } from './usePlaces.ts'

const listStyle = {
	height: 'min(38vh, 20rem)',
	overflowY: 'auto',
	border: 1,
	borderColor: 'divider',
	borderRadius: 1,
	'&:focus-visible': { outline: '3px solid', outlineColor: 'secondary.main', outlineOffset: 2 },
	'& [role=option]': {
		display: 'flex',
		flexWrap: 'wrap',
		alignItems: 'center',
		columnGap: 1.5,
		minHeight: 44,
		px: 1.5,
		py: 0.75,
		cursor: 'pointer',
		overflowWrap: 'anywhere',
		contentVisibility: 'auto',
		containIntrinsicSize: 'auto 44px',
	},
	'& [role=option] > :first-of-type': { fontWeight: 600 },
	'& [role=option] > :last-of-type': { fontSize: '0.875rem', color: 'text.secondary' },
	'& [aria-selected=true], & [aria-selected=true] > :last-of-type': {
		bgcolor: 'primary.main',
		color: 'primary.contrastText',
		'@media (forced-colors: active)': {
			bgcolor: 'Highlight',
			color: 'HighlightText',
			forcedColorAdjust: 'none',
		},
	},
} as const

interface EntryProps {
	entry: PlaceEntry
	id: string
	isMarked: boolean
	index: number
	mark: (index: number) => void
	open: (index: number) => void
}
/** A folder ends in a slash, so that it is told from a file without a colour or a picture. */
const Entry = memo(({ entry, id, isMarked, index, mark, open }: EntryProps) => (
	// biome-ignore lint/a11y/useFocusableInteractive: the list keeps the focus and names its marked entry
	// biome-ignore lint/a11y/useKeyWithClickEvents: the keys are heard by the list
	<div
		role="option"
		id={id}
		aria-selected={isMarked}
		onClick={() => mark(index)}
		onDoubleClick={() => open(index)}
	>
		<bdi>{entry.is === 'folder' ? `${entry.name}/` : entry.name}</bdi>
		<bdi>{besideName(entry)}</bdi>
	</div>
))
/** @param enter what Enter and a double press do with an entry */
function useListKeys(places: Places, enter: (entry: PlaceEntry) => void) {
	const { look, marked, setMarked, up } = places
	const entries = look?.entries ?? []
	const typed = useRef<Typed>({ letters: '', atMs: 0 })
	const jump = (letter: string) => {
		typed.current = typedOn(typed.current, letter, Date.now())
		const names = entries.map(({ name }) => name)
		const found = jumpTo(names, marked, typed.current.letters)
		if (found !== undefined) setMarked(found)
	}
	const doFor = (key: string): boolean => {
		const next = markedBy(key, marked, entries.length)
		const entry = entries[marked]
		// a way by another key ends the beginning of a name
		if (key.length > 1) typed.current = { letters: '', atMs: 0 }
		if (next !== undefined) setMarked(next)
		else if (key === 'Backspace') up()
		else if (key === 'Enter' && entry) enter(entry)
		else if (key.length === 1) jump(key)
		else return false
		return true
	}
	return (event: KeyboardEvent) => {
		if (event.ctrlKey || event.altKey || event.metaKey) return
		// while another folder is read a key would still mean this one
		const isWaiting = places.busy && event.key !== 'Tab' && event.key !== 'Escape'
		if (!isWaiting && !doFor(event.key)) return
		event.preventDefault()
		// single keys of the page below are not for here
		event.stopPropagation()
	}
}
export function PlaceList({
	purpose,
	places,
	label,
	enter,
}: {
	purpose: Purpose
	places: Places
	label: string
	enter: (entry: PlaceEntry) => void
}) {
	const { look, marked, setMarked } = places
	const id = useId()
	const list = useRef<HTMLDivElement>(null)
	const entries = look?.entries ?? []
	const onKeyDown = useListKeys(places, enter)
	const at = look?.at?.path
	useEffect(() => {
		// another folder begins with the list in focus: the way on is by keys
		if (at !== undefined || look) list.current?.focus()
	}, [at, look])
	useEffect(() => {
		document.getElementById(`${id}-${marked}`)?.scrollIntoView({ block: 'nearest' })
	}, [id, marked])
	const open = (index: number) => {
		const entry = entries[index]
		if (entry) enter(entry)
	}
	return (
		<Box
			ref={list}
			role="listbox"
			tabIndex={0}
			aria-label={label}
			aria-busy={places.busy}
			aria-activedescendant={entries.length > 0 ? `${id}-${marked}` : undefined}
			onKeyDown={onKeyDown}
			sx={listStyle}
		>
			{look && entries.length === 0 && (
				<Box sx={{ p: 1.5, color: 'text.secondary' }}>{emptyWords(purpose)}</Box>
			)}
			{entries.map((entry, index) => (
				<Entry
					key={entry.path}
					entry={entry}
					id={`${id}-${index}`}
					index={index}
					isMarked={index === marked}
					mark={setMarked}
					open={open}
				/>
			))}
		</Box>
	)
}
