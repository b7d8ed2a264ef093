/** Ctrl+K: every place and every player by a few letters, without the mouse. */
import { Dialog, DialogContent, DialogTitle } from '@mui/material'
import { useEffect, useState } from 'react'
import { type Command, commandsNow } from './commands.ts'
import { goTo } from './goTo.ts'
import { KeySheet } from './KeySheet.tsx'
import { lookNow } from './look.ts'
import { PaletteChoice } from './PaletteChoice.tsx'
import { places } from './places.ts'
import type { PersonRole } from './roles.ts'

type Shown = 'palette' | 'keys' | undefined
const typing = (target: EventTarget | null): boolean =>
	target instanceof HTMLElement &&
	(/^(INPUT|SELECT|TEXTAREA)$/.test(target.tagName) || target.isContentEditable)

/** Keys of their own are on, and nobody types or reads a dialog. */
const singleKeysServe = (event: KeyboardEvent): boolean =>
	lookNow().singleKeys &&
	!(event.ctrlKey || event.altKey || event.metaKey) &&
	!typing(event.target) &&
	!document.querySelector('[role=dialog]')

/** y and n belong to the question in focus; no command uses them. */
const commandOf = (key: string): Command | undefined =>
	[...commandsNow(), ...places].find((command) => command.single === key)

const opens: Readonly<Record<string, Shown>> = { k: 'palette', '/': 'keys' }

/** What a key calls for; undefined where it is not for here. */
function calledFor(event: KeyboardEvent, show: (shown: Shown) => void): (() => void) | undefined {
	const key = event.key.toLowerCase()
	const opened = event.ctrlKey && !event.shiftKey && !event.altKey ? opens[key] : undefined
	if (opened) return () => show(opened)
	if (key === 'f1' && !event.defaultPrevented) return () => goTo('/help/measures')
	if (!singleKeysServe(event)) return undefined
	return key === '?' ? () => show('keys') : commandOf(key)?.run
}
function usePaletteKeys(show: (shown: Shown) => void): void {
	useEffect(() => {
		const pressed = (event: KeyboardEvent) => {
			const run = calledFor(event, show)
			if (!run) return
			event.preventDefault()
			run()
		}
		addEventListener('keydown', pressed)
		return () => removeEventListener('keydown', pressed)
	}, [show])
}
/** @param role who works here: places that only refuse are left out */
export function Palette({ role }: { role: PersonRole }) {
	const [shown, setShown] = useState<Shown>()
	usePaletteKeys(setShown)
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
	return shown === 'palette' ? <PaletteChoice close={close} role={role} /> : null
}
