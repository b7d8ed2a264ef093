/**
 * The walk of an assessment: which measures stand on which step. What stands in a group, in what
 * order and with what words follows from the measures' definitions.
 */
import type { Topic } from '../../../shared/engine/findings/finding.ts'
import { need } from '../../../shared/engine/plain/need.ts'
import {
	pathsOf,
	placedIn,
	type Section,
	sections,
} from '../../../shared/engine/visit/measures/catalogue.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'

interface StepRow {
	/** Fields of a row: one, or left and right. */
	paths: readonly [string] | readonly [string, string]
	hint?: string | undefined
}
interface StepGroup {
	heading: string
	fields: readonly StepRow[]
}
/** In the order of the walk: danger is asked about before any test. */
const stepNames = [
	'Since then',
	'Play',
	'Flags',
	'Feet',
	'Ankles',
	'Posture',
	'Growth',
	'Decide',
	'Sign',
] as const
export type StepName = (typeof stepNames)[number]
export interface Step {
	name: StepName
	/** Whose findings stand beside it. */
	topics: readonly Topic[]
	/** Paths that this step answers for beside its fields. */
	alsoAsks: readonly string[]
	groups: readonly StepGroup[]
	/** It takes the whole width: no findings beside it, and Enter is its own. */
	wide?: boolean
}
const rowsOf = (section: Section): StepRow[] =>
	placedIn(section).map((placed) => ({
		paths: pathsOf(placed),
		hint: placed.measure.hint === 'none' ? undefined : placed.measure.hint,
	}))
/** The measures of one section, or of several under the heading of the last. */
const groupOf = (...shown: readonly [Section, ...Section[]]): StepGroup => ({
	heading: need(shown.at(-1), 'the section of a group').heading,
	fields: shown.flatMap(rowsOf),
})
/** What is played, and how: terms and words that are no measures. */
const played: readonly StepRow[] = ['code', 'position', 'standard', 'kickingFoot'].map((key) => ({
	paths: [`play.${key}`],
}))
const play = groupOf(sections.play)

/** The first step of a re-check alone. */
const sinceThen: Step = {
	name: 'Since then',
	topics: ['recheck', 'conditions'],
	alsoAsks: ['since', 'conditions'],
	groups: [],
}
export const steps: readonly Step[] = [
	{
		name: 'Play',
		topics: ['conditions', 'loading'],
		alsoAsks: ['play.surfaces', 'conditions', 'footwear'],
		groups: [{ ...play, fields: [...played, ...play.fields] }, groupOf(sections.size)],
	},
	{ name: 'Flags', topics: ['screening'], alsoAsks: ['screening'], groups: [] },
	{
		name: 'Feet',
		topics: ['sizing'],
		alsoAsks: [],
		groups: [groupOf(sections.feet), groupOf(sections.capture)],
	},
	{
		name: 'Ankles',
		topics: ['ankle', 'raise'],
		alsoAsks: [],
		groups: [groupOf(sections.ankles)],
	},
	{
		name: 'Posture',
		topics: ['posture'],
		alsoAsks: [],
		groups: [groupOf(sections.posture), groupOf(sections.build)],
	},
	{
		name: 'Growth',
		topics: ['growth'],
		alsoAsks: [],
		groups: [groupOf(sections.size, sections.growth)],
	},
	{ name: 'Decide', topics: [], alsoAsks: [], groups: [], wide: true },
	{ name: 'Sign', topics: [], alsoAsks: [], groups: [], wide: true },
]
/** What steps were called in drafts of before 0.5. */
const formerNames: Readonly<Record<string, string>> = {
	'Player and play': 'Play',
	'Sign and report': 'Sign',
}

/** Every path that a step answers for. */
export const asksOf = ({ groups, alsoAsks }: Step): readonly string[] => [
	...groups.flatMap(({ fields }) => fields.flatMap(({ paths }) => [...paths])),
	...alsoAsks,
]
/** Whether a step answers for a path; what stands within one that it names counts too. */
export const asksAbout = (step: Step, path: string): boolean =>
	asksOf(step).some((asked) => path === asked || path.startsWith(`${asked}.`))
/** The steps for a minor or an adult: growth is looked at in minors. */
export function stepsFor(minor: boolean, since?: Visit['since']): readonly Step[] {
	const usual = steps.filter((step) => step.name !== 'Growth' || minor)
	return since ? [sinceThen, ...usual] : usual
}
/** What a re-check passes by unless something asks for it; its key goes there all the same. */
const passedBy: readonly StepName[] = ['Play', 'Feet', 'Ankles', 'Posture', 'Growth']
/** @returns the step that comes next; a re-check goes on to what it asks for */
export function stepAfter(
	step: Step,
	shown: readonly Step[],
	since?: Visit['since'],
): Step | undefined {
	const asked = (since?.measure ?? []).map(({ what }) => (what === 'feet' ? 'Feet' : 'Growth'))
	return shown
		.slice(shown.indexOf(step) + 1)
		.find(({ name }) => !since || !passedBy.includes(name) || asked.some((one) => one === name))
}
/** The step of a name, or the first where the draft names none that is shown. */
export const stepNamed = (name: string | undefined, shown: readonly Step[]): Step =>
	shown.find((step) => step.name === (formerNames[name ?? ''] ?? name)) ??
	need(shown[0], 'the first step')
/**
 * The key of a step; 0 that of a re-check. The step that is left out for an adult still has its number,
 * so that the hand can learn them.
 */
export const numberOf = (name: string): number => steps.findIndex((step) => step.name === name) + 1
