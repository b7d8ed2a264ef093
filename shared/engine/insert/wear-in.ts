/** How a new insert is worn in: hours a day first, boots later, matches last. */
import type { WearInStep } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'

/** Hours of wear on day n (from 1). @throws RangeError for a day below 1 @internal */
export function wearInHours(day: number, protocol: Protocol): number {
	if (!(day >= 1)) throw new RangeError(`day ${day}: give 1 or more`)
	return (
		protocol.value('insert.wearFirstDayHours') + (day - 1) * protocol.value('insert.wearRiseHours')
	)
}
/** The steps from the first day to the first match. @param gentle for very mobile joints */
export function wearInPlan(gentle: boolean, protocol: Protocol): WearInStep[] {
	const days = protocol.value('insert.wearAllDayDays')
	const firstMin = protocol.value('insert.wearFirstTrainingMin')
	return [
		{ when: 'Day 1', says: `Everyday shoes, ${wearInHours(1, protocol)} hours.` },
		{
			when: `Day 2 to day ${days}`,
			says:
				`${protocol.value('insert.wearRiseHours')} hour more each day: ` +
				`${wearInHours(days, protocol)} hours on day ` +
				`${days}.${gentle ? ' Very mobile joints: stay two days on each step.' : ''}`,
		},
		{
			when: 'Then',
			says: `${days} days of all-day wear without trouble before it goes into boots.`,
		},
		{ when: 'Training 1', says: `${firstMin} minutes in boots, then out.` },
		{ when: 'Training 2', says: 'Half the session.' },
		{ when: 'Training 3', says: 'The whole session.' },
		{
			when: 'Match',
			says: 'After two whole sessions, and not in the first match week of a season.',
		},
		{
			when: 'Stop and call',
			says: `Pain for more than ${protocol.value('insert.wearPainDays')} days, or a blister.`,
		},
	]
}
