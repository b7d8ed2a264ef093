/** What the prescription says of each pair, as the rotation keeps it. Nothing is judged here again. */
import type { Kept, OwnedPair } from '../../findings/assessment.ts'
import { type Finding, findingOf } from '../../findings/finding.ts'
import { present } from '../../plain/present.ts'
import { pairsLeftOff } from '../../prescription/owned.ts'
import { commonPractice } from '../../protocol/basis.ts'
import type { NamedPair } from '../../words/en/season/wearing.ts'
import { state } from '../../words/statement.ts'
import type { Owned, Slot } from './problem.ts'

/** Pairs as the prescription judges them. */
export type Judged = readonly Kept<OwnedPair>[]
type Limits = Pick<Owned, 'leftOff' | 'trainingOnly' | 'lastDay' | 'outgrownOn'>
interface SaidOfPair {
	code?: unknown
	params?: { on?: unknown }
}
/** The grounds of a verdict, by their codes. */
const groundsOf = ({ params }: Kept<OwnedPair>): readonly SaidOfPair[] => {
	const said = params?.said
	return Array.isArray(said) ? said : []
}
/** With these a pair is never worn, whatever verdict it was given: a toe at its end, a wound, a fall. */
const neverWorn: readonly unknown[] = ['owned.touches', 'pairs.stud-sharp', 'pairs.sole-separated']
const isNeverWorn = (pair: Kept<OwnedPair>): boolean =>
	pairsLeftOff([pair]).length > 0 || groundsOf(pair).some(({ code }) => neverWorn.includes(code))
/** For training only until it is broken in: of a new pair its ladder says when that is. */
const isNotBrokenIn = (pair: Kept<OwnedPair>): boolean =>
	groundsOf(pair).some(({ code }) => code === 'pairs.not-broken-in')
/** The day on which growth takes its room, ISO date; undefined where it lasts. */
function outgrownOn(pair: Kept<OwnedPair>): string | undefined {
	const ground = groundsOf(pair).find(({ code }) => code === 'pairs.outgrown-by')
	const on = ground?.params?.on
	return typeof on === 'string' ? on : undefined
}
/** What the rotation keeps of one pair: left off, for trainings only, or worn until a day. */
export function limitsOfPair({ id, isNew }: Pick<Owned, 'id' | 'isNew'>, judged: Judged): Limits {
	const [pair] = judged.filter((one) => one.id === id)
	if (!pair) return {}
	const grown = outgrownOn(pair)
	const trainingOnly = pair.verdict === 'training-only' && !(isNew && isNotBrokenIn(pair))
	const replaceBy = pair.verdict === 'replace' ? pair.by : undefined
	return present({
		leftOff: isNeverWorn(pair) ? (true as const) : undefined,
		trainingOnly: trainingOnly ? (true as const) : undefined,
		// a day that was set for it stands before the one that growth is forecast to set
		lastDay: replaceBy ?? grown,
		outgrownOn: replaceBy === undefined ? grown : undefined,
	})
}
/** Why a pair may not be worn in a session by its limits; undefined where it may. */
export function barredByLimits(
	{ leftOff, trainingOnly, lastDay }: Limits,
	{ date, kind }: Pick<Slot, 'date' | 'kind'>,
) {
	if (leftOff) return { why: 'left-off' } as const
	if (trainingOnly && kind === 'match') return { why: 'training-only' } as const
	if (lastDay !== undefined && date > lastDay) return { why: 'replaced', by: lastDay } as const
	return undefined
}
const basis = { rule: 'verdicts on the pairs owned', ...commonPractice }
/** One finding for each pair that is not worn, not in matches, or not after a day. */
export const limitFindings = (pairs: readonly (Limits & NamedPair & { id: string })[]): Finding[] =>
	pairs.flatMap((pair) => {
		const told = toldOf(pair)
		if (!told) return []
		const [is, said, level] = told
		return [
			findingOf(said, {
				id: `season.${is}-${pair.id}`,
				side: 'none',
				level,
				because: [{ measure: 'limitedPair', value: pair.name }],
				basis,
			}),
		]
	})
function toldOf({
	leftOff,
	trainingOnly,
	lastDay,
	outgrownOn: grown,
	...pair
}: Limits & NamedPair) {
	const named = { letter: pair.letter, name: pair.name }
	if (leftOff) return ['left-off', state('season.left-off', named), 'caution'] as const
	if (trainingOnly) return ['training-only', state('season.training-only', named), 'note'] as const
	// what growth takes is told with its forecast
	if (lastDay === undefined || grown !== undefined) return undefined
	return ['replace-by', state('season.replace-by', { ...named, by: lastDay }), 'advise'] as const
}
/** Ids of pairs that are to be replaced: worn less willingly until then. */
export const toReplace = (judged: Judged): string[] =>
	judged.filter(({ verdict }) => verdict === 'replace').map(({ id }) => id)
