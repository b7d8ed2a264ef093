/** Under which question each finding is read: one question for each finding. */
import type { FootwearResult, RolePair } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { PairRole } from '../visit/terms.ts'
import { routes, type Subject } from './routes.table.ts'

/** What tells which role a finding about footwear belongs to. */
export interface RoutedBy {
	footwear: Pick<FootwearResult, 'target'>
	pairs: readonly RolePair[]
	roles: readonly PairRole[]
}
function subjectOf({ code }: Pick<Finding, 'code'>): Subject {
	const fitting = routes.filter(([beginning]) => code.startsWith(beginning))
	const [, subject] = fitting.reduce(
		(best, route) => (route[0].length > best[0].length ? route : best),
		['', 'review'] as (typeof routes)[number],
	)
	return subject
}
/** Features that a rule of footwear wishes or refuses. */
const featuresOf = ({ target }: RoutedBy['footwear'], id: string): Set<string> =>
	new Set(
		[...target.seek, ...target.avoid]
			.filter(({ rule }) => id === `footwear.${rule}`)
			.map(({ feature }) => feature),
	)
/** The first role whose pair takes up what the finding asks for, else the first that is worn. */
function roleOf({ id }: Finding, { footwear, pairs, roles }: RoutedBy): PairRole | undefined {
	const features = featuresOf(footwear, id)
	const taken = pairs.find(({ seek, avoid }) =>
		[...seek, ...avoid].some((feature) => features.has(feature)),
	)
	return taken?.role ?? pairs[0]?.role ?? roles[0]
}
/** The id of the question under which a finding is read. */
export function questionOf(finding: Finding, by: RoutedBy): string {
	const subject = subjectOf(finding)
	if (subject !== 'pair') return subject
	const role = roleOf(finding, by)
	return role === undefined ? 'review' : `pair.${role}`
}
