/** An element as proposed for one foot: its amount, its place, and what these add. */
import type { InsertElement } from '../findings/assessment.ts'
import { reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import { type ElementId, elementName } from '../words/en/insert-names.ts'
import type { Params } from '../words/sentence.ts'
import { type Statement, type StatementCode, state } from '../words/statement.ts'
import { domeEdgeMm, eversionChangeDeg, postHeightMm, steepestPostDeg } from './dose.ts'
import type { ElementRow } from './elements/row.ts'
import type { InsertFacts } from './facts.ts'
import { cautionsOf, stateOf, withCaution } from './said.ts'

/** What the sentence of an element is filled in with, where it says more than its name. */
const paramsOf: Partial<Record<ElementId, (facts: InsertFacts, value: number) => Params>> = {
	'rearfoot-post-medial': postParams,
	'rearfoot-post-lateral': postParams,
	'medial-skive': ({ protocol }) => ({ inertMm: protocol.value('insert.skiveInertMm') }),
	'metatarsal-dome': domeParams,
}
/** What some elements add of their own once the usual amount stands. */
const additions: Partial<
	Record<ElementId, (made: InsertElement, facts: InsertFacts) => InsertElement>
> = {
	'rearfoot-post-medial': medialPost,
	'rearfoot-post-lateral': restingOnHeelWidth,
	'metatarsal-dome': restingOnBallLength,
}
/** @param cautions what speaks against it without taking it out, and what is always said */
export function elementOf(
	row: ElementRow,
	facts: InsertFacts,
	because: Because[],
	cautions: readonly Statement[],
): InsertElement {
	const { protocol } = facts
	const { element, key, range, where, unit, code } = row
	const value = protocol.value(key)
	const params = paramsOf[element]?.(facts, value) ?? {}
	const usual: InsertElement = {
		element,
		value,
		unit,
		range: [protocol.value(range[0]), protocol.value(range[1])],
		where,
		...stateOf(code ?? (`insert.${element}` as StatementCode), params),
		because,
		basis: protocol.basis(elementName(element), key),
		...cautionsOf(cautions),
	}
	return additions[element]?.(usual, facts) ?? usual
}
/** A post is an angle; how high that stands depends on the heel. */
function postParams({ side, heelWidthMm }: InsertFacts, angleDeg: number): Params {
	return {
		side,
		...postHeight(heelWidthMm === undefined ? undefined : rounded(heelWidthMm, 1), angleDeg),
	}
}
function postHeight(heelWidthMm: unknown, angleDeg: number): Params {
	if (typeof heelWidthMm !== 'number' || angleDeg >= steepestPostDeg) return {}
	return { heelWidthMm, heightMm: rounded(postHeightMm(heelWidthMm, angleDeg), 1) }
}
/** An element with another amount: what is worked out from the amount follows. */
export function withAmount(
	element: InsertElement,
	value: number | undefined,
	protocol: Protocol,
): InsertElement {
	if (value === undefined) return element
	const { code, params = {}, cautioned = [] } = element
	const made = { ...element, value }
	if (code !== 'insert.rearfoot-post-medial' && code !== 'insert.rearfoot-post-lateral') return made
	const cautions = cautioned.map((caution) =>
		caution.code === 'insert.caution-eversion' ? eversion(value, protocol) : caution,
	)
	return {
		...made,
		...stateOf(code, { side: params.side, ...postHeight(params.heelWidthMm, value) }),
		...cautionsOf(cautions),
	}
}
const eversion = (postDeg: number, protocol: Protocol): Statement =>
	state('insert.caution-eversion', { changeDeg: rounded(eversionChangeDeg(postDeg, protocol), 1) })
function restingOnHeelWidth(made: InsertElement, { side, heelWidthMm }: InsertFacts) {
	if (heelWidthMm === undefined) return made
	return { ...made, because: [...made.because, reading('heelWidthMm', heelWidthMm, 'mm', side)] }
}
function medialPost(made: InsertElement, facts: InsertFacts): InsertElement {
	return withCaution(restingOnHeelWidth(made, facts), eversion(made.value ?? 0, facts.protocol))
}
/** The dome's edge lies behind the heads. */
function domeParams({ protocol, side, ballLengthMm }: InsertFacts): Params {
	const behindHeadsMm = protocol.value('insert.domeBehindHeadsMm')
	const edgeMm =
		ballLengthMm === undefined ? undefined : rounded(domeEdgeMm(ballLengthMm, behindHeadsMm), 1)
	return present({ side, behindHeadsMm, edgeMm })
}
function restingOnBallLength(made: InsertElement, { side, ballLengthMm }: InsertFacts) {
	if (ballLengthMm === undefined) return made
	return { ...made, because: [...made.because, reading('heelToBallMm', ballLengthMm, 'mm', side)] }
}
