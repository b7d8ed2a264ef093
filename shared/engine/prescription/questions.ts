/**
 * The questions of a plan: some ten, each with one proposal and the findings that are read under
 * it. One is asked only where there is something to settle: a proposal, or a caution.
 */
import type { Question } from '../findings/assessment.ts'
import { type Finding, isGrave } from '../findings/finding.ts'
import { digestOf } from '../plain/canonical.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { state } from '../words/statement.ts'
import { lineOf, type Named } from './lines.ts'
import { questionOf, type RoutedBy } from './routes.ts'
import { changesWithLacing, type Planned, type SubjectOfQuestion, subjectsOf } from './subjects.ts'

/** @param isUnchanged whether nothing that a question rests on changed since the last visit */
export function questionsOf(
	plan: Planned,
	named: Named,
	findings: readonly Finding[],
	by: RoutedBy,
	isUnchanged: (id: string) => boolean,
	protocol: Protocol,
): Question[] {
	const subjects = subjectsOf(plan, named)
	const held = new Set(subjects.filter((subject) => subject.held).map(({ id }) => id))
	const known = new Set(subjects.map(({ id }) => id))
	const read = Map.groupBy(findings, (finding) => {
		const id = questionOf(finding, by)
		// what is held is not settled: its cautions are read at the gate that holds it
		if (held.has(id) && isGrave(finding)) return 'gate'
		return known.has(id) ? id : 'review'
	})
	const asked = subjects.filter((subject) => isAsked(subject, read.get(subject.id) ?? []))
	const few = atMost(asked, plan, read, protocol.value('prescription.mostQuestions'))
	const withLacing = !few.some(({ id }) => id === 'lacing')
	return few.map((subject) => ({
		id: subject.id,
		because: (read.get(subject.id) ?? []).map(({ id }) => id),
		held: subject.held,
		of: digestOf({ id: subject.id, content: subject.content }),
		unchanged: !subject.held && subject.id !== 'gate' && isUnchanged(subject.id),
		...(subject.held
			? state('question.held', { question: subject.id })
			: lineOf(subject.id, plan, named, withLacing)),
	}))
}
/** What is held shows its line only where something was found that would be asked about. */
function isAsked({ isProposed, held }: SubjectOfQuestion, findings: readonly Finding[]): boolean {
	if (held) return isProposed || findings.some(({ level }) => level !== 'note')
	return isProposed || findings.some(isGrave)
}
/** Where there are too many, lacing is settled with the other changes. */
function atMost(
	asked: readonly SubjectOfQuestion[],
	plan: Planned,
	read: Map<string, Finding[]>,
	most: number,
): readonly SubjectOfQuestion[] {
	const ids = asked.map(({ id }) => id)
	if (ids.length <= most || !ids.includes('lacing') || !ids.includes('changes')) return asked
	read.set('changes', [...(read.get('changes') ?? []), ...(read.get('lacing') ?? [])])
	return asked
		.filter(({ id }) => id !== 'lacing')
		.map((subject) => (subject.id === 'changes' ? changesWithLacing(plan) : subject))
}
