/** What a condition asks, in the clinician's words, part by part. */
import { usualAges } from '../conditions/ages.ts'
import type { AskedOfShoe, AskedOfWork } from '../footwear/asks.ts'
import type { InsertAsks } from '../insert/elements/asks.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Condition, Feature } from '../visit/terms.ts'
import type { AskedPartName } from '../words/en/asked.ts'
import { type Statement, state } from '../words/statement.ts'
import { type Asked, askedBy } from './asked.ts'

export interface AskedPart {
	part: AskedPartName
	said: Statement[]
}
const once = <Value>(values: readonly Value[]): Value[] => [...new Set(values)]
/** Rules that hold alike are said as one, each feature once. */
function shoeSaid(rules: readonly AskedOfShoe[]): Statement[] {
	const alike = Map.groupBy(
		rules,
		({ when, together, growing }) => `${when} ${together} ${growing}`,
	)
	return [...alike.values()].flatMap((group) => {
		const [first] = group
		const all = (kind: 'seek' | 'avoid'): Feature[] => once(group.flatMap((rule) => rule[kind]))
		const [seek, avoid] = [all('seek'), all('avoid')]
		if (!first || seek.length + avoid.length === 0) return []
		return [
			state('asked.shoe', {
				seek,
				avoid,
				past: first.when === 'ever',
				together: first.together,
				growing: first.growing,
			}),
		]
	})
}
function studsSaid({ joints }: Asked): Statement[] {
	const alike = Map.groupBy(joints, ({ when }) => when)
	return [...alike].map(([when, group]) =>
		state('asked.studs', {
			joints: once(group.map(({ joint }) => joint)),
			past: when === 'ever',
		}),
	)
}
/** What calls for work by name, then each caution once with the work that it is of. */
function workSaid({ calledFor, against, never }: AskedOfWork): Statement[] {
	const cautions = Map.groupBy(against, ({ code }) => code)
	return [
		...calledFor.map(({ id, withSought }) => state('asked.work', { work: id, withSought })),
		...[...cautions].map(([caution, works]) =>
			state('asked.work-care', { caution, works: works.map(({ id }) => id) }),
		),
		...(never.length > 0 ? [state('asked.work-never', { works: never })] : []),
	]
}
const insertSaid = ({ calls, against, holds, withDevice, gentle }: InsertAsks): Statement[] => [
	...holds.map((hold) => state('asked.insert-stop', hold)),
	...calls.map((call) => state('asked.insert-element', call)),
	...against.map((objection) => state('asked.insert-against', objection)),
	...withDevice.map((code) => state(code)),
	...(gentle ? [state('asked.insert-gentle')] : []),
]
function agesSaid(condition: Condition, protocol: Protocol): Statement[] {
	const span = usualAges(condition, protocol)
	return Object.keys(span).length > 0 ? [state('asked.ages', span)] : []
}
/** @returns the parts of which it asks something, in the order of a visit */
export function askedSaid(condition: Condition, protocol: Protocol): AskedPart[] {
	const asked = askedBy(condition)
	const { shoe, lacing, changes, insert, season, exercises, questions, caution } = asked
	const parts: AskedPart[] = [
		{ part: 'ages', said: agesSaid(condition, protocol) },
		{ part: 'care', said: caution ? [state('conditions.caution', { condition })] : [] },
		{
			part: 'questions',
			said: questions.length > 0 ? [state('asked.questions', { questions })] : [],
		},
		{ part: 'shoe', said: [...shoeSaid(shoe), ...studsSaid(asked)] },
		{ part: 'changes', said: workSaid(changes) },
		{ part: 'lacing', said: workSaid(lacing) },
		{ part: 'insert', said: insertSaid(insert) },
		{ part: 'season', said: season.map((ask) => state('asked.season', ask)) },
		{
			part: 'exercise',
			said: exercises.length > 0 ? [state('asked.exercise', { exercises })] : [],
		},
	]
	return parts.filter(({ said }) => said.length > 0)
}
