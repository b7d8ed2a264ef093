/** The look of this PC: asked of the host, put on the page, and told to whoever listens. */
import type { Look } from '../../shared/desk/workplace/look.ts'
import { defaultLook } from '../../shared/desk/workplace/look-choices.ts'
import { call } from '../host.ts'

let now: Look = defaultLook
const listeners = new Set<() => void>()
export const lookNow = (): Look => now
export function onLook(told: () => void): () => void {
	listeners.add(told)
	return () => {
		listeners.delete(told)
	}
}
function put(look: Look): void {
	now = look
	const { dataset } = document.documentElement
	if (look.colours === 'system') delete dataset.lwLook
	else dataset.lwLook = look.colours
	// attributes, not inline style: the page forbids inline style
	dataset.lwText = String(look.textPercent)
	for (const told of listeners) told()
}
export const loadLook = (): Promise<void> => call('look.get', {}).then(put, () => {})
/** Shows it at once and keeps it. @throws HostRefusal where it cannot be kept */
export async function saveLook(change: Partial<Look>): Promise<void> {
	put({ ...now, ...change })
	await call('look.save', now)
}
