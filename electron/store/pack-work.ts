/** What is told while a pack is written or read, so that other work goes on and it can be stopped. */

import type { WorkStep } from '../../shared/desk/outreach/work.ts'

export interface PackWork {
	/**
	 * Told after each step; awaits now and then, so that other calls are answered between two steps.
	 * @throws PackRefused where it was stopped; nothing half is left then
	 */
	at: (step: WorkStep, done: number, total: number) => Promise<void>
}
/** For work that nobody watches. */
export const unwatched: PackWork = { at: async () => {} }

/** The steps of a generator, each told. @param total how many there will be */
export async function walked<T>(
	steps: Iterable<T>,
	work: PackWork,
	step: WorkStep,
	total: number,
): Promise<T[]> {
	const found: T[] = []
	for (const one of steps) {
		found.push(one)
		await work.at(step, Math.min(found.length, total), total)
	}
	return found
}
