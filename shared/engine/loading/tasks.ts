/**
 * Peak vertical force by task, in body weights; newtons are body mass times 9.81 times that. Low
 * and high are the spread between studies or people.
 */
import type { ThresholdKey } from '../protocol/protocol.ts'

export interface TaskRow {
	/** Part of the id of its working. */
	id: string
	task: string
	low: ThresholdKey
	high: ThresholdKey
}
/** The task that the finding is about. */
export const sidestep: TaskRow = {
	id: 'sidestep',
	task: 'sidestep',
	low: 'loading.sidestepLowBw',
	high: 'loading.sidestepHighBw',
}
export const taskRows: readonly TaskRow[] = [
	{
		id: 'run-impact',
		task: 'running, first impact',
		low: 'loading.runFirstLowBw',
		high: 'loading.runFirstHighBw',
	},
	{
		id: 'run-push-off',
		task: 'running, push-off',
		low: 'loading.runActiveLowBw',
		high: 'loading.runActiveHighBw',
	},
	sidestep,
	{
		id: 'kick-or-sprint',
		task: 'kick, standing leg, or sprint',
		low: 'loading.kickLowBw',
		high: 'loading.kickHighBw',
	},
	{
		id: 'landing',
		task: 'landing on one leg',
		low: 'loading.landingLowBw',
		high: 'loading.landingHighBw',
	},
]
