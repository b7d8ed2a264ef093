/**
 * What stands after the clinician's decisions: dropped lines are gone, changed lines carry the
 * clinician's words; a finding whose content is another than when it was decided stands in its own
 * words.
 */
import type { FeatureWish, Kept, KeptAssessment } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { type Decisions, standingLine } from '../visit/decisions.ts'

export interface StandingLine {
	id: string
	says: string
	level: Finding['level']
	topic: Finding['topic']
	finding?: Kept<Finding>
	/** `says` is what the clinician typed. */
	typed: boolean
}

/** Every finding that was not dropped, in the words that stand, then the clinician's own lines. */
export function standingLines(assessment: KeptAssessment, decisions: Decisions): StandingLine[] {
	const kept = assessment.findings.flatMap((finding): StandingLine[] => {
		const decision = standingLine(decisions, finding.id, finding)
		if (decision?.choice === 'drop') return []
		const typed = decision?.choice === 'change' ? decision.says : undefined
		return [
			{
				id: finding.id,
				says: typed || finding.says,
				typed: !!typed,
				level: finding.level,
				topic: finding.topic,
				finding,
			},
		]
	})
	const own = decisions.lines
		.filter((line) => line.choice === 'add' && line.says)
		.map(
			(line): StandingLine => ({
				id: line.findingId,
				says: line.says ?? '',
				typed: true,
				level: 'advise',
				topic: 'footwear',
			}),
		)
	return [...kept, ...own]
}
/** Whether the clinician dropped what a rule asks of a pair. */
function isDropped(
	decisions: Decisions,
): (kind: 'seek' | 'avoid', wish: Pick<FeatureWish, 'feature'>) => boolean {
	const dropped = new Set(
		decisions.lines.filter((line) => line.choice === 'drop').map((line) => line.findingId),
	)
	return (kind, { feature }) => dropped.has(`${kind}.${feature}`)
}
/** Seek or avoid as decided, one row a feature, with every reason. */
export function standingWishes(
	wishes: readonly Kept<FeatureWish>[],
	kind: 'seek' | 'avoid',
	decisions: Decisions,
): { feature: FeatureWish['feature']; wishes: Kept<FeatureWish>[] }[] {
	const isGone = isDropped(decisions)
	const standing = wishes.filter((wish) => !isGone(kind, wish))
	const rows = Map.groupBy(standing, (wish) => wish.feature)
	return [...rows].map(([feature, list]) => ({ feature, wishes: list }))
}
