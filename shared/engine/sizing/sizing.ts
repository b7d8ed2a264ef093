/** Sizing room: both feet in mm, the length to fit, labels, toe room and inside length. */
import type { FootSizing, PerSide, SizingResult } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { changeFindings, footChanges } from './changes.ts'
import { labelConfidence } from './confidence.ts'
import { footSizing, isAdult, lettersAt, widthFindings } from './feet.ts'
import { fitLength } from './fit-length.ts'
import { checkInsideFinding, insideLength } from './inside-length.ts'
import { stanceFindings, thirdReadingFindings } from './readings.ts'
import { sizesOf } from './sizes.ts'
import { sizingWorkings } from './workings.ts'

/** The larger of both feet; undefined where neither was measured. */
function largerOf(feet: PerSide<FootSizing>, measure: 'widthMm' | 'girthMm'): number | undefined {
	const measured = bothSides.flatMap((side) => feet[side][measure] ?? [])
	return measured.length === 0 ? undefined : Math.max(...measured)
}
/** What follows from the length to fit: sizes, letters, inside lengths, how sure the label is. */
function sizesToFit(
	visit: Visit,
	feet: PerSide<FootSizing>,
	fitLengthMm: number,
	semMm: number,
	protocol: Protocol,
) {
	const widthMm = largerOf(feet, 'widthMm')
	const sizes = sizesOf(fitLengthMm, widthMm)
	const adult = isAdult(visit, protocol)
	const sockMm = visit.feet?.sockMm ?? 0
	// The letter belongs to the size chosen: the wider foot, read at the length to fit.
	const letters = lettersAt(visit, fitLengthMm, widthMm, largerOf(feet, 'girthMm'), protocol)
	return present({
		sizes,
		...insideLength('boots', adult, fitLengthMm, sockMm, protocol),
		trainers: insideLength('trainers', adult, fitLengthMm, sockMm, protocol),
		...labelConfidence(sizes.uk, semMm),
		fitting: letters.jis || letters.us ? letters : undefined,
	})
}
/**
 * Sizes of a visit's feet. sizeConfidence is the probability that the UK half-size label is right,
 * from the normal error of the mean reading only (SEM of one reading / square root of the
 * readings).
 * @param visit a parsed visit; @param earlier the player's earlier visits, any order
 */
export function sizing(visit: Visit, earlier: readonly Visit[], protocol: Protocol): SizingResult {
	const feet = perSide((side) => footSizing(visit, side, protocol))
	const changes = footChanges(visit, earlier, protocol)
	const {
		fitLengthMm,
		longerFoot,
		semMm,
		findings: lengthFindings,
	} = fitLength(visit, feet, protocol)
	const findings = [
		...bothSides.flatMap((side) => [
			...thirdReadingFindings(visit, side, protocol),
			...widthFindings(visit, side, feet, protocol),
		]),
		...stanceFindings(visit),
		...changeFindings(visit, changes, protocol),
		...lengthFindings,
	]
	const parts = { ...feet, changes, findings }
	if (fitLengthMm === undefined || semMm === undefined)
		return { ...parts, workings: sizingWorkings(visit, parts, protocol) }
	const toFit = sizesToFit(visit, feet, fitLengthMm, semMm, protocol)
	const sockMm = visit.feet?.sockMm ?? 0
	const result = {
		...present({ fitLengthMm, longerFoot }),
		...toFit,
		...parts,
		findings: [...findings, checkInsideFinding(toFit, fitLengthMm, sockMm, protocol)],
	}
	return { ...result, workings: sizingWorkings(visit, result, protocol) }
}
