/** How a new insert is worn in: hours a day first, boots later, matches last. */
import type { WearInStep } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Condition } from '../visit/terms.ts'
import { type wearInSentences, wearInWhen } from '../words/en/insert-cautions.ts'
import type { Params } from '../words/sentence.ts'
import { stateOf } from './said.ts'

/** Hours of wear on day n (from 1). @throws RangeError for a day below 1 @internal */
export function wearInHours(day: number, protocol: Protocol): number {
	if (!(day >= 1)) throw new RangeError(`day ${day}: give 1 or more`)
	return (
		protocol.value('insert.wearFirstDayHours') + (day - 1) * protocol.value('insert.wearRiseHours')
	)
}
/** Conditions that ask for a softer shell and for slower wearing in. */
export const veryMobile: readonly Condition[] = ['hypermobility']
const step = (
	code: keyof typeof wearInSentences,
	{ toDay = 0, ...params }: { toDay?: number } & Params = {},
): WearInStep => ({
	when: wearInWhen[code]({ toDay }),
	...stateOf(code, toDay === 0 ? params : { toDay, ...params }),
})
/** The steps from the first day to the first match. @param gentle for very mobile joints */
export function wearInPlan(gentle: boolean, protocol: Protocol): WearInStep[] {
	const wholeDays = protocol.value('insert.wearAllDayDays')
	return [
		step('insert.wear-first-day', { hours: wearInHours(1, protocol) }),
		step('insert.wear-rise', {
			toDay: wholeDays,
			riseHours: protocol.value('insert.wearRiseHours'),
			hours: wearInHours(wholeDays, protocol),
			...(gentle ? { stayDays: protocol.value('insert.wearStayDays') } : {}),
		}),
		step('insert.wear-all-day', { wholeDays }),
		step('insert.wear-first-training', { minutes: protocol.value('insert.wearFirstTrainingMin') }),
		step('insert.wear-second-training'),
		step('insert.wear-third-training'),
		step('insert.wear-match', { wholeSessions: protocol.value('insert.wearWholeSessions') }),
		step('insert.wear-review'),
		step('insert.wear-stop', { painDays: protocol.value('insert.wearPainDays') }),
	]
}
