/** The growth room's numbers, each with its formula and this player's values put in. */
import type { GrowthResult } from '../findings/assessment.ts'
import type { Working } from '../findings/finding.ts'
import { equation, exactly, over, quantity } from '../findings/formula.ts'
import { meanLine } from '../findings/mean-line.ts'
import { daysBetween } from '../plain/days.ts'
import { need } from '../plain/need.ts'
import { commonPractice } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { daysPerMonth, daysPerYear } from '../visit/age.ts'
import { measureAt } from '../visit/measures/catalogue.ts'
import type { Visit } from '../visit/visit.ts'
import { capital } from '../words/words.ts'
import { footWorkings } from './foot-workings.ts'
import { offsetWorkings } from './maturity-workings.ts'
import { statureWorkings } from './stature-workings.ts'
import type { PairForecast } from './toe-room.ts'
import type { FootGrowth } from './velocity.ts'

const sizes = [
	['statureCm', 'cm'],
	['sittingHeightCm', 'cm'],
	['massKg', 'kg'],
] as const

function ageWorking({ player, visitDate }: Visit): Working {
	const days = daysBetween(player.birthDate, visitDate)
	return {
		id: 'growth.age',
		title: 'Decimal age',
		lines: [
			`${days} days: ${equation(over(quantity(days, 1), exactly(daysPerYear)), 'years', 4)}; ` +
				equation(over(quantity(days, 1), exactly(daysPerMonth)), 'months', 1),
		],
		basis: {
			rule: 'decimal age',
			source:
				`convention of the growth equations (days / ${daysPerYear}) and of the growth charts ` +
				`(days / ${daysPerMonth})`,
			strength: 'standard',
		},
	}
}
/** What was read more than once: what the equations take of it. */
function meanWorkings({ body }: Visit): Working[] {
	return sizes.flatMap(([key, unit]) => {
		const recorded = body?.[key]
		if (!Array.isArray(recorded) || recorded.length < 2) return []
		return [
			{
				id: `growth.mean-${key.replace(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`)}`,
				title: capital(need(measureAt(`body.${key}`), key).measure.name),
				lines: [meanLine(recorded, unit)],
				basis: { rule: 'mean of repeated readings', ...commonPractice },
			},
		]
	})
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
		ageWorking(visit),
		...meanWorkings(visit),
		...offsetWorkings(visit, result, protocol),
		...statureWorkings(visit, result, protocol),
		...footWorkings(visit, result, feet, pairs, protocol),
	]
}
