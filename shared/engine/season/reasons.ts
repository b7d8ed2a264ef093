/** Why this pair and not another, in words a player understands. */
import { addDays } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import { termWords } from '../visit/terms.ts'
import { barredWords } from './code-rules.ts'
import { fullDay, weekdayName } from './pattern.ts'
import { endHour, type Rotation, type SeasonProblem, stillWet, trainingAhead } from './problem.ts'
import type { Checked } from './verify.ts'

const drying = { wet: 'still wet from', damp: 'still damp from', dry: 'not aired since' } as const
const worn = (rotation: Rotation, s: number, p: number): number =>
	(rotation.uses[s] ?? [])
		.filter((use) => use.pair === p)
		.reduce((sum, use) => sum + use.minutes, 0)
/** 'Tuesday' within the week before, otherwise the day in full. */
const dayOf = (problem: SeasonProblem, s: number, seenFrom: number): string => {
	const { date } = problem.slots[s]!
	const seen = problem.slots[seenFrom]!.date
	if (date === seen) return 'earlier the same day'
	return Math.abs(problem.slots[seenFrom]!.startHour - problem.slots[s]!.startHour) < 24 * 6 &&
		date !== addDays(seen, 7)
		? weekdayName(date)
		: fullDay(date)
}
/** Training minutes ahead in a pair. */
const trainedIn = (problem: SeasonProblem, rotation: Rotation, p: number): number =>
	problem.slots.reduce(
		(sum, slot, s) => sum + (slot.kind === 'training' && !slot.past ? worn(rotation, s, p) : 0),
		0,
	)
