/** The plan of a visit, and what each reader is told of it, as lines to be read by people. */
import type { Assessment, GatePart, RolePair } from '../../shared/engine/findings/assessment.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { type KindName, kinds } from '../../shared/engine/report/kinds.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import type { Decisions } from '../../shared/engine/visit/decisions.ts'
import { bothSides } from '../../shared/engine/visit/sides.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { clinic } from '../demo.ts'

function gateLine(where: string, { state, action, holds, unasked }: GatePart): string {
	const held = holds.map(({ what, rule, until, since }) => `${what} (${rule}, ${until}, ${since})`)
	const open = unasked.length > 0 ? `; not asked: ${unasked.join(', ')}` : ''
	return `  ${where}: ${state}, ${action}${open}${held.map((hold) => `\n    ${hold}`).join('')}`
}
function pairLines(pair: RolePair): string[] {
	const { id, sole, surfaces, insideLengthMm, offsetMm, means, ownedPair, shelf } = pair
	const inside = insideLengthMm ? `${insideLengthMm.min} to ${insideLengthMm.max} mm inside` : ''
	return [
		`  ${id}: ${[means, sole, surfaces.join(' '), inside].filter(Boolean).join('; ')}`,
		...(offsetMm ? [`    offset ${offsetMm.min} to ${offsetMm.max} mm`] : []),
		...(ownedPair ? [`    owned ${ownedPair}`] : []),
		...(shelf.length > 0 ? [`    shelf ${shelf.join(', ')}`] : []),
		...(pair.beside ?? []).map(({ says }) => `    beside ${says}`),
		`    seek ${pair.seek.join(', ')}`,
		`    avoid ${pair.avoid.join(', ')}`,
		...pair.settled.map(
			({ feature, over, says }) => `    settled ${feature} under ${over}: ${says}`,
		),
	]
}
/** The prescription in the order in which a clinician reads it. */
export function planLines({ prescription }: Assessment): string[] {
	const { gate, priorities, raise, pairs, owned, insert, changes, lacing, review } = prescription
	return [
		'GATE',
		gateLine('player', gate.person),
		...bothSides.map((side) => gateLine(side, gate[side])),
		'PRIORITIES',
		...priorities.map(({ rank, says, who, when }) => `  ${rank} ${says} (${who}, ${when})`),
		`RAISE ${raise.aim.kind} ${raise.aim.mm ? `${raise.aim.mm.left} and ${raise.aim.mm.right}` : ''}`,
		...raise.pairs.map(
			({ pair, offsetMm, offsetFrom, left, right, limits }) =>
				`  ${pair} (offset ${offsetMm ?? offsetFrom}): left ${left.addMm} by ${left.madeBy}, right ` +
				`${right.addMm} by ${right.madeBy}${limits.map(({ says }) => `\n    ${says}`).join('')}`,
		),
		...raise.steps.map(({ says, when }) => `  ${when}: ${says}`),
		'PAIRS',
		...pairs.flatMap(pairLines),
		'OWNED',
		...owned.map(
			({ id, verdict, by, says }) => `  ${id} ${verdict}${by ? ` by ${by}` : ''}: ${says}`,
		),
		...bothSides.map(
			(side) =>
				`INSERT IN PLAN ${side}: ${insert[side].state}; ${insert[side].elements.join(', ')}`,
		),
		`CHANGES ${changes.join(', ')}`,
		`LACING ${lacing.join(', ')}`,
		`REVIEW ${review?.date ?? 'none'}`,
		'QUESTIONS',
		...prescription.questions.map(
			({ id, held, says, because }) =>
				`  ${id}${held ? ' (held)' : ''}: ${says} [${because.join(', ')}]`,
		),
	].map((line) => line.trimEnd())
}
const read: readonly KindName[] = ['player', 'guardian', 'referral', 'insert-order']
/** What a block holds beside its words. */
const notSaid = new Set(['svg', 'id', 'kind', 'tone', 'widths', 'pattern'])
const textOf = ({ title, blocks }: LwDocument): string[] =>
	textsIn([title, blocks.filter(({ kind }) => kind !== 'figure' && kind !== 'true-size')], notSaid)
/** What each reader's page says, or why there is none. */
export function toldLines(visit: Visit, assessment: Assessment, decisions: Decisions): string[] {
	const given = { visit, assessment, decisions, clinic, signedAt: undefined, draft: true }
	return read.flatMap((kind) => {
		const input = { ...given, on: visit.visitDate }
		const problems = kinds[kind].problems(input)
		const said = problems.length > 0 ? problems : textOf(kinds[kind].compose(input))
		return [`TOLD ${kind}`, ...said.map((line) => `  ${line}`)]
	})
}
