/**
 * What a code of football forbids on the foot. A row for each rule that has a source; soles and
 * surfaces are the suitability table's affair.
 */
import { type Finding, findingOf, reading } from '../../findings/finding.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import type { Code } from '../../visit/terms.ts'
import type { Pair } from '../../visit/visit.ts'
import type { Barred } from '../../words/en/season/wearing.ts'
import { state } from '../../words/statement.ts'
import type { Slot } from './problem.ts'

interface CodeRule {
	rule: Extract<Barred, { why: 'code' }>['rule']
	/** how the basis names it */
	name: string
	codes: readonly Code[]
	mostMm: ThresholdKey
	/** of the pair, in mm; undefined where it was not measured */
	valueMm: (pair: Pair) => number | undefined
}
const codeRules: readonly CodeRule[] = [
	{
		rule: 'stud-length',
		name: 'longest stud that the code allows',
		codes: ['rugby-union'],
		mostMm: 'season.rugbyStudMm',
		valueMm: (pair) => pair.studHeightMm,
	},
]
const brokenBy = (pair: Pair, code: Code, protocol: Protocol) =>
	codeRules
		.filter((rule) => rule.codes.includes(code))
		.flatMap((rule) => {
			const valueMm = rule.valueMm(pair)
			const mostMm = protocol.value(rule.mostMm)
			return valueMm !== undefined && valueMm > mostMm ? [{ row: rule, valueMm, mostMm }] : []
		})
/** Why a pair may not be worn in a code, or undefined where it may. */
export function barredBy(
	pair: Pair,
	code: Code | undefined,
	protocol: Protocol,
): Barred | undefined {
	if (code === undefined) return undefined
	const [broken] = brokenBy(pair, code, protocol)
	if (!broken) return undefined
	const { row, valueMm, mostMm } = broken
	return { why: 'code', code, rule: row.rule, valueMm, mostMm }
}
/** One finding for each pair that a code of this season forbids. */
export function barredFindings(
	pairs: readonly Pair[],
	slots: readonly Slot[],
	letters: ReadonlyMap<string, string>,
	protocol: Protocol,
): Finding[] {
	const codes = [
		...new Set(slots.filter((slot) => !slot.past).flatMap((slot) => slot.code ?? [])),
	].sort()
	return pairs.flatMap((pair) => {
		const called = { letter: letters.get(pair.id) ?? '?', name: pair.name ?? pair.id }
		return codes.flatMap((code) =>
			brokenBy(pair, code, protocol).map(({ row: { rule, name, mostMm: key }, valueMm, mostMm }) =>
				findingOf(state('season.code-rule', { ...called, code, rule, valueMm, mostMm }), {
					id: `season.${rule}-${pair.id}`,
					side: 'none',
					level: 'caution',
					because: [reading('longestStudMm', valueMm, 'mm')],
					basis: protocol.basis(name, key),
				}),
			),
		)
	})
}
