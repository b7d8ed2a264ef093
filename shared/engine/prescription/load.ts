/**
 * What brought the player, and what is done about load. Figures are those of the loading room's
 * rules; how much exercise, how many sessions and minutes is the clinician's, and stands nowhere
 * before it is set.
 */
import { saidConditions } from '../conditions/query.ts'
import { conditionRow } from '../conditions/registry.ts'
import { isHeld } from '../facts/held.ts'
import type { Gate, LoadingResult, LoadPlan } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Exercise } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import type { Params } from '../words/sentence.ts'

type Recorded = NonNullable<Visit['conditions']>[number]
/** A condition that the player has now and comes with. */
export interface Complained {
	condition: Recorded['condition']
	side: Recorded['side']
	pain?: number
}
/** It hurts; or it is now, of a limb, and nothing says that it does not. */
const isComplained = ({ condition, status, painWorst }: Recorded): boolean => {
	if (status === 'past' || painWorst === 0) return false
	if (painWorst !== undefined) return true
	return status === 'current' && conditionRow(condition).sides === 'each'
}
/** What hurts most first. */
export const complaintsOf = (visit: Pick<Visit, 'conditions'>): Complained[] =>
	saidConditions(visit)
		.filter(isComplained)
		.map(({ condition, side, painWorst }) => present({ condition, side, pain: painWorst }))
		.toSorted((one, other) => (other.pain ?? 0) - (one.pain ?? 0))
/** Whether load waits: nothing is laid out of what may not be done. */
export const loadWaits = (gate: Gate): boolean => isHeld(gate, 'sport') || isHeld(gate, 'impact')

const paramsOf = (findings: readonly Finding[], code: string): Params | undefined =>
	findings.find((finding) => finding.code === code)?.params
const figure = (params: Params | undefined, name: string): number | undefined => {
	const value = params?.[name]
	return typeof value === 'number' ? value : undefined
}
/** Hours of organised sport by age, and of all sport: the lower where both are passed. */
function mostHours(findings: readonly Finding[]): number | undefined {
	const byAge = paramsOf(findings, 'loading.hours-over-age')
	const [age, over] = [figure(byAge, 'ageYears'), figure(byAge, 'overAge')]
	const limits = [
		age === undefined || over === undefined ? undefined : age + over,
		figure(paramsOf(findings, 'loading.hours-high'), 'mostHours'),
	].filter((hours) => hours !== undefined)
	return limits.length > 0 ? Math.min(...limits) : undefined
}
/** Silent on a limb whose exercise is held, as the finding is. */
function exercisesOf(findings: readonly Finding[]): Exercise[] {
	const rows = paramsOf(findings, 'conditions.exercises')?.rows
	if (!Array.isArray(rows)) return []
	return [...new Set(rows.flatMap(({ exercises }: { exercises: Exercise[] }) => exercises))]
}
/** What the rooms propose about load; nothing while load is held. */
export function loadPlan(
	gate: Gate,
	{ returnSteps }: Pick<LoadingResult, 'returnSteps'>,
	findings: readonly Finding[],
): LoadPlan {
	if (loadWaits(gate)) return { exercises: [] }
	return present({
		hoursPerWeek: mostHours(findings),
		daysOffPerWeek: figure(paramsOf(findings, 'loading.no-day-off'), 'leastDays'),
		returnWeeks: returnSteps?.length,
		exercises: exercisesOf(findings),
	})
}
