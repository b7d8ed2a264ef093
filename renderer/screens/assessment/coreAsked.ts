/** The core questions on the Flags step: which concern this player, and why one was not asked. Pure. */
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import type { CoreQuestion } from '../../../shared/engine/screening/core-questions.table.ts'
import { coreQuestionsOf } from '../../../shared/engine/screening/core-questions.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { readPath } from '../../parts/draft-path.ts'
import { questionGroup } from './questions.ts'
import type { AssessedProps } from './stepProps.ts'

/** Which complaint opens the questions that belong to one. */
const complaints: Readonly<Record<string, string>> = {
	injury: 'twisted',
	'weight-bearing': 'twisted',
	'diabetic-foot': 'diabetes',
}
export const complaintOf = ({ id }: CoreQuestion): string | undefined => complaints[id]

/** The core questions that concern this player, as far as the answers so far tell. */
export const coreOf = ({
	draft: { visit },
	assessment,
}: Pick<AssessedProps, 'draft' | 'assessment'>): CoreQuestion[] =>
	coreQuestionsOf({
		visit,
		ottawa: assessment?.screening.ottawa ?? {},
		protocol: clinicProtocol,
	})
/** Whether a path is answered on a line of its own, and not in a group. */
function isLine(path: string): boolean {
	const [, name = ''] = path.split('.')
	return path.split('.').length === 2 && !questionGroup(`screening.${name}`)
}
/**
 * The path of a question that is answered on a line of its own: one that is answered already before
 * the one that is asked first. Undefined where it is a group.
 */
export function lineOf({ paths }: CoreQuestion, visit: Visit): string | undefined {
	const [first] = paths
	if (!isLine(first)) return undefined
	return paths.find((path) => isLine(path) && readPath(visit, path) !== undefined) ?? first
}
/** The group of questions in which it is answered. */
export const groupOf = ({ paths: [first] }: CoreQuestion): string =>
	first.split('.').slice(0, 2).join('.')
export const setAsideIn = ({ coreSetAside = [] }: Visit, id: string) =>
	coreSetAside.find(({ question }) => question === id)
export const withSetAside = (visit: Visit, id: string, why: string | undefined): Visit => {
	const { coreSetAside = [], ...rest } = visit
	const others = coreSetAside.filter(({ question }) => question !== id)
	const next = why === undefined ? others : [...others, { question: id, why }]
	return next.length > 0 ? { ...rest, coreSetAside: next } : rest
}
/** Whether the gate waits for its answer. */
export function isUnasked(assessment: Assessment | undefined, id: string): boolean {
	const gate = assessment?.prescription.gate
	return (
		gate !== undefined &&
		[gate.person, gate.left, gate.right].some(({ unasked }) => unasked.includes(id))
	)
}
