/**
 * Peak vertical force by task, in body weights; newtons are body mass times 9.81 times that. Low
 * and high are the spread between studies or people.
 */
import type { ThresholdKey } from '../protocol/protocol.ts'

interface TaskRow {
	task: string
	low: ThresholdKey
	high: ThresholdKey
}
export const taskRows: readonly TaskRow[] = [
	{ task: 'running, first impact', low: 'loading.runFirstLowBw', high: 'loading.runFirstHighBw' },
	{ task: 'running, push-off', low: 'loading.runActiveLowBw', high: 'loading.runActiveHighBw' },
	{ task: 'sidestep', low: 'loading.sidestepLowBw', high: 'loading.sidestepHighBw' },
	{ task: 'kick, standing leg, or sprint', low: 'loading.kickLowBw', high: 'loading.kickHighBw' },
	{ task: 'landing on one leg', low: 'loading.landingLowBw', high: 'loading.landingHighBw' },
]
