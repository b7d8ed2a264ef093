/** Damage, hours and age of an owned pair, and whether it is broken in. */
import { isTrainer, servesRole } from '../../facts/trainer.ts'
import { dayNumber } from '../../plain/days.ts'
import { present } from '../../plain/present.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { daysPerMonth } from '../../visit/age.ts'
import { rounded } from '../../visit/sides.ts'
import type { Pair } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import { damageRows } from './damage.table.ts'
import type { Ground, PairPicture } from './ground.ts'
import { weeksLater } from './room.ts'

/** One ground for each sign, in the order recorded. */
export function damageGrounds(pair: Pair, picture: PairPicture, protocol: Protocol): Ground[] {
	const soon = weeksLater(picture, protocol.value('footwear.ownedReplaceWeeks'))
	return [...new Set(pair.damage ?? [])].map((sign): Ground => {
		const { skin, ...row } = damageRows[sign]
		if (sign === 'heel-slips' && picture.heelIsSore)
			return { verdict: row.verdict, statement: state('pairs.heel-slips-sore') }
		const statement = state(`pairs.${sign}`)
		if (skin && picture.footAtRisk) return { ...row, verdict: 'stop-wearing', statement }
		return {
			...row,
			statement,
			...present({ by: row.verdict === 'replace' ? soon : undefined }),
		}
	})
}
/** A life recorded for the pair stands whatever the mass. */
function lifeOf({ lifeMinutes }: Pair, lifeShare: number, protocol: Protocol) {
	if (lifeMinutes !== undefined)
		return { checkHours: lifeMinutes / 60, lifeHours: lifeMinutes / 60, lifeShare: 1 }
	return {
		checkHours: protocol.value('footwear.lifeCheckHours') * lifeShare,
		lifeHours: protocol.value('footwear.lifeReplaceHours') * lifeShare,
		lifeShare,
	}
}
function hoursGrounds(pair: Pair, picture: PairPicture, protocol: Protocol): Ground[] {
	if (pair.minutesWorn === undefined) return []
	const worn = pair.minutesWorn / 60
	const { checkHours, lifeHours, lifeShare } = lifeOf(pair, picture.lifeShare, protocol)
	const hours = rounded(worn, 0)
	if (worn >= lifeHours)
		return [
			{
				verdict: 'replace',
				statement: state('pairs.worn-out', { hours, lifeHours: rounded(lifeHours, 0), lifeShare }),
				...present({ by: weeksLater(picture, protocol.value('footwear.ownedReplaceWeeks')) }),
			},
		]
	return worn >= checkHours
		? [{ verdict: 'keep', statement: state('pairs.near-its-end', { hours, lifeShare }) }]
		: []
}
function ageGrounds(pair: Pair, { visitDate }: PairPicture, protocol: Protocol): Ground[] {
	if (visitDate === undefined || pair.acquired === undefined || isTrainer(pair)) return []
	const months = (dayNumber(visitDate) - dayNumber(pair.acquired)) / daysPerMonth
	return months >= protocol.value('footwear.ageCheckMonths')
		? [{ verdict: 'keep', statement: state('pairs.owned-for', { months: rounded(months, 0) }) }]
		: []
}
function newnessGrounds(pair: Pair, protocol: Protocol): Ground[] {
	if (pair.brokenIn !== false || !servesRole(pair, 'match')) return []
	const minutes = protocol.value('footwear.breakInMinutes')
	return [{ verdict: 'training-only', statement: state('pairs.not-broken-in', { minutes }) }]
}
/** What wear comes to: hours first, then age, then newness. */
export const wearGrounds = (pair: Pair, picture: PairPicture, protocol: Protocol): Ground[] => [
	...hoursGrounds(pair, picture, protocol),
	...ageGrounds(pair, picture, protocol),
	...newnessGrounds(pair, protocol),
]