/** The hindrance to wearing a pair in a session, or undefined where there is none. */
export function hindrance(
	problem: SeasonProblem,
	rotation: Rotation,
	minutesAtEnd: readonly number[],
	k: number,
	p: number,
): string | undefined {
	const pair = problem.pairs[p]!
	const points = problem.cost[k]![p]!
	if (typeof points === 'string') return `${pair.name}: ${points}`
	for (let s = k - 1; s >= 0; s--)
		if (worn(rotation, s, p) > 0 && stillWet(problem, p, s, k))
			return `${pair.name} ${drying[problem.slots[s]!.ground]} ${dayOf(problem, s, k)}`
	const slot = problem.slots[k]!
	const more = slot.minutes - worn(rotation, k, p)
	for (const cap of problem.caps)
		for (const week of cap.weeks) {
			if (!cap.pairs.includes(p) || !week.slots.includes(k)) continue
			// what is worn in this session itself would make room
			const used = week.slots.reduce(
				(sum, s) =>
					sum + (s === k ? 0 : cap.pairs.reduce((one, q) => one + worn(rotation, s, q), 0)),
				0,
			)
			if (used + slot.minutes > week.minutes + 1e-6)
				return `${pair.name}: ${cap.says} (${rounded(used, 0)} of ${week.minutes} used this week)`
		}
	if (
		slot.kind === 'training' &&
		pair.shareMax !== undefined &&
		trainedIn(problem, rotation, p) + more > pair.shareMax * trainingAhead(problem) + 1e-6
	)
		return `${pair.name}: at most ${rounded(100 * pair.shareMax, 0)} % of the training time`
	if (minutesAtEnd[p]! + more > pair.lifeMinutes)
		return `${pair.name}: its remaining life is needed elsewhere`
	for (
		let s = k + 1;
		s < problem.slots.length && problem.slots[s]!.startHour - problem.slots[k]!.startHour < 24 * 7;
		s++
	)
		if (worn(rotation, s, p) > 0 && stillWet(problem, p, k, s))
			return (
				`${pair.name} ${problem.slots[k]!.ground === 'dry' ? 'kept' : 'kept dry'} for ` +
				`${dayOf(problem, s, k) === 'earlier the same day' ? 'later the same day' : dayOf(problem, s, k)}`
			)
	return undefined
}
/** Reasons for the pair worn longest in session k. */
export function reasonsOf(
	problem: SeasonProblem,
	rotation: Rotation,
	minutesAtEnd: readonly number[],
	k: number,
): string[] {
	const slot = problem.slots[k]!
	const uses = rotation.uses[k]!
	const steps = problem.fixed.filter((fixed) => fixed.slot === k && fixed.why === 'break-in')
	const said = steps.map((step) =>
		step.minutes < slot.minutes
			? `start in ${problem.pairs[step.pair]!.name} for ${rounded(step.minutes, 0)} minutes to ` +
				'break them in, then change'
			: `${problem.pairs[step.pair]!.name} whole session: last steps of breaking in`,
	)
	const main = uses
		.filter((use) => !steps.some((step) => step.pair === use.pair))
		.sort((a, b) => b.minutes - a.minutes)[0]
	if (slot.past) return ['already played']
	if (slot.easedWeek !== undefined)
		said.push(
			`week ${slot.easedWeek} back after ${slot.easedDays} days off: ${slot.minutes} of ` +
				`${slot.fullMinutes} minutes`,
		)
	if (!main) return said
	const p = main.pair
	const pair = problem.pairs[p]!
	const points = problem.cost[k]![p]
	if (slot.pin === p) said.push('chosen by the clinician')
	if (uses.length > 1 && steps.length === 0)
		said.push(
			'shared: ' +
				`${uses.map((use) => `${rounded(use.minutes, 0)} minutes in ${problem.pairs[use.pair]!.name}`).join(', then ')}`,
		)
	const able = problem.pairs.flatMap((_, q) =>
		q !== p && typeof problem.cost[k]![q] === 'number' ? [q] : [],
	)
	if (points === 0)
		said.push(
			`${termWords(pair.sole)} sole suits ` +
				`${termWords(slot.surface)}${slot.ground === 'dry' ? '' : `, ${slot.ground}`}`,
		)
	const better = able.filter(
		(q) => typeof points === 'number' && (problem.cost[k]![q] as number) < points,
	)
	const hindered = better.map((q) => hindrance(problem, rotation, minutesAtEnd, k, q))
	said.push(...hindered.filter((one): one is string => one !== undefined))
	const forShare =
		slot.kind === 'training' &&
		pair.shareMin !== undefined &&
		trainedIn(problem, rotation, p) - worn(rotation, k, p) < pair.shareMin * trainingAhead(problem)
	if (forShare && better.length > 0)
		said.push(
			`worn for a share of at least ${rounded(100 * pair.shareMin!, 0)} % of the training time`,
		)
	else
		for (const [i, q] of better.entries())
			if (hindered[i] === undefined && slot.pin !== p)
				said.push(
					`${problem.pairs[q]!.name} suit the surface better but are needed elsewhere this week`,
				)
	const equal = able.filter((q) => problem.cost[k]![q] === points)
	const resting = equal
		.map((q) => hindrance(problem, rotation, minutesAtEnd, k, q))
		.filter((one): one is string => one !== undefined)
	if (resting.length > 0) said.push(resting[0]!)
	else if (equal.length > 0) said.push(`shares the wear with ${problem.pairs[equal[0]!]!.name}`)
	for (const [q, why] of problem.cost[k]!.entries())
		if (typeof why === 'string' && why.startsWith(barredWords))
			said.push(`${problem.pairs[q]!.name} ${why}`)
	if (able.length === 0) said.push('the only pair that may be worn here')
	else if (better.length === 0 && points !== 0 && equal.length === 0)
		said.push(
			'the most suitable pair for ' +
				`${termWords(slot.surface)}${slot.ground === 'dry' ? '' : `, ${slot.ground}`}`,
		)
	return [...new Set(said)]
}
export type UnmetKind = 'no-pair' | 'not-dry' | 'unfamiliar' | 'pin'
export interface Unmet {
	kind: UnmetKind
	slot: number
	says: string
}
/** Every wish of the season that the rotation could not meet, in order of time. */
export function unmetOf(problem: SeasonProblem, rotation: Rotation, checked: Checked): Unmet[] {
	const why = (k: number, p: number): string =>
		hindrance(problem, rotation, checked.minutes, k, p) ??
		`${problem.pairs[p]!.name} are needed elsewhere`
	const list: Unmet[] = [
		...checked.noPair.map(
			(slot): Unmet => ({
				kind: 'no-pair',
				slot,
				says:
					problem.pairs.length === 0
						? 'no pair to wear: none is recorded with its sole'
						: 'no pair ' +
							`${rotation.uses[slot]!.length > 0 ? 'for the rest of the session' : 'to wear'}: ` +
							`${problem.pairs.map((_, p) => why(slot, p)).join('; ')}`,
			}),
		),
		...checked.notDry.map(({ slot, pair }): Unmet => {
			let s = slot - 1
			while (s >= 0 && !(worn(rotation, s, pair) > 0 && stillWet(problem, pair, s, slot))) s--
			const before = problem.slots[s]!
			return {
				kind: 'not-dry',
				slot,
				says:
					`${problem.pairs[pair]!.name} may not be dry: worn ${dayOf(problem, s, slot)}, ` +
					`${rounded(problem.slots[slot]!.startHour - endHour(before), 0)} h before, ` +
					`${problem.pairs[pair]!.dryingHours[before.ground]} h wanted`,
			}
		}),
		...checked.unfamiliar.map(
			({ slot, pair }): Unmet => ({
				kind: 'unfamiliar',
				slot,
				says:
					`no training in ${problem.pairs[pair]!.name} in the ` +
					`${problem.weights.familiarDays} days before this match`,
			}),
		),
		...checked.pinMissed.map(
			(slot): Unmet => ({
				kind: 'pin',
				slot,
				says: `the pinned pair could not be worn. ${why(slot, problem.slots[slot]!.pin!)}`,
			}),
		),
		...problem.slots.flatMap((slot, s): Unmet[] =>
			!slot.past &&
			slot.pin !== undefined &&
			typeof problem.cost[s]![slot.pin] === 'string' &&
			!rotation.uses[s]!.some((use) => use.pair === slot.pin)
				? [{ kind: 'pin', slot: s, says: `the pinned pair may not be worn. ${why(s, slot.pin)}` }]
				: [],
		),
	]
	return list.sort((a, b) => a.slot - b.slot)
}
