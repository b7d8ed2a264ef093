/**
 * The verdict on a pair the player owns: worn out, damaged or outgrown first, then its toe room,
 * then what to watch.
 */
import { isTrainer } from '../facts/trainer.ts'
import type { CurrentPair, ToeRoomForecast } from '../findings/assessment.ts'
import { dayNumber } from '../plain/days.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { daysPerMonth } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Pair } from '../visit/visit.ts'
import type { Part } from '../words/en/parts.ts'
import { type Statement, state } from '../words/statement.ts'

/** Trainers and boots are judged by bands of their own. */
const bands = {
	boot: {
		youth: 'footwear.youthReplaceMm',
		tight: 'footwear.adultTightMm',
		loose: 'footwear.adultLooseMm',
	},
	trainer: {
		youth: 'footwear.youthTrainerReplaceMm',
		tight: 'footwear.adultTrainerTightMm',
		loose: 'footwear.adultTrainerLooseMm',
	},
} as const
type Damage = NonNullable<Pair['damage']>[number]
/** Replacement signs: common practice, no source. */
const damageVerdicts: Record<Damage, 'replace' | 'change'> = {
	'studs-worn': 'replace',
	'stud-sharp': 'change',
	'stud-missing': 'change',
	'sole-separated': 'replace',
	'counter-collapsed': 'replace',
	'insole-board-split': 'replace',
	'upper-cracked': 'replace',
	'lining-worn': 'change',
	'heel-slips': 'change',
}
/** A pair as it is judged now: the verdict and what else is to be watched, by codes. */
export type JudgedPair = CurrentPair & Statement & { params: { said: Part[] } }
/** What else a pair is judged by, where known. */
export interface PairMore {
	visitDate?: string
	/** the growth room's forecast of this pair's toe room */
	toeRoom?: ToeRoomForecast | undefined
	offsetMinMm?: number
	/** share of the usual life, by body mass */
	lifeShare?: number
}

/**
 * The verdict on a pair in use, with its toe room in mm (inside length - longer foot - sock).
 * With a foot-length forecast also the date from which the toe room is expected to fall below the
 * limit.
 */
export function judgePair(
	pair: Pair,
	longerFootMm: number | undefined,
	sockMm: number,
	adult: boolean,
	protocol: Protocol,
	more: PairMore = {},
): JudgedPair {
	const band = bands[isTrainer(pair) ? 'trainer' : 'boot']
	const fit: Fit = {
		adult,
		sockMm,
		toeRoomMm: toeRoomOf(pair, longerFootMm, sockMm),
		leastMm: protocol.value(adult ? band.tight : band.youth),
		mostMm: protocol.value(band.loose),
	}
	const wear = wearOf(pair, more.lifeShare ?? 1, protocol)
	const damage = [...new Set(pair.damage ?? [])]
	const reasons = [
		...damage.map((sign) => state(`pairs.${sign}`)),
		...nearItsEnd(wear),
		...ownedForLong(pair, more.visitDate, protocol),
		...lowOffset(pair, more.offsetMinMm, protocol),
		...notBrokenIn(pair, protocol),
		...outgrownBy(more.toeRoom, fit.leastMm),
	]
	const { verdict, statement } = wornOut(wear) ?? verdictOnFit(pair, fit, damage)
	const { runsOutOn: replaceBy } = more.toeRoom ?? {}
	const said = [statement, ...reasons].map(({ code, params }) => ({ code, params }))
	return present({
		id: pair.id,
		toeRoomMm: fit.toeRoomMm,
		verdict,
		...state('pairs.pair', { said }),
		params: { said },
		reasons: reasons.length > 0 ? reasons.map(({ says }) => says) : undefined,
		replaceBy,
		replaceBetween: replaceBy === undefined ? undefined : replaceBetween(more.toeRoom),
	})
}

/** How a pair sits on the longer foot; all mm. */
interface Fit {
	adult: boolean
	sockMm: number
	/** Undefined where pair or foot is not measured. */
	toeRoomMm: number | undefined
	leastMm: number
	/** Above it a pair is loose on an adult. */
	mostMm: number
}
const toeRoomOf = (
	pair: Pair,
	longerFootMm: number | undefined,
	sockMm: number,
): number | undefined =>
	pair.insideLengthMm === undefined || longerFootMm === undefined
		? undefined
		: rounded(pair.insideLengthMm - longerFootMm - sockMm, 4)

/** How long a pair was worn against its expected life. */
interface Wear {
	/** Undefined where the time worn is not recorded. */
	hours: number | undefined
	checkHours: number
	lifeHours: number
	/** Of the usual life; below 1 where body mass shortens it. */
	lifeShare: number
}
/** A life recorded for the pair stands whatever the mass. */
function wearOf(pair: Pair, lifeShare: number, protocol: Protocol): Wear {
	const hours = pair.minutesWorn === undefined ? undefined : pair.minutesWorn / 60
	if (pair.lifeMinutes !== undefined) {
		const lifeHours = pair.lifeMinutes / 60
		return { hours, checkHours: lifeHours, lifeHours, lifeShare: 1 }
	}
	return {
		hours,
		checkHours: protocol.value('footwear.lifeCheckHours') * lifeShare,
		lifeHours: protocol.value('footwear.lifeReplaceHours') * lifeShare,
		lifeShare,
	}
}
const nearItsEnd = ({ hours, checkHours, lifeHours, lifeShare }: Wear): Statement[] =>
	hours !== undefined && hours < lifeHours && hours >= checkHours
		? [state('pairs.near-its-end', { hours: rounded(hours, 0), lifeShare })]
		: []
