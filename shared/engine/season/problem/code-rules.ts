/**
 * What a code of football forbids on the foot. A row for each rule that has a source; soles and
 * surfaces are the suitability table's affair.
 */
import type { Finding } from '../../findings/finding.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import { type Code, termWords } from '../../visit/terms.ts'
import type { Pair } from '../../visit/visit.ts'
import type { Slot } from './problem.ts'

interface CodeRule {
	id: string
	codes: readonly Code[]
	most: ThresholdKey
	value: (pair: Pair) => number | undefined
	says: (value: number, most: number) => string
}
const codeRules: readonly CodeRule[] = [
	{
		id: 'season.stud-length',
		codes: ['rugby-union'],
		most: 'season.rugbyStudMm',
		value: (pair) => pair.studHeightMm,
		says: (value, most) => `studs of ${value} mm, at most ${most} mm`,
	},
]
/** How a reason of this kind begins. */
export const barredWords = 'not allowed in'
const brokenBy = (pair: Pair, code: Code, protocol: Protocol) =>
	codeRules
		.filter((rule) => rule.codes.includes(code))
		.flatMap((rule) => {
			const value = rule.value(pair)
			const most = protocol.value(rule.most)
			return value !== undefined && value > most ? [{ rule, value, most }] : []
		})
/** Why a pair may not be worn in a code, or undefined where it may. */
export function barredBy(
	pair: Pair,
	code: Code | undefined,
	protocol: Protocol,
): string | undefined {
	if (code === undefined) return undefined
	const [broken] = brokenBy(pair, code, protocol)
	return (
		broken && `${barredWords} ${termWords(code)}: ${broken.rule.says(broken.value, broken.most)}`
	)
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
	return pairs.flatMap((pair) =>
		codes.flatMap((code) =>
			brokenBy(pair, code, protocol).map(
				({ rule, value, most }): Finding => ({
					id: `${rule.id}-${pair.id}`,
					topic: 'season',
					side: 'none',
					level: 'caution',
					says:
						`Pair ${letters.get(pair.id)} (${pair.name ?? pair.id}) is not planned for ` +
						`${termWords(code)}: ${rule.says(value, most)} are allowed. Put in shorter ` +
						'studs, measure again, then plan.',
					because: [{ measure: 'longest stud', value, unit: 'mm' }],
					basis: protocol.basis(rule.id, rule.most),
				}),
			),
		),
	)
}
