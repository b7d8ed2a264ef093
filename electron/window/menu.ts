/** The menu as a table: what each line is called, its keys, and what it does. */
import type { MenuItemConstructorOptions } from 'electron'

/** What the menu can ask of the window. */
export interface MenuActions {
	go: (room: string) => void
	lock: () => void
	zoom: (step: 1 | 0 | -1) => void
	print: () => void
}
/**
 * Rooms with the keys that lead to them. The digits are free on every step, also while a number is
 * typed.
 * @internal
 */
export const rooms = [
	['Players', 'players', 'CmdOrCtrl+1'],
	['New player', 'players/new', 'CmdOrCtrl+N'],
	['Squad day', 'squad', 'CmdOrCtrl+2'],
	['Shelf', 'shelf', 'CmdOrCtrl+3'],
	['Outbox', 'outbox', 'CmdOrCtrl+4'],
	['Outreach', 'outreach', 'CmdOrCtrl+5'],
	['Records', 'records/access', 'CmdOrCtrl+6'],
] as const

/**
 * Reload and the developer tools are left out on purpose: both would let a bystander into open
 * records.
 */
export function menuTemplate(
	does: MenuActions,
	platform: NodeJS.Platform,
): MenuItemConstructorOptions[] {
	const mac = platform === 'darwin'
	return [
		...(mac ? [{ role: 'appMenu' as const }] : []),
		{
			label: '&File',
			submenu: [
				{ label: 'Print this page', accelerator: 'CmdOrCtrl+P', click: () => does.print() },
				// the page itself hears these keys, so that an entry is saved before it locks; the menu
				// only shows them
				{
					label: 'Lock the records',
					accelerator: 'Ctrl+Shift+L',
					registerAccelerator: false,
					click: () => does.lock(),
				},
				{ type: 'separator' },
				mac ? { role: 'close' } : { role: 'quit', label: 'Close Lastwright' },
			],
		},
		{
			label: '&Edit',
			submenu: [
				{ role: 'undo' },
				{ role: 'redo' },
				{ type: 'separator' },
				{ role: 'cut' },
				{ role: 'copy' },
				{ role: 'paste' },
				{ role: 'selectAll' },
			],
		},
		{
			label: '&Go',
			submenu: rooms.map(([label, room, accelerator]) => ({
				label,
				accelerator,
				click: () => does.go(room),
			})),
		},
		{
			label: '&View',
			submenu: [
				{ label: 'Larger text', accelerator: 'CmdOrCtrl+Plus', click: () => does.zoom(1) },
				{ label: 'Smaller text', accelerator: 'CmdOrCtrl+-', click: () => does.zoom(-1) },
				{ label: 'Normal text', accelerator: 'CmdOrCtrl+0', click: () => does.zoom(0) },
				{ type: 'separator' },
				{ role: 'togglefullscreen' },
			],
		},
		...(mac ? [{ role: 'windowMenu' as const }] : []),
	]
}
const sizes = [0.75, 0.9, 1, 1.1, 1.25, 1.5, 1.75, 2, 2.5, 3]
/** The next letter size; 0 leads back to normal. */
export function nextZoom(now: number, step: 1 | 0 | -1): number {
	if (step === 0) return 1
	return (
		(step > 0
			? sizes.find((siz) => siz > now + 0.001)
			: sizes.findLast((siz) => siz < now - 0.001)) ?? now
	)
}
