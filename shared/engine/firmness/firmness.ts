/**
 * How firmly a proposal stands against the error of measuring: tried two hundred times with the
 * measures moved. The figure stands in the workings only and is never printed.
 */
import type { Assessment, Firmness } from '../findings/assessment.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { fixedOf, type Outcomes, outcomesOf, type Tried, tried } from './outcomes.ts'
import { errorSequence, mostMeasures } from './sequence.ts'
import { hasPublishedError, moved, type Varied, variedMeasures } from './varied.ts'

export interface Firm {
	firmness: Firmness | 'not-worked-out'
	/** Paths of the measures that decide, where it is not steady: to be measured again. */
	decidedBy: string[]
	/** How many of all trials proposed the same, 0 to 1: for the workings. */
	share?: number
}
type Given = Pick<Assessment, 'screening' | 'prescription' | 'sizing' | 'insert'>
const notWorkedOut: Firm = { firmness: 'not-worked-out', decidedBy: [] }

/** What a proposal rests on, as far as it is a number. */
const numbersBehind: Readonly<Record<Tried, (given: Given) => Because[]>> = {
	size: ({ sizing: { decidedBy } }) => [
		{ measure: decidedBy === 'ball-length' ? 'heelToBallMm' : 'heelToToeMm', value: 0 },
	],
	raise: ({ prescription: { raise } }) => raise.aim.because,
	insert: ({ insert }) =>
		bothSides.flatMap((side) => insert[side].elements.flatMap(({ because }) => because)),
}
/**
 * Asked, not held, and resting on at least one measure and on none of which no error is published.
 */
function canBeTried(id: Tried, given: Given, protocol: Protocol): boolean {
	const question = given.prescription.questions.find((one) => one.id === id)
	if (!question || question.held) return false
	const numbers = numbersBehind[id](given).filter(({ value }) => typeof value === 'number')
	return numbers.length > 0 && numbers.every(({ measure }) => hasPublishedError(measure, protocol))
}
function firmnessOf(share: number, protocol: Protocol): Firmness {
	if (share >= protocol.value('prescription.steadyShare')) return 'steady'
	return share >= protocol.value('prescription.nearLimitShare') ? 'near-a-limit' : 'either-way'
}
const meanOf = (values: readonly number[]): number =>
	values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length)
/**
 * The measures whose errors tell most surely the trials that turned from those that did not: by
 * their sign where one limit is near, by their size where one is near on either hand.
 */
function deciding(
	measures: readonly Varied[],
	sequence: readonly number[][],
	turned: readonly boolean[],
): string[] {
	const apart = measures.map((_, index) => {
		const differenceOf = (of: (error: number) => number): number => {
			const where = (isTurned: boolean) =>
				meanOf(
					sequence
						.filter((__, trial) => turned[trial] === isTurned)
						.map((errors) => of(errors[index] ?? 0)),
				)
			return Math.abs(where(true) - where(false))
		}
		return Math.max(
			differenceOf((error) => error),
			differenceOf((error) => Math.abs(error)),
		)
	})
	const most = Math.max(...apart)
	return measures.filter((_, index) => apart[index] === most).map(({ path }) => path)
}
/**
 * @param before the player's earlier visits, oldest first
 * @param assessment what `assess` said of this visit
 * @returns size, raise and insert, where they are asked; the gate and all others are never tried
 */
export function firmness(
	visit: Visit,
	before: readonly Visit[],
	assessment: Given,
	protocol: Protocol,
): Partial<Record<Tried, Firm>> {
	const asked = tried.filter((id) => assessment.prescription.questions.some((one) => one.id === id))
	const wanted = asked.filter((id) => canBeTried(id, assessment, protocol))
	const measures = variedMeasures(visit, protocol).slice(0, mostMeasures)
	const found: Partial<Record<Tried, Firm>> = {}
	for (const id of asked) found[id] = notWorkedOut
	if (wanted.length === 0 || measures.length === 0) return found
	const fixed = fixedOf(visit, before, assessment, protocol)
	const sequence = errorSequence(measures.length)
	const asMeasured = outcomesOf(visit, wanted, fixed)
	const trialled: Outcomes[] = sequence.map((errors) =>
		outcomesOf(moved(visit, measures, errors), wanted, fixed),
	)
	for (const id of wanted) {
		const turned = trialled.map((outcomes) => outcomes[id] !== asMeasured[id])
		const share = turned.filter((isTurned) => !isTurned).length / turned.length
		const how = firmnessOf(share, protocol)
		found[id] = {
			firmness: how,
			decidedBy: how === 'steady' ? [] : deciding(measures, sequence, turned),
			share,
		}
	}
	return found
}
