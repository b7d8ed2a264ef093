/**
 * Checks a rotation against the rules in plain loops. It knows the problem and the rotation, and
 * nothing of the solver or its model.
 * Hard rules give `problems`; wishes that may go unmet are listed and counted in the cost.
 */
import { noPairPoints, type Rotation, type SeasonProblem, type Use } from './problem.ts'

export interface Cell {
	slot: number
	pair: number
}
export interface Checked {
	/** broken hard rules, in words; a sound plan has none */ problems: string[]
	noPair: number[]
	pinMissed: number[]
	notDry: Cell[]
	unfamiliar: Cell[]
	changes: number
	/** training minutes of a pair above (positive) or below (negative) the share asked for */ share: {
		pair: number
		minutes: number
	}[]
	/** hours times suitability points */ suitability: number
	/** all points of the first two tiers */ cost: number
	/** minutes of each pair at the end, recorded ones included */ minutes: number[]
}
const worn = (uses: readonly Use[], pair: number): number =>
	uses.filter((use) => use.pair === pair).reduce((sum, use) => sum + use.minutes, 0)

export function verify(problem: SeasonProblem, rotation: Rotation): Checked {
	const { slots, pairs, cost, weights, fixed } = problem
	const problems: string[] = []
	const out: Checked = {
		problems,
		noPair: [],
		pinMissed: [],
		notDry: [],
		unfamiliar: [],
		changes: 0,
		share: [],
		suitability: 0,
		cost: 0,
		minutes: pairs.map((pair) => pair.startMinutes),
	}
	const settled = (s: number, p: number) =>
		fixed
			.filter((one) => one.slot === s && one.pair === p)
			.reduce((sum, one) => sum + one.minutes, 0)
	if (rotation.uses.length !== slots.length) {
		problems.push(`sessions: ${rotation.uses.length} planned, ${slots.length} expected`)
		return out
	}
	const hoursFrom = (s: number, k: number) =>
		slots[k]!.startHour - (slots[s]!.startHour + slots[s]!.minutes / 60)
	for (const [k, slot] of slots.entries()) {
		const uses = rotation.uses[k]!
		const at = `${slot.date} ${slot.start}`
		const total = uses.reduce((sum, use) => sum + use.minutes, 0)
		const before = [...out.minutes]
		for (const p of pairs.keys())
			if (Math.abs(Math.min(settled(k, p), worn(uses, p)) - settled(k, p)) > 1e-3)
				problems.push(`${at}: settled minutes of ${pairs[p]!.id} are missing`)
		if (slot.past) {
			for (const use of uses) if (slot.counts) out.minutes[use.pair]! += use.minutes
			continue
		}
		const free =
			slot.minutes -
			fixed.filter((one) => one.slot === k).reduce((sum, one) => sum + one.minutes, 0)
		const chosen = uses.filter((use) => settled(k, use.pair) === 0)
		if (free > 1e-6 && chosen.length === 0) out.noPair.push(k)
		else if (Math.abs(total - slot.minutes) > 1e-2)
			problems.push(`${at}: ${total} of ${slot.minutes} minutes are planned`)
		if (chosen.length > 1) {
			if (slot.split) out.changes += 1
			else problems.push(`${at}: more than one pair in a session that is not shared`)
		}
		for (const use of chosen)
			if (use.minutes < Math.min(problem.shortestPartMinutes, free) - 1e-2)
				problems.push(
					`${at}: ${pairs[use.pair]!.id} is worn for ${use.minutes} minutes only, at least ` +
						`${problem.shortestPartMinutes} are wanted`,
				)
		if (chosen.length > 2) problems.push(`${at}: more than two pairs in one session`)
		if (
			free > 1e-6 &&
			slot.pin !== undefined &&
			typeof cost[k]![slot.pin] === 'number' &&
			settled(k, slot.pin) === 0 &&
			worn(chosen, slot.pin) < free - 1e-2
		)
			out.pinMissed.push(k)
		for (const use of uses) {
			const pair = pairs[use.pair]!
			const isSettled = settled(k, use.pair) > 0
			const points = cost[k]![use.pair]!
			if (!isSettled && typeof points !== 'number')
				problems.push(`${at}: ${pair.id} may not be worn (${points})`)
			if (!isSettled && typeof points === 'number') out.suitability += (points * use.minutes) / 60
			// drying: any earlier wear that ended too short a time before
			const wet = slots.flatMap((_, s) =>
				s < k &&
				worn(rotation.uses[s]!, use.pair) > 0 &&
				hoursFrom(s, k) < pair.dryingHours[slots[s]!.ground] - 1e-9
					? [s]
					: [],
			)
			if (wet.some((s) => slots[s]!.ground === 'wet'))
				problems.push(`${at}: ${pair.id} is soaked from an earlier session`)
			else if (wet.length > 0 && !isSettled) out.notDry.push({ slot: k, pair: use.pair })
			// break-in and match eligibility of a new pair
			if (pair.isNew) {
				const most = problem.breakIn.firstMinutes + problem.breakIn.share * before[use.pair]!
				if (use.minutes > most + 1e-6)
					problems.push(`${at}: ${pair.id} is worn ${use.minutes} minutes, break-in allows ${most}`)
				if (slot.kind === 'match' && before[use.pair]! < problem.matchFromMinutes - 1e-6)
					problems.push(
						`${at}: ${pair.id} has ${before[use.pair]} minutes of ${problem.matchFromMinutes} ` +
							'before a match',
					)
			}
			if (slot.kind === 'match' && !isSettled) {
				const first = slot.startHour - 24 * weights.familiarDays
				const trained = slots.some(
					(one, s) =>
						s < k &&
						one.kind === 'training' &&
						one.startHour >= first &&
						worn(rotation.uses[s]!, use.pair) > 0,
				)
				if (first >= slots[0]!.startHour && !trained)
					out.unfamiliar.push({ slot: k, pair: use.pair })
			}
			if (slot.counts) out.minutes[use.pair]! += use.minutes
			if (out.minutes[use.pair]! > pair.lifeMinutes + 1e-2 && !isSettled)
				problems.push(`${at}: ${pair.id} is worn past its life of ${pair.lifeMinutes} minutes`)
		}
	}
	for (const cap of problem.caps)
		for (const week of cap.weeks) {
			const sum = week.slots.reduce(
				(all, s) => all + cap.pairs.reduce((one, p) => one + worn(rotation.uses[s]!, p), 0),
				0,
			)
			if (sum > week.minutes + 1e-2)
				problems.push(`week of ${week.monday}: ${sum} minutes, ${cap.says}`)
		}
	const trainings = slots.flatMap((slot, s) => (slot.kind === 'training' && !slot.past ? [s] : []))
	const ahead = trainings.reduce((sum, s) => sum + slots[s]!.minutes, 0)
	for (const [p, pair] of pairs.entries()) {
		const used = trainings.reduce((sum, s) => sum + worn(rotation.uses[s]!, p), 0)
		const [over, under] = [
			pair.shareMax === undefined ? 0 : used - pair.shareMax * ahead,
			pair.shareMin === undefined ? 0 : pair.shareMin * ahead - used,
		]
		if (over > 1e-6) out.share.push({ pair: p, minutes: over })
		if (under > 1e-6) out.share.push({ pair: p, minutes: -under })
	}
	out.cost =
		(weights.shareBound / 60) * out.share.reduce((sum, one) => sum + Math.abs(one.minutes), 0) +
		out.noPair.reduce((sum, s) => sum + noPairPoints(problem, s), 0) +
		weights.pin * out.pinMissed.length +
		weights.notDry * out.notDry.length +
		weights.unfamiliar * out.unfamiliar.length +
		weights.change * out.changes +
		out.suitability
	return out
}