function ownedForLong(pair: Pair, visitDate: string | undefined, protocol: Protocol): Statement[] {
	if (visitDate === undefined || pair.acquired === undefined || isTrainer(pair)) return []
	const months = (dayNumber(visitDate) - dayNumber(pair.acquired)) / daysPerMonth
	return months >= protocol.value('footwear.ageCheckMonths')
		? [state('pairs.owned-for', { months: rounded(months, 0) })]
		: []
}
/** A lift already worn inside counts towards the offset, not towards the raise that is missing. */
function lowOffset(pair: Pair, offsetMinMm: number | undefined, protocol: Protocol): Statement[] {
	const offsetMm = pair.heelToForefootOffsetMm
	if (offsetMinMm === undefined || offsetMm === undefined) return []
	if (offsetMm + (pair.heelLiftMm ?? 0) >= offsetMinMm) return []
	const raiseMm = rounded(offsetMinMm - offsetMm, 1)
	const limitMm = protocol.value('ankle.raiseWarnMm')
	const withinLimit = raiseMm <= limitMm
	return [
		state('pairs.low-offset', { offsetMm, soughtMm: offsetMinMm, raiseMm, limitMm, withinLimit }),
	]
}
const notBrokenIn = (pair: Pair, protocol: Protocol): Statement[] =>
	pair.brokenIn === false
		? [state('pairs.not-broken-in', { minutes: protocol.value('footwear.breakInMinutes') })]
		: []
/** When growth of the longer foot takes the least toe room. */
function outgrownBy(forecast: ToeRoomForecast | undefined, leastMm: number): Statement[] {
	const { runsOutOn, earliest } = forecast ?? {}
	if (runsOutOn === undefined) return []
	const early = earliest !== undefined && earliest < runsOutOn ? { earliest } : {}
	return [state('pairs.outgrown-by', { leastMm, on: runsOutOn, ...early })]
}
function replaceBetween(forecast: ToeRoomForecast | undefined): CurrentPair['replaceBetween'] {
	const { earliest, latest } = forecast ?? {}
	return earliest === undefined ? undefined : present({ from: earliest, to: latest })
}

interface Verdict {
	verdict: CurrentPair['verdict']
	statement: Statement
}
const wornOut = ({ hours, lifeHours, lifeShare }: Wear): Verdict | undefined =>
	hours !== undefined && hours >= lifeHours
		? {
				verdict: 'replace',
				statement: state('pairs.worn-out', {
					hours: rounded(hours, 0),
					lifeHours: rounded(lifeHours, 0),
					lifeShare,
				}),
			}
		: undefined
function verdictOnFit(pair: Pair, fit: Fit, damage: readonly Damage[]): Verdict {
	const signs = damage.map((sign) => damageVerdicts[sign])
	const broken = signs.includes('replace')
	const faulty = signs.includes('change')
	if (fit.toeRoomMm === undefined)
		return {
			verdict: fromDamage(broken, faulty, 'unknown'),
			statement: state('pairs.not-measured', {
				lacks: pair.insideLengthMm === undefined ? 'inside-length' : 'foot-length',
			}),
		}
	return verdictOnRoom(fit, fit.toeRoomMm, broken, faulty)
}
function verdictOnRoom(
	{ adult, sockMm, leastMm, mostMm }: Fit,
	exactMm: number,
	broken: boolean,
	faulty: boolean,
): Verdict {
	const toeRoomMm = rounded(exactMm, 1)
	if (exactMm < 0)
		return {
			verdict: 'replace',
			statement: state('pairs.too-short', { shortMm: -toeRoomMm, withSock: sockMm > 0 }),
		}
	if (!adult && exactMm < leastMm)
		return { verdict: 'replace', statement: state('pairs.outgrown', { toeRoomMm, leastMm }) }
	const room = state('pairs.room', { toeRoomMm })
	if (broken) return { verdict: 'replace', statement: room }
	if (adult && exactMm < leastMm)
		return { verdict: 'change', statement: state('pairs.tight', { toeRoomMm }) }
	if (adult && exactMm > mostMm)
		return { verdict: 'change', statement: state('pairs.loose', { toeRoomMm }) }
	return { verdict: fromDamage(broken, faulty, 'keep'), statement: room }
}
function fromDamage(
	broken: boolean,
	faulty: boolean,
	otherwise: CurrentPair['verdict'],
): CurrentPair['verdict'] {
	if (broken) return 'replace'
	return faulty ? 'change' : otherwise
}
