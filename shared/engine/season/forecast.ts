/** Wear, toe room and the moments to buy. */
import type { GrowthResult } from '../findings/assessment.ts'
import type { Suitability } from '../protocol/norms/suitability.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { addDays, ageYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import { type Sole, soles, termWords } from '../visit/terms.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import { ladderMinutes } from './ladder.ts'
import { fullDay } from './pattern.ts'
import type { Plan, PlanPair } from './plan-file.ts'
import type { Rotation, SeasonProblem } from './problem.ts'

/**
 * Wear of a pair along the season: each month's end, and the dates at which it reaches the window
 * of replacement.
 */
export function wearOf(
	problem: SeasonProblem,
	rotation: Rotation,
	p: number,
	season: { from: string; to: string },
	protocol: Protocol,
): { minutes: number; wear: PlanPair['wear']; checkBy?: string; wornOutBy?: string } {
	const pair = problem.pairs[p]!
	let minutes = pair.startMinutes
	let [checkBy, wornOutBy]: [string | undefined, string | undefined] = [
		undefined,
		minutes >= pair.lifeMinutes ? season.from : undefined,
	]
	const wear: PlanPair['wear'] = []
	const usual = Math.min(...problem.slots.map((slot) => slot.minutes), pair.lifeMinutes)
	const ends = new Map<string, number>()
	for (const [s, slot] of problem.slots.entries()) {
		const used = slot.counts
			? rotation.uses[s]!.filter((use) => use.pair === p).reduce((sum, use) => sum + use.minutes, 0)
			: 0
		minutes += used
		if (checkBy === undefined && minutes >= protocol.value('season.checkShare') * pair.lifeMinutes)
			checkBy = slot.date
		// worn out: what is left does not last the shortest session
		if (wornOutBy === undefined && minutes + usual > pair.lifeMinutes) wornOutBy = slot.date
		ends.set(slot.date.slice(0, 7), minutes)
	}
	for (const [month, total] of ends) {
		const [year = 0, number = 1] = month.split('-').map(Number)
		wear.push({
			date: new Date(Date.UTC(year, number, 0)).toISOString().slice(0, 10),
			wearFraction: rounded(total / pair.lifeMinutes, 4),
		})
	}
	return {
		minutes,
		wear,
		...(checkBy === undefined ? {} : { checkBy }),
		...(wornOutBy === undefined ? {} : { wornOutBy }),
	}
}
/**
 * Toe room of a pair in mm against the forecast of the longer foot; undefined where either is
 * unknown.
 */
export function toeRoomOf(
	pair: Pair,
	visit: Visit,
	growth: GrowthResult | undefined,
	protocol: Protocol,
): Pick<PlanPair, 'toeRoom' | 'outgrownBy' | 'measureAgainBy'> {
	const inside = pair.insideLengthMm
	if (inside === undefined || !growth?.footForecast) return {}
	const trainer = pair.sole === 'road' || pair.sole === 'trail'
	const young =
		ageYears(visit.player.birthDate, visit.visitDate) < protocol.value('footwear.adultFromYears')
	const least = protocol.value(
		young
			? trainer
				? 'footwear.youthTrainerReplaceMm'
				: 'footwear.youthReplaceMm'
			: trainer
				? 'footwear.adultTrainerTightMm'
				: 'footwear.adultTightMm',
	)
	const room = (lengthMm: number): number =>
		rounded(inside - lengthMm - (visit.feet?.sockMm ?? 0), 1)
	const toeRoom = growth.footForecast.map((one) => ({
		date: one.date,
		toeRoomMm: room(one.lengthMm),
		lowMm: room(one.highMm),
		highMm: room(one.lowMm),
	}))
	const outgrownBy = toeRoom.find((one) => one.toeRoomMm < least)?.date
	const again = [toeRoom.find((one) => one.lowMm < least)?.date, growth.measureAgainBy]
		.filter((one): one is string => one !== undefined)
		.sort()[0]
	return {
		toeRoom,
		...(outgrownBy === undefined ? {} : { outgrownBy }),
		...(again === undefined ? {} : { measureAgainBy: again }),
	}
}
const suits = (suitability: Suitability, sole: Sole, problem: SeasonProblem, s: number): boolean =>
	suitability[sole][problem.slots[s]!.surface][problem.slots[s]!.ground] !== 'forbidden'
/**
 * The day to buy a pair that must be broken in by `neededBy`: the first of the last trainings whose
 * ladder reaches match minutes, and a few days for the house.
 */
export function buyBy(
	problem: SeasonProblem,
	suitability: Suitability,
	sole: Sole,
	neededBy: string,
	today: string,
): string {
	const trainings = problem.slots.flatMap((slot, s) =>
		slot.kind === 'training' &&
		slot.date < neededBy &&
		slot.date >= today &&
		suits(suitability, sole, problem, s)
			? [slot]
			: [],
	)
	for (let n = 1; n <= trainings.length; n++) {
		const last = trainings.slice(-n)
		if (
			(ladderMinutes(
				last.map((slot) => slot.minutes),
				problem.breakIn,
			).at(-1) ?? 0) >= problem.matchFromMinutes
		) {
			const day = addDays(last[0]!.date, -3)
			return day < today ? today : day
		}
	}
	return today
}
/** The sole that suits a session best. */
const bestSole = (suitability: Suitability, problem: SeasonProblem, s: number): Sole => {
	const points = (sole: Sole) => {
		const one = suitability[sole][problem.slots[s]!.surface][problem.slots[s]!.ground]
		return one === 'forbidden' ? 99 : one
	}
	return [...soles].sort((a, b) => points(a) - points(b))[0]!
}
/**
 * What to buy and when, the first need of each sole only. A new pair already entered answers a need
 * of its sole.
 */
export function purchasesOf(
	problem: SeasonProblem,
	suitability: Suitability,
	pairs: readonly PlanPair[],
	noPair: readonly number[],
	from: string,
): Plan['purchases'] {
	const needs = [
		...pairs.flatMap((pair) =>
			pair.replaceBy === undefined
				? []
				: [
						{
							sole: pair.sole as Sole,
							neededBy: pair.replaceBy < from ? from : pair.replaceBy,
							instead: pair.id,
							why:
								`to replace ${pair.name}, ` +
								`${pair.replaceBy === pair.outgrownBy ? 'likely outgrown' : 'worn out'} by ` +
								`${fullDay(pair.replaceBy)}`,
						},
					],
		),
		...noPair.map((s) => ({
			sole: bestSole(suitability, problem, s),
			neededBy: problem.slots[s]!.date,
			instead: undefined,
			why:
				`no pair may be worn on ${fullDay(problem.slots[s]!.date)} ` +
				`(${termWords(problem.slots[s]!.surface)}, ${problem.slots[s]!.ground})`,
		})),
	].sort((a, b) => (a.neededBy < b.neededBy ? -1 : 1))
	const seen = new Set<Sole>()
	return needs.flatMap(({ sole, neededBy, instead, why }) => {
		const coming = problem.pairs.some(
			(pair) =>
				pair.sole === sole &&
				pair.id !== instead &&
				pair.newFrom !== undefined &&
				pair.newFrom <= neededBy,
		)
		if (seen.has(sole) || coming) return []
		seen.add(sole)
		const day = buyBy(problem, suitability, sole, neededBy, from)
		return [
			{
				sole,
				buyBy: day,
				neededBy,
				...(instead === undefined ? {} : { instead }),
				says:
					`Buy a ${termWords(sole)} pair by ${fullDay(day)}: ${why}. Bought by then, its ` +
					'breaking in is over in time.',
			},
		]
	})
}
