/** What danger there is, and why, in the words of the reader. */
import { actions, type Gate, type KeptAssessment } from '../../findings/assessment.ts'
import { isSeenThere } from '../../prescription/emergency-department.ts'
import type { StatementCode } from '../../words/statement.ts'
import type { ReportInput } from '../inputs.ts'
import type { Notes } from '../notes.ts'
import { planOf } from '../plan-of.ts'
import { type Reader, toldBy } from '../reader.ts'
import { awaitsFootReview, type Danger, dangerOf } from '../waits.ts'

/** Something that a doctor or the foot clinic looks at, while sport goes on. */
function careOf(gate: Gate): Danger | undefined {
	const parts = [gate.person, gate.left, gate.right]
	const isWanted = parts.some(({ action }) => action === 'letter') || awaitsFootReview(gate)
	if (!isWanted) return undefined
	const because = new Set(parts.flatMap((part) => part.because))
	return { action: 'letter', isUrgent: false, stops: [], noWeight: [], because }
}
/** What page one begins with: danger, or somebody to be seen; undefined where neither is. */
export function concernOf(input: ReportInput): Danger | undefined {
	const { gate } = planOf(input)
	return dangerOf(gate, input.visit.visitDate) ?? careOf(gate)
}
/** Its page has a section of its own. */
const ofFootReview: ReadonlySet<string | undefined> = new Set<StatementCode>([
	'screening.foot-at-risk',
])
/** What holds without a sign that asks for a doctor: severe pain, an operation not cleared. */
const heldByFacts = ({ findings, screening }: Pick<KeptAssessment, 'findings' | 'screening'>) =>
	findings
		.filter(
			({ id, level, topic, code }) =>
				topic === 'screening' &&
				level === 'caution' &&
				!ofFootReview.has(code) &&
				!screening.items.some((item) => item.id === id),
		)
		.map((finding) => ({ ...finding, action: 'proceed' as const }))
/** A reason with the finding that it stands for. */
interface Reason {
	id: string
	says: string
}
/**
 * What the concern rests on, most urgent first, in the reader's words; `isWhole` where that includes
 * the most urgent of it. Where danger is, a sign that asks for nothing is no part of it.
 * @param notes where sources are listed
 */
export function reasonsFor(
	reader: Reader,
	{ assessment }: Pick<ReportInput, 'assessment'>,
	{ action: highest, because }: Danger,
	notes?: Notes,
): { isWhole: boolean; said: Reason[] } {
	const ofSigns = assessment.screening.items.filter((item) => item.state === 'yes')
	const found = [...ofSigns, ...heldByFacts(assessment)]
		.filter(({ id }) => because.has(id))
		.toSorted(
			(one, other) =>
				actions.indexOf(other.action) - actions.indexOf(one.action) ||
				Number(isSeenThere(other)) - Number(isSeenThere(one)),
		)
		.flatMap(({ action, basis, ...item }) => {
			const says = toldBy(reader, item)
			if (says === undefined) return []
			notes?.mark(basis)
			return [{ action, id: item.id, says }]
		})
	return { isWhole: found.some(({ action }) => action === highest), said: found }
}
/** Ids of what page one has said of danger. */
export function dangerSaid(reader: Reader, input: ReportInput): ReadonlySet<string> {
	const concern = concernOf(input)
	if (!concern) return new Set()
	const said = reasonsFor(reader, input, concern).said.map(({ id }) => id)
	// danger that has no words for this reader is spoken of by its urgency alone
	const isDanger = dangerOf(planOf(input).gate, input.visit.visitDate) !== undefined
	return new Set([...said, ...(isDanger ? concern.because : [])])
}
