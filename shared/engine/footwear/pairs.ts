/**
 * The verdict on a pair the player owns: worn out, damaged or outgrown first, then its toe room,
 * then what to watch.
 */
import type { CurrentPair, ToeRoomForecast } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { dayInWords, dayNumber } from '../visit/age.ts'
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
/** Replacement signs: common practice, no source. */
const damageSays: Record<Damage, { verdict: 'replace' | 'change'; says: string }> = {
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
	const trainer = pair.sole === 'road' || pair.sole === 'trail'
	const band = bands[trainer ? 'trainer' : 'boot']
	const least = protocol.value(adult ? band.tight : band.youth)
	const hours = pair.minutesWorn === undefined ? undefined : pair.minutesWorn / 60
	const share = more.lifeShare ?? 1
	const life =
		pair.lifeMinutes === undefined
			? protocol.value('footwear.lifeReplaceHours') * share
			: pair.lifeMinutes / 60
	const check =
		pair.lifeMinutes === undefined ? protocol.value('footwear.lifeCheckHours') * share : life
	const byMass =
		pair.lifeMinutes === undefined && share < 1
			? ` (life x ${share} for body mass: common practice, no source)`
			: ''
	const toeRoomMm =
		pair.insideLengthMm === undefined || longerFootMm === undefined
			? undefined
			: rounded(pair.insideLengthMm - longerFootMm - sockMm, 4)
	const damage = [...new Set(pair.damage ?? [])].map((one) => damageSays[one])
	const reasons: string[] = damage.map((one) => one.says)
	if (hours !== undefined && hours < life && hours >= check)
		reasons.push(`Worn ${rounded(hours, 0)} hours: check studs, counter and sole${byMass}.`)
	if (more.visitDate !== undefined && pair.acquired !== undefined && !trainer) {
		const months = (dayNumber(more.visitDate) - dayNumber(pair.acquired)) / 30.4375
		if (months >= protocol.value('footwear.ageCheckMonths'))
			reasons.push(`Owned for ${rounded(months, 0)} months: check it as for a worn pair.`)
	}
	const offset = pair.heelToForefootOffsetMm
	if (
		more.offsetMinMm !== undefined &&
		offset !== undefined &&
		offset + (pair.heelLiftMm ?? 0) < more.offsetMinMm
	) {
		const raise = rounded(more.offsetMinMm - offset, 1)
		const limit = protocol.value('ankle.raiseWarnMm')
		reasons.push(
			raise <= limit
				? `Offset ${offset} mm is below the ${more.offsetMinMm} mm sought: a heel raise of ` +
						`${raise} mm inside would make it up.`
				: `Offset ${offset} mm is below the ${more.offsetMinMm} mm sought; making it up needs a ` +
						`${raise} mm raise, above the ${limit} mm limit in use.`,
		)
	}
	if (pair.brokenIn === false)
		reasons.push(
			`Not broken in: no match before ${protocol.value('footwear.breakInMinutes')} training ` +
				'minutes without a sore spot.',
		)

	// When it will be outgrown: growth of the longer foot against the least toe room
	const { runsOutOn: replaceBy, earliest: first, latest: last } = more.toeRoom ?? {}
	if (replaceBy !== undefined)
		reasons.push(
			`By the growth forecast its toe room falls below ${least} mm about ` +
				`${dayInWords(replaceBy)}${first && first < replaceBy ? ` (as early as ${dayInWords(first)} if growth is fast)` : ''}: ` +
				'plan the next pair.',
		)
	const made = (verdict: CurrentPair['verdict'], says: string): CurrentPair => ({
		id: pair.id,
		...(toeRoomMm === undefined ? {} : { toeRoomMm }),
		verdict,
		says: [says, ...reasons].join(' ').trim(),
		...(reasons.length > 0 ? { reasons } : {}),
		...(replaceBy === undefined
			? {}
			: {
					replaceBy,
					...(first === undefined
						? {}
						: { replaceBetween: { from: first, ...(last === undefined ? {} : { to: last }) } }),
				}),
	})
	if (hours !== undefined && hours >= life)
		return made(
			'replace',
			`Worn ${rounded(hours, 0)} hours of an expected ${rounded(life, 0)}: replace${byMass}.`,
		)
	const broken = damage.some((one) => one.verdict === 'replace'),
		faulty = damage.some((one) => one.verdict === 'change')
	if (toeRoomMm === undefined)
		return made(
			broken ? 'replace' : faulty ? 'change' : 'unknown',
			pair.insideLengthMm === undefined
				? 'Inside length not measured.'
				: 'Foot length not measured.',
		)
	const room = rounded(toeRoomMm, 1)
	if (toeRoomMm < 0)
		return made(
			'replace',
			`Inside it is ${rounded(-toeRoomMm, 1)} mm shorter than the ` +
				`foot${sockMm > 0 ? ' with its sock' : ''}: too short, replace.`,
		)
	if (!adult && toeRoomMm < least)
		return made('replace', `Toe room ${room} mm is below ${least} mm: outgrown, replace.`)
	if (broken) return made('replace', `Toe room ${room} mm.`)
	if (adult && toeRoomMm < least) return made('change', `Toe room ${room} mm is tight.`)
	if (adult && toeRoomMm > protocol.value(band.loose))
		return made('change', `Toe room ${room} mm is loose.`)
	return made(faulty ? 'change' : 'keep', `Toe room ${room} mm.`)
}
