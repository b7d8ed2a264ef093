/**
 * Where the window stood and how large its letters were, kept from one start to the next. Nothing
 * of a person is in it.
 */
import { readFileSync, renameSync, writeFileSync } from 'node:fs'
import { z } from 'zod'

const whole = z.number().int().min(-100_000).max(100_000)
const stateSchema = z.strictObject({
	x: whole.optional(),
	y: whole.optional(),
	width: whole.min(1),
	height: whole.min(1),
	maximized: z.boolean(),
	zoom: z.number().min(0.5).max(3),
})
export type WindowState = z.infer<typeof stateSchema>
export interface Area {
	x: number
	y: number
	width: number
	height: number
}

/** The smallest window on which nothing is lost, in px at normal letter size. */
export const smallest = { width: 1024, height: 700 } as const
/** The window of a first start. @internal */
export const firstState: WindowState = { width: 1440, height: 900, maximized: false, zoom: 1 }
/**
 * So much of the window must lie on a screen that a hand can take it and move it, in px; common
 * practice, no source.
 */
const grip = { width: 120, height: 60 }

/** A state that can be shown on these screens: never larger than the screen, never out of reach. */
export function placeOn(state: WindowState, screens: readonly Area[]): WindowState {
	const { x, y, ...rest } = state
	const shared = (screen: Area) =>
		x === undefined || y === undefined
			? { width: 0, height: 0 }
			: {
					width: Math.min(x + rest.width, screen.x + screen.width) - Math.max(x, screen.x),
					height: Math.min(y + rest.height, screen.y + screen.height) - Math.max(y, screen.y),
				}
	const home = screens.find(
		(screen) => shared(screen).width >= grip.width && shared(screen).height >= grip.height,
	)
	// the title bar must be on the screen too, or the window cannot be moved
	const reached = home !== undefined && y !== undefined && y >= home.y
	const room = home ?? screens[0]
	const size = {
		width: Math.max(smallest.width, Math.min(rest.width, room?.width ?? rest.width)),
		height: Math.max(smallest.height, Math.min(rest.height, room?.height ?? rest.height)),
	}
	return { ...rest, ...size, ...(reached && x !== undefined ? { x, y } : {}) }
}
/**
 * @returns the kept state, or the first one where there is none or it cannot be read: a lost window
 * place is no loss worth a message
 */
export function readState(file: string): WindowState {
	try {
		return stateSchema.parse(JSON.parse(readFileSync(file, 'utf8')))
	} catch {
		return firstState
	}
}
/** Written beside and moved into place, so that a power cut leaves the old one. */
export function keepState(file: string, state: WindowState): void {
	writeFileSync(`${file}.new`, JSON.stringify(stateSchema.parse(state)), { mode: 0o600 })
	renameSync(`${file}.new`, file)
}
