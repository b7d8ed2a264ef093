/** Where the PC sleeps or its screen is locked, the records are locked with it. */
import type { PowerMonitor } from 'electron'

/** So long may the page take to keep what is typed, in ms; a choice of this program. @internal */
export const keepWithinMs = 2000

/**
 * @param ask asks the page, which keeps its entries and then locks
 * @param lock locks the records themselves, for a page that does not answer; after it, nothing
 */
export function lockWithThePc(
	power: Pick<PowerMonitor, 'on'>,
	ask: () => void,
	lock: () => Promise<unknown>,
): void {
	const goes = () => {
		ask()
		setTimeout(() => void lock(), keepWithinMs)
	}
	power.on('suspend', goes)
	power.on('lock-screen', goes)
}
