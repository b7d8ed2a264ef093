/**
 * The verdict on a pair the player owns: worn out, damaged or outgrown first, then its toe room,
 * then what to watch.
 */
import { isTrainer } from '../facts/trainer.ts'
import type { CurrentPair, ToeRoomForecast } from '../findings/assessment.ts'
import { dayInWords, dayNumber } from '../plain/days.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Pair } from '../visit/visit.ts'

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
interface DamageSign {
	verdict: 'replace' | 'change'
	says: string
}
/** Replacement signs: common practice, no source. */
const damageSays: Record<Damage, DamageSign> = {
	'studs-worn': {
		verdict: 'replace',
		says:
			'Studs worn below half their height: replace the studs where they come out, else the ' +
			'pair.',
	},
	'stud-sharp': {
		verdict: 'change',
		says: 'A sharp or chipped stud: do not play in them until it is smoothed or replaced.',
	},
	'stud-missing': {
		verdict: 'change',
		says: 'A stud is missing: fit it, or have the sole checked for rocking.',
	},
	'sole-separated': { verdict: 'replace', says: 'Sole coming away from the upper: replace.' },
	'counter-collapsed': {
		verdict: 'replace',
		says: 'Heel counter collapsed: it no longer holds the heel; replace.',
	},
	'insole-board-split': { verdict: 'replace', says: 'Board under the liner split: replace.' },
	'upper-cracked': { verdict: 'replace', says: 'Upper cracked: replace.' },
	'lining-worn': {
		verdict: 'change',
		says: 'Heel lining worn through: patch it or replace, it blisters.',
	},
	'heel-slips': {
		verdict: 'change',
		says: 'Heel slips: try the heel-lock lacing first, then fit and counter.',
	},
}
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
): CurrentPair {
	const band = bands[isTrainer(pair) ? 'trainer' : 'boot']
	const fit: Fit = {
		adult,
		sockMm,
		toeRoomMm: toeRoomOf(pair, longerFootMm, sockMm),
		leastMm: protocol.value(adult ? band.tight : band.youth),
		mostMm: protocol.value(band.loose),
	}
	const wear = wearOf(pair, more.lifeShare ?? 1, protocol)
	const damage = [...new Set(pair.damage ?? [])].map((sign) => damageSays[sign])
	const reasons = [
		...damage.map((sign) => sign.says),
		...nearItsEnd(wear),
		...ownedForLong(pair, more.visitDate, protocol),
		...lowOffset(pair, more.offsetMinMm, protocol),
		...notBrokenIn(pair, protocol),
		...outgrownBy(more.toeRoom, fit.leastMm),
	]
	const { verdict, says } = wornOut(wear) ?? verdictOnFit(pair, fit, damage)
	const { runsOutOn: replaceBy } = more.toeRoom ?? {}
	return present({
		id: pair.id,
		toeRoomMm: fit.toeRoomMm,
		verdict,
		says: [says, ...reasons].join(' ').trim(),
		reasons: reasons.length > 0 ? reasons : undefined,
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
	/** Said where body mass shortens the usual life. */
	byMass: string
}
/** A life recorded for the pair stands whatever the mass. */
function wearOf(pair: Pair, lifeShare: number, protocol: Protocol): Wear {
	const hours = pair.minutesWorn === undefined ? undefined : pair.minutesWorn / 60
	if (pair.lifeMinutes !== undefined) {
		const lifeHours = pair.lifeMinutes / 60
		return { hours, checkHours: lifeHours, lifeHours, byMass: '' }
	}
	return {
		hours,
		checkHours: protocol.value('footwear.lifeCheckHours') * lifeShare,
		lifeHours: protocol.value('footwear.lifeReplaceHours') * lifeShare,
		byMass: lifeShare < 1 ? ` (life x ${lifeShare} for body mass: common practice, no source)` : '',
	}
}
const nearItsEnd = ({ hours, checkHours, lifeHours, byMass }: Wear): string[] =>
	hours !== undefined && hours < lifeHours && hours >= checkHours
		? [`Worn ${rounded(hours, 0)} hours: check studs, counter and sole${byMass}.`]
		: []
function ownedForLong(pair: Pair, visitDate: string | undefined, protocol: Protocol): string[] {
	if (visitDate === undefined || pair.acquired === undefined || isTrainer(pair)) return []
	const months = (dayNumber(visitDate) - dayNumber(pair.acquired)) / 30.4375
	return months >= protocol.value('footwear.ageCheckMonths')
		? [`Owned for ${rounded(months, 0)} months: check it as for a worn pair.`]
		: []
}
/** A lift already worn inside counts towards the offset, not towards the raise that is missing. */
function lowOffset(pair: Pair, offsetMinMm: number | undefined, protocol: Protocol): string[] {
	const offsetMm = pair.heelToForefootOffsetMm
	if (offsetMinMm === undefined || offsetMm === undefined) return []
	if (offsetMm + (pair.heelLiftMm ?? 0) >= offsetMinMm) return []
	const raiseMm = rounded(offsetMinMm - offsetMm, 1)
	const limitMm = protocol.value('ankle.raiseWarnMm')
	const below = `Offset ${offsetMm} mm is below the ${offsetMinMm} mm sought`
	return [
		raiseMm <= limitMm
			? `${below}: a heel raise of ${raiseMm} mm inside would make it up.`
			: `${below}; making it up needs a ${raiseMm} mm raise, above the ${limitMm} mm limit in use.`,
	]
}
const notBrokenIn = (pair: Pair, protocol: Protocol): string[] =>
	pair.brokenIn === false
		? [
				`Not broken in: no match before ${protocol.value('footwear.breakInMinutes')} training ` +
					'minutes without a sore spot.',
			]
		: []
/** When growth of the longer foot takes the least toe room. */
function outgrownBy(forecast: ToeRoomForecast | undefined, leastMm: number): string[] {
	const { runsOutOn, earliest } = forecast ?? {}
	if (runsOutOn === undefined) return []
	const early =
		earliest && earliest < runsOutOn
			? ` (as early as ${dayInWords(earliest)} if growth is fast)`
			: ''
	return [
		`By the growth forecast its toe room falls below ${leastMm} mm about ` +
			`${dayInWords(runsOutOn)}${early}: plan the next pair.`,
	]
}
function replaceBetween(forecast: ToeRoomForecast | undefined): CurrentPair['replaceBetween'] {
	const { earliest, latest } = forecast ?? {}
	return earliest === undefined ? undefined : present({ from: earliest, to: latest })
}

type Verdict = Pick<CurrentPair, 'verdict' | 'says'>
const wornOut = ({ hours, lifeHours, byMass }: Wear): Verdict | undefined =>
	hours !== undefined && hours >= lifeHours
		? {
				verdict: 'replace',
				says:
					`Worn ${rounded(hours, 0)} hours of an expected ${rounded(lifeHours, 0)}: ` +
					`replace${byMass}.`,
			}
		: undefined
function verdictOnFit(
	pair: Pair,
	{ adult, sockMm, toeRoomMm, leastMm, mostMm }: Fit,
	damage: readonly DamageSign[],
): Verdict {
	const broken = damage.some((sign) => sign.verdict === 'replace')
	const faulty = damage.some((sign) => sign.verdict === 'change')
	if (toeRoomMm === undefined)
		return {
			verdict: fromDamage(broken, faulty, 'unknown'),
			says:
				pair.insideLengthMm === undefined
					? 'Inside length not measured.'
					: 'Foot length not measured.',
		}
	const room = `Toe room ${rounded(toeRoomMm, 1)} mm`
	if (toeRoomMm < 0)
		return {
			verdict: 'replace',
			says:
				`Inside it is ${rounded(-toeRoomMm, 1)} mm shorter than the ` +
				`foot${sockMm > 0 ? ' with its sock' : ''}: too short, replace.`,
		}
	if (!adult && toeRoomMm < leastMm)
		return { verdict: 'replace', says: `${room} is below ${leastMm} mm: outgrown, replace.` }
	if (broken) return { verdict: 'replace', says: `${room}.` }
	if (adult && toeRoomMm < leastMm) return { verdict: 'change', says: `${room} is tight.` }
	if (adult && toeRoomMm > mostMm) return { verdict: 'change', says: `${room} is loose.` }
	return { verdict: fromDamage(broken, faulty, 'keep'), says: `${room}.` }
}
function fromDamage(
	broken: boolean,
	faulty: boolean,
	otherwise: CurrentPair['verdict'],
): CurrentPair['verdict'] {
	if (broken) return 'replace'
	return faulty ? 'change' : otherwise
}
