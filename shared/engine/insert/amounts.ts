/** An element as proposed for one foot: its amount, its place, and the sentences that these add. */
import type { InsertElement } from '../findings/assessment.ts'
import type { Because } from '../protocol/basis.ts'
import { rounded } from '../visit/sides.ts'
import { domeEdgeMm, eversionChangeDeg, postHeightMm } from './dose.ts'
import { type ElementId, elementWords, practiceBasis } from './element-words.ts'
import type { ElementRow } from './elements/row.ts'
import type { InsertFacts } from './facts.ts'

/** What some elements add of their own once the usual amount stands. */
const ownSentences: Partial<
	Record<ElementId, (made: InsertElement, facts: InsertFacts) => InsertElement>
> = {
	'heel-raise': heelRaise,
	'rearfoot-post-medial': medialPost,
	'rearfoot-post-lateral': rearfootPost,
	'metatarsal-dome': dome,
}
/** @param cautions what speaks against it without taking it out, and what is always said */
export function elementOf(
	row: ElementRow,
	facts: InsertFacts,
	because: Because[],
	cautions: string[],
): InsertElement {
	const { protocol } = facts
	const usual: InsertElement = {
		element: row.element,
		value: protocol.value(row.key),
		unit: row.unit,
		range: [protocol.value(row.range[0]), protocol.value(row.range[1])],
		where: row.where,
		says: row.says,
		because,
		basis: protocol.basis(elementWords[row.element], row.key),
		cautions,
	}
	return ownSentences[row.element]?.(usual, facts) ?? usual
}
/** The higher of what the ankle asks for and what the tendon asks for. */
function heelRaise(made: InsertElement, facts: InsertFacts): InsertElement {
	const { protocol } = facts
	const forTendon =
		facts.nowAnywhere('achilles-midportion', 'achilles-insertional', 'haglund-deformity').length > 0
	const tendonMm = forTendon ? protocol.value('insert.achillesRaiseMm') : 0
	const growingHeel = !facts.adult && facts.nowAnywhere('calcaneal-apophysitis').length > 0
	const review =
		`Growing heel: look again at ${protocol.value('insert.growingHeelReviewWeeks')} weeks, ` +
		'and take the raise out when the heel is free of pain.'
	return {
		...made,
		value: Math.max(tendonMm, facts.ankleRaiseMm ?? 0),
		basis: forTendon
			? made.basis
			: (facts.ankleRaiseBasis ?? practiceBasis('heel raise from the ankle')),
		cautions: growingHeel ? [...made.cautions, review] : made.cautions,
	}
}
/** A post is an angle; how high that stands depends on the heel. */
function rearfootPost(made: InsertElement, { side, heelWidthMm }: InsertFacts): InsertElement {
	if (heelWidthMm === undefined)
		return { ...made, says: `${made.says} Measure the ${side} heel width for its height.` }
	const widthMm = rounded(heelWidthMm, 1)
	const heightMm = rounded(postHeightMm(heelWidthMm, made.value ?? 0), 1)
	return {
		...made,
		says: `${made.says} On a heel ${widthMm} mm wide that is ${heightMm} mm high.`,
		because: [...made.because, { measure: 'Heel width', value: widthMm, unit: 'mm' }],
	}
}
function medialPost(made: InsertElement, facts: InsertFacts): InsertElement {
	const changeDeg = rounded(eversionChangeDeg(made.value ?? 0, facts.protocol), 1)
	return {
		...rearfootPost(made, facts),
		cautions: [...made.cautions, `Expected change of eversion about ${changeDeg} degrees.`],
	}
}
/** The dome's edge lies behind the heads. */
function dome(made: InsertElement, { protocol, side, ballLengthMm }: InsertFacts): InsertElement {
	const behindMm = protocol.value('insert.domeBehindHeadsMm')
	if (ballLengthMm === undefined)
		return {
			...made,
			says:
				`${made.says} Its distal edge lies ${behindMm} mm behind the heads: measure the ${side} ` +
				'heel-to-ball length for its place.',
		}
	return {
		...made,
		says:
			`${made.says} Its distal edge lies ${rounded(domeEdgeMm(ballLengthMm, behindMm), 1)} mm ` +
			`from the heel, ${behindMm} mm behind the heads; confirm with the finger.`,
		because: [
			...made.because,
			{ measure: 'Heel to ball', value: rounded(ballLengthMm, 1), unit: 'mm' },
		],
	}
}
