/** The growth room's numbers, each with its formula and this player's values put in. */
import type { GrowthResult } from '../findings/assessment.ts'
import type { Working } from '../findings/finding.ts'
import { figure } from '../findings/working.ts'
import { daysBetween } from '../plain/days.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageMonths } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'
import { footWorkings } from './foot-workings.ts'
import { offsetWorkings } from './maturity-workings.ts'
import { statureWorkings } from './stature-workings.ts'
import type { PairForecast } from './toe-room.ts'
import type { FootGrowth } from './velocity.ts'

function ageWorking({ player, visitDate }: Visit, ageYears: number): Working {
	const days = daysBetween(player.birthDate, visitDate)
	const months = ageMonths(player.birthDate, visitDate)
	return {
		id: 'growth.age',
		title: 'Decimal age',
		lines: [
			`${days} days / 365.25 = ${figure(ageYears, 4)} years; / 30.4375 = ` +
				`${figure(months, 1)} months`,
		],
		basis: {
			rule: 'decimal age',
			source:
				'convention of the growth equations (days / 365.25) and of the growth charts (days / ' +
				'30.4375)',
			strength: 'standard',
		},
	}
}
/**
 * @param result the room's result without workings; @param feet foot growth since an earlier visit
 * @param pairs the pairs whose toe room was forecast
 */
export function growthWorkings(
	visit: Visit,
	result: Omit<GrowthResult, 'workings'>,
	feet: FootGrowth | undefined,
	pairs: readonly PairForecast[],
	protocol: Protocol,
): Working[] {
	return [
		ageWorking(visit, result.decimalAgeYears),
		...offsetWorkings(visit, result, protocol),
		...statureWorkings(visit, result, protocol),
		...footWorkings(visit, result, feet, pairs, protocol),
	]
}
