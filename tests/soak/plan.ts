/** The laws of the plan over many random visits, with what was met on the way. */
import fc from 'fast-check'
import { isHeld } from '../../shared/engine/facts/held.ts'
import { type Case, caseOf } from '../engine/laws/case.ts'
import { brokenBy } from '../engine/laws/laws.ts'
import { raisesRead } from '../engine/laws/printed.ts'
import { type Drawn, drawnVisits } from '../engine/laws/visits.ts'

export interface PlanResult {
	seed: number
	rounds: number
	/** Questions asked at a visit, those that are held left out. */
	questions: { median: number; most90Percent: number; most: number }
	/** How many visits had each. */
	met: Record<string, number>
	/** By law: how many visits broke it. */
	broken: Record<string, number>
	/** The first of them, with the number to try alone. */
	faults: string[]
}
const together = 100
const toldFaults = 40
/** Drawn a hundred at a time, so that one can be had again alone. */
const drawn = (seed: number, hundred: number): Drawn[] =>
	fc.sample(drawnVisits, { seed: seed + hundred, numRuns: together })
const sorted = (counts: readonly number[]): number[] => counts.toSorted((one, other) => one - other)
const shareOf = (counts: readonly number[], share: number): number =>
	sorted(counts)[Math.max(0, Math.ceil(counts.length * share) - 1)] ?? 0

function metIn(one: Case): string[] {
	const { gate, raise, pairs, owned, insert, questions } = one.assessment.prescription
	const has: Readonly<Record<string, boolean>> = {
		'sport held': isHeld(gate, 'sport'),
		'purchase held': isHeld(gate, 'purchase'),
		'anything held': [gate.person, gate.left, gate.right].some(({ state }) => state === 'held'),
		raise: raise.pairs.some(({ left, right }) => left.addMm + right.addMm > 0),
		'raise of one foot': raise.pairs.some(({ left, right }) => left.addMm !== right.addMm),
		'raise printed': raisesRead(one) > 0,
		insert: insert.left.state === 'proposed' || insert.right.state === 'proposed',
		'a wish that gave way': pairs.some(({ settled }) => settled.length > 0),
		'a model to try': pairs.some(({ shelf }) => shelf.length > 0),
		'a pair kept': owned.some(({ verdict }) => verdict === 'keep'),
		'a pair not to be worn': owned.some(({ verdict }) => verdict === 'stop-wearing'),
		'a question unchanged': questions.some(({ unchanged }) => unchanged),
	}
	return Object.keys(has).filter((name) => has[name])
}
/** The visits asked for, each with its number. */
function* numbered(seed: number, first: number, last: number): Generator<[number, Case]> {
	let batch: Drawn[] = []
	for (let round = first; round < last; round++) {
		if (round === first || round % together === 0) batch = drawn(seed, Math.floor(round / together))
		const { visit, earlier } = batch[round % together] as Drawn
		yield [round, caseOf(visit, earlier)]
	}
}
const once = (counts: Record<string, number>, name: string): void => {
	counts[name] = (counts[name] ?? 0) + 1
}
/** @param only the number of one visit, to be tried alone */
export function planLaws(
	rounds: number,
	seed: number,
	{ only }: { only?: number } = {},
	tell: (line: string) => void = () => {},
): PlanResult {
	const [first, last] = only === undefined ? [0, rounds] : [only, only + 1]
	const counts: number[] = []
	const met: PlanResult['met'] = {}
	const broken: PlanResult['broken'] = {}
	const faults: string[] = []
	for (const [round, one] of numbered(seed, first, last)) {
		counts.push(one.assessment.prescription.questions.filter(({ held }) => !held).length)
		for (const what of metIn(one)) once(met, what)
		for (const { law, faults: found } of brokenBy(one)) {
			once(broken, law)
			faults.push(`--only ${round}: ${law}: ${found.slice(0, 3).join('; ')}`)
		}
		if ((round + 1) % 1000 === 0) tell(`plan: ${round + 1} visits`)
	}
	const questions = {
		median: shareOf(counts, 0.5),
		most90Percent: shareOf(counts, 0.9),
		most: shareOf(counts, 1),
	}
	return { seed, rounds: last - first, questions, met, broken, faults: faults.slice(0, toldFaults) }
}
