/** Sizing room: both feet in mm, the length to fit, labels, toe room and inside length. */
import { isAdult } from '../facts/age.ts'
import { type ShoeKind, soreNails, toeRoomBand } from '../facts/toe-room.ts'
import type {
	FootSizing,
	PerSide,
	PlayerFacts,
	SizeLabel,
	SizingResult,
} from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Shelf } from '../visit/shelf.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { changeFindings, footChanges } from './changes.ts'
import { labelConfidence } from './confidence.ts'
import { footSizing, lengthsOf, lettersAt, widthFindings } from './feet.ts'
import { fitLength, fitLengthFindings } from './fit-length.ts'
import { checkInsideFinding, insideLength } from './inside-length.ts'
import { stanceFindings, thirdReadingFindings } from './readings.ts'
import { sizesOf, ukSizeOf } from './sizes.ts'
import { swollenFindings } from './swollen.ts'
import { sizingWorkings } from './workings.ts'
import { youngWidthFindings } from './young-width.ts'

/** The larger of both feet; undefined where neither was measured. */
function largerOf(feet: PerSide<FootSizing>, measure: 'widthMm' | 'girthMm'): number | undefined {
	const measured = bothSides.flatMap((side) => feet[side][measure] ?? [])
	return measured.length === 0 ? undefined : Math.max(...measured)
}
/** The length inside boots and trainers that the length to fit asks for, mm. */
function insideToFit(visit: Visit, fitLengthMm: number, protocol: Protocol) {
	const sockMm = visit.feet?.sockMm ?? 0
	const whose = { adult: isAdult(visit, protocol), nailsAreSore: soreNails(visit).length > 0 }
	const inside = (kind: ShoeKind) =>
		insideLength(toeRoomBand(kind, whose, protocol), fitLengthMm, sockMm)
	return { ...inside('boots'), trainers: inside('trainers') }
}
/** Absent where no foot was measured. */
export type SizeAlone = Partial<ReturnType<typeof insideToFit>> & { uk?: SizeLabel }
/** The UK size and the lengths inside alone, without a word: what a trial of the size turns on. */
export function sizeAlone(visit: Visit, protocol: Protocol): SizeAlone {
	const feet = perSide((side) => lengthsOf(visit, side, protocol))
	const { fitLengthMm } = fitLength(visit, feet, protocol)
	if (fitLengthMm === undefined) return {}
	return { uk: ukSizeOf(fitLengthMm), ...insideToFit(visit, fitLengthMm, protocol) }
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
	// The letter belongs to the size chosen: the wider foot, read at the length to fit.
	const letters = lettersAt(visit, fitLengthMm, widthMm, largerOf(feet, 'girthMm'), protocol)
	return present({
		sizes,
		...insideToFit(visit, fitLengthMm, protocol),
		...labelConfidence(sizes.uk, semMm),
		fitting: letters.jis || letters.us ? letters : undefined,
	})
}
/** What the room draws on beside the visit, where it is known. */
export interface SizingContext {
	facts?: PlayerFacts | undefined
	shelf?: Shelf | undefined
}
/**
 * Sizes of a visit's feet. sizeConfidence is the probability that the UK half-size label is right,
 * from the normal error of the mean reading only (SEM of one reading / square root of the
 * readings).
 * @param visit a parsed visit; @param earlier the player's earlier visits, any order
 * @param context the player's facts: a swollen foot's size is not to buy by; the clinic's shelf,
 * whose widths a young foot is held against
 */
export function sizing(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
	{ facts, shelf }: SizingContext = {},
): SizingResult {
	const feet = perSide((side) => footSizing(visit, side, protocol))
	const changes = footChanges(visit, earlier, protocol)
	const { semMm, ...fit } = fitLength(visit, feet, protocol)
	const swollen = swollenFindings(visit, facts)
	const findings = [
		...swollen,
		...bothSides.flatMap((side) => [
			...thirdReadingFindings(visit, side, protocol),
			...widthFindings(visit, side, feet, protocol),
		]),
		...stanceFindings(visit),
		...changeFindings(visit, changes, protocol),
		...fitLengthFindings(visit, feet, protocol),
	]
	const parts = {
		...feet,
		...(swollen.length > 0 ? { usableForBuying: false as const } : {}),
		changes,
		findings,
	}
	const { fitLengthMm } = fit
	if (fitLengthMm === undefined || semMm === undefined)
		return { ...parts, workings: sizingWorkings(visit, parts, protocol) }
	const toFit = sizesToFit(visit, feet, fitLengthMm, semMm, protocol)
	const sockMm = visit.feet?.sockMm ?? 0
	const result = {
		...present(fit),
		...toFit,
		...parts,
		findings: [
			...findings,
			...youngWidthFindings(visit, feet, toFit, shelf, protocol),
			checkInsideFinding(toFit, fitLengthMm, sockMm, protocol),
		],
	}
	return { ...result, workings: sizingWorkings(visit, result, protocol) }
}
