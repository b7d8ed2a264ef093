/**
 * Findings that say one thing stand once: what was found left and right, and what several rules ask
 * of a pair alike. Caveats about a method stand apart, as footnotes. Pure.
 */
import type { PairReason } from '../../../../shared/engine/findings/assessment.ts'
import type { Finding } from '../../../../shared/engine/findings/finding.ts'
import { footnotes } from '../../../../shared/engine/findings/footnotes.table.ts'
import { canonicalJson } from '../../../../shared/engine/plain/canonical.ts'
import { unmirrored } from '../../../../shared/engine/prescription/lines.ts'
import { featureName } from '../../../../shared/engine/words/en/features.ts'
import { listed } from '../../../../shared/engine/words/en/format.ts'
import { capital } from '../../../../shared/engine/words/words.ts'

export interface FindingGroup {
	key: string
	/** One, or several that say one thing. */
	findings: Finding[]
	/** What is said of all of them; each of its parts is a sentence. */
	says: string[]
}
/** The finding of the other side has the same, but for its side. */
const sideless = ({ id, side }: Finding): string =>
	side === 'left' || side === 'right' ? id.replace(/\.(left|right)$/, '') : id
const sameBut = ({ params }: Finding): string => {
	const { side: _, ...others } = params
	return canonicalJson(others)
}
function saysOf(findings: readonly Finding[]): string[] {
	const [first, other] = findings
	if (!first || !other) return findings.map(({ says }) => says)
	// a figure of its own is told; what is the same is not told twice
	return sameBut(first) === sameBut(other)
		? [first.says, `The same on the ${other.side}.`]
		: findings.map(({ says }) => says)
}
/** What a rule asks of the pair, without what is avoided as the opposite of what is sought. */
const asksOf = (finding: Finding, reasons: readonly PairReason[]): string => {
	const asked = reasons.find((reason) => reason.finding === finding.id)
	if (!asked) return ''
	const features = [
		...asked.seek.map(featureName),
		...unmirrored(asked.avoid, asked.seek).map((feature) => `no ${featureName(feature)}`),
	]
	return features.length > 0 ? `${capital(listed(features))}:` : ''
}
/** @param reasons what each finding asks of the pair in question; none for other questions */
export function groupsOf(
	findings: readonly Finding[],
	reasons: readonly PairReason[] = [],
): FindingGroup[] {
	const told = findings.filter(({ code }) => !footnotes.has(code))
	const keyOf = (finding: Finding) => {
		const asks = asksOf(finding, reasons)
		return asks === '' ? `${finding.level} ${sideless(finding)}` : `${finding.level} ${asks}`
	}
	return [...Map.groupBy(told, keyOf)].map(([key, alike]) => {
		const asks = alike.length > 1 && alike[0] ? asksOf(alike[0], reasons) : ''
		return {
			key,
			findings: alike,
			says: asks === '' ? saysOf(alike) : [asks, ...alike.map(({ says }) => says)],
		}
	})
}
export const footnotesOf = (findings: readonly Finding[]): Finding[] =>
	findings.filter(({ code }) => footnotes.has(code))
