/** What is proposed for a question as the fields of an answer: what a change begins with. Pure. */
import type {
	Assessment,
	Question,
	RaiseInPair,
	RolePair,
} from '../../../../shared/engine/findings/assessment.ts'
import { present } from '../../../../shared/engine/plain/present.ts'
import { type AnswerFields, answerFieldsSchema } from '../../../../shared/engine/visit/answers.ts'
import { bothSides } from '../../../../shared/engine/visit/sides.ts'
import type { PairRole } from '../../../../shared/engine/visit/terms.ts'
import type { Side, Visit } from '../../../../shared/engine/visit/visit.ts'
import { newPairNames } from '../../../../shared/engine/words/en/new-pair.ts'
import { parseNumber } from '../../../parts/parseNumber.ts'
import { kindOf, type QuestionKind } from './questionTitles.ts'

/** The pairs that one question is about: several where one sole cannot serve all grounds. */
export const pairsOf = ({ prescription }: Assessment, { id }: Question): RolePair[] =>
	prescription.pairs.filter(({ role }) => id === `pair.${role}`)
const raiseOf = ({ pair, left, right }: RaiseInPair) => ({
	pair,
	left: left.addMm,
	right: right.addMm,
})
type Proposed = (assessment: Assessment, question: Question) => AnswerFields
const nothing: Proposed = () => ({})
const proposed: Readonly<Record<QuestionKind, Proposed>> = {
	gate: nothing,
	complaint: ({ prescription: { load } }) =>
		load?.daysOffPerWeek === undefined ? {} : { load: { daysOffPerWeek: load.daysOffPerWeek } },
	insert: nothing,
	other: nothing,
	size: ({ sizing: { insideLengthMm } }) => present({ insideLengthMm }),
	raise: ({ prescription }) => ({ raise: prescription.raise.pairs.map(raiseOf) }),
	pair: (assessment, question) => {
		const pairs = pairsOf(assessment, question)
		const all = <Item>(of: (pair: RolePair) => readonly Item[]) => [...new Set(pairs.flatMap(of))]
		return present({
			sole: pairs[0]?.sole,
			seek: all(({ seek }) => seek),
			avoid: all(({ avoid }) => avoid),
			models: all(({ shelf }) => shelf).slice(0, mostModels),
			buy: pairs.some(({ means }) => means === 'buy'),
		})
	},
	owned: ({ prescription }) => ({
		verdicts: prescription.owned.map(({ id, verdict, by }) => present({ id, verdict, by })),
	}),
	// lacing stands under the changes where it is not asked about by itself
	changes: ({ prescription: { questions, changes, lacing } }) => ({
		keep: questions.some(({ id }) => id === 'lacing') ? changes : [...changes, ...lacing],
	}),
	lacing: ({ prescription }) => ({ keep: prescription.lacing }),
	review: ({ prescription }) => present({ reviewDate: prescription.review?.date }),
}
export const proposedFields = (assessment: Assessment, question: Question): AnswerFields =>
	proposed[kindOf(question.id)](assessment, question)
/** Models to try at most: more is no choice. */
export const mostModels = 3

/** Millimetres between two limits, read from what was typed. */
function readMm(
	text: string,
	least: number | null,
	most: number | null,
): { mm?: number; says: string } {
	const parsed = parseNumber(text, 'mm')
	if (!parsed.ok) return { says: parsed.says }
	const [mm, ...more] = parsed.values
	if (mm === undefined) return { says: 'Give a number in mm.' }
	if (more.length > 0) return { says: `'${text}' holds more than one number. Type one in mm.` }
	if (mm < (least ?? mm) || mm > (most ?? mm))
		return { says: `'${text}' is not allowed; give ${least} to ${most} mm.` }
	return { mm, says: '' }
}
const { insideLengthMm, raise } = answerFieldsSchema.shape
const lengthLimits = insideLengthMm.unwrap().shape.min
const raiseLimits = raise.unwrap().element.shape.left
const readLength = (text: string) => readMm(text, lengthLimits.minValue, lengthLimits.maxValue)
const readRaise = (text: string) => readMm(text, raiseLimits.minValue, raiseLimits.maxValue)

export const bandEnds = ['min', 'target', 'max'] as const
export type BandTexts = Readonly<Record<(typeof bandEnds)[number], string>>
/** An inside length as typed. `wrong` says by its end what cannot stand. */
export function readBand(texts: BandTexts): {
	insideLengthMm?: NonNullable<AnswerFields['insideLengthMm']>
	wrong: Partial<BandTexts>
} {
	const read = {
		min: readLength(texts.min),
		target: readLength(texts.target),
		max: readLength(texts.max),
	}
	const wrong = Object.fromEntries(
		bandEnds.flatMap((end) => (read[end].says ? [[end, read[end].says]] : [])),
	)
	const { mm: min } = read.min,
		{ mm: target } = read.target,
		{ mm: max } = read.max
	if (min === undefined || target === undefined || max === undefined) return { wrong }
	if (min > target) return { wrong: { min: 'The shortest is longer than the target.' } }
	if (target > max) return { wrong: { max: 'The longest is shorter than the target.' } }
	return { insideLengthMm: { min, target, max }, wrong: {} }
}
/** What the fields of the raise are called: a pair and a foot. */
export const raiseField = (pair: string, side: Side): string => `${pair}.${side}`
/** Raises as typed, by pair and foot. */
export function readRaises(
	pairs: readonly string[],
	texts: Readonly<Record<string, string>>,
): { raise?: NonNullable<AnswerFields['raise']>; wrong: Readonly<Record<string, string>> } {
	const read = (pair: string, side: Side) => readRaise(texts[raiseField(pair, side)] ?? '')
	const wrong = Object.fromEntries(
		pairs.flatMap((pair) =>
			bothSides.flatMap((side) => {
				const { says } = read(pair, side)
				return says ? [[raiseField(pair, side), says]] : []
			}),
		),
	)
	const rows = pairs.map((pair) => ({
		pair,
		left: read(pair, 'left').mm,
		right: read(pair, 'right').mm,
	}))
	const whole = rows.flatMap(({ pair, left, right }) =>
		left === undefined || right === undefined ? [] : [{ pair, left, right }],
	)
	return whole.length === rows.length ? { raise: whole, wrong } : { wrong }
}

/** A pair by its name: one that is owned, or the one to be chosen for a role. */
export function nameOfPair({ footwear }: Pick<Visit, 'footwear'>, id: string): string {
	const owned = footwear?.find((pair) => pair.id === id)
	if (owned) return owned.name ?? owned.id
	const role = id.replace(/^role\./, '')
	return Object.hasOwn(newPairNames, role)
		? newPairNames[role as PairRole]
		: role.replaceAll('-', ' ')
}
