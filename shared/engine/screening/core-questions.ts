/** Which core questions were neither answered nor set aside, and whom each concerns. */

import { hasCondition, recordedConditions } from '../conditions/query.ts'
import { conditionNames } from '../conditions/registry.ts'
import { isMinor } from '../facts/age.ts'
import type { PerSide } from '../findings/compared.ts'
import type { ScreeningResult } from '../findings/screening-result.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { perSide } from '../visit/sides.ts'
import type { Condition } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'
import {
	acuteConditions,
	type Concerned,
	type CoreQuestion,
	calfConditions,
	coreQuestions,
} from './core-questions.table.ts'

interface Asked {
	visit: Visit
	ottawa: ScreeningResult['ottawa']
	protocol: Protocol
}
/** Diabetes is of the player; the others are of a limb. */
const currentOn = (visit: Visit, wanted: readonly Condition[], side: Side): boolean =>
	recordedConditions(visit, wanted, { side, when: 'current' }).length > 0
/** Whether a question concerns this player, or this limb of theirs. */
const concerns: Record<Concerned, (asked: Asked, side: Side) => boolean> = {
	everybody: () => true,
	'minor-in-pain': ({ visit, protocol }, side) =>
		isMinor(visit, protocol) &&
		(currentOn(visit, conditionNames, side) || (visit.complaint ?? '').trim() !== ''),
	'acute-condition': ({ visit }, side) => currentOn(visit, acuteConditions, side),
	'open-injury': ({ ottawa }, side) =>
		ottawa[side]?.ankle === 'incomplete' || ottawa[side]?.foot === 'incomplete',
	'adult-calf': ({ visit, protocol }, side) =>
		!isMinor(visit, protocol) && currentOn(visit, calfConditions, side),
	diabetes: ({ visit }) => hasCondition(visit, ['diabetes']),
}
/** What stands at a path of the visit; undefined where nothing does. */
function answerAt(visit: Visit, path: string): unknown {
	let here: unknown = visit
	for (const key of path.split('.')) {
		if (typeof here !== 'object' || here === null) return undefined
		here = (here as Record<string, unknown>)[key]
	}
	return here
}
/** An injury is answered for when its rule comes to an end; the others by any of their fields. */
const isAnswered = ({ concerns: whom, paths }: CoreQuestion, visit: Visit): boolean =>
	whom !== 'open-injury' && paths.some((path) => answerAt(visit, path) !== undefined)
const isSetAside = ({ coreSetAside = [] }: Visit, { id }: CoreQuestion): boolean =>
	coreSetAside.some(({ question, why }) => question === id && why.trim() !== '')

/** The core questions that concern this player, whether answered or not. */
export const coreQuestionsOf = (asked: Asked): CoreQuestion[] =>
	coreQuestions.filter(
		({ concerns: whom }) => concerns[whom](asked, 'left') || concerns[whom](asked, 'right'),
	)
/** Ids of the core questions that stand open, by the part of the gate that they leave open. */
export function unaskedOf(asked: Asked): { person: string[] } & PerSide<string[]> {
	const open = coreQuestions.filter(
		(question) => !isAnswered(question, asked.visit) && !isSetAside(asked.visit, question),
	)
	const of = (part: CoreQuestion['part'], side: Side): string[] =>
		open
			.filter((question) => question.part === part && concerns[question.concerns](asked, side))
			.map(({ id }) => id)
	return { person: of('person', 'left'), ...perSide((side) => of('limb', side)) }
}
