/** What one look at an owned pair comes to, and what the pair is looked at against. */
import { type ShoeKind, type ToeRoomBand, toeRoomBand } from '../../facts/toe-room.ts'
import type { PerSide, ToeRoomForecast } from '../../findings/assessment.ts'
import type { OwnedVerdict } from '../../findings/prescription-result.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { JointName } from '../../visit/shelf.ts'
import type { Surface } from '../../visit/terms.ts'
import type { Statement } from '../../words/statement.ts'

/** Work on a pair that the player owns; what is said of it names it. */
export type OwnedWork =
	| 'smooth-stud'
	| 'fit-stud'
	| 'mend-sole'
	| 'patch-lining'
	| 'heel-lock'
	| 'fill-length'
	| 'find-sore-place'
	| 'take-out-raise'
	| 'take-up-width'
	| 'move-stud'
/** One reason for a verdict; the gravest of a pair's grounds decides. */
export interface Ground {
	verdict: OwnedVerdict
	statement: Statement
	work?: OwnedWork
	/** It is not worn before the work is done. */
	mendFirst?: boolean
	/** The last day by which a pair is replaced, ISO date. */
	by?: string
	/** The room in the pair could not be judged. */
	unknownRoom?: boolean
	/** Said of a pair that stays in use alone. */
	ofUse?: true
	/** The player says that it hurts. */
	hurts?: true
}
/** The player's picture as far as a pair is judged by it; lengths in mm. */
export interface PairPicture {
	visitDate?: string | undefined
	adult: boolean
	/** Length to fit; undefined where no foot was measured. */
	fitMm?: number | undefined
	/** Longest toe of both feet. */
	toesMm?: number | undefined
	sockMm: number
	bands: Readonly<Record<ShoeKind, ToeRoomBand>>
	nailsAreSore: boolean
	footAtRisk: boolean
	/** Nothing is pulled tight over it. */
	heelIsSore: boolean
	/** Joints that should have no stud under them. */
	jointsAtRisk: PerSide<readonly JointName[]>
	/** A foot is swollen or acutely injured: its length is not to buy by. */
	swollen: boolean
	grounds: readonly Surface[]
	/** Share of the usual life, by body mass. */
	lifeShare: number
	/** The growth room's forecasts of toe room. */
	forecasts: readonly ToeRoomForecast[]
	/** Nothing is bought until a review. */
	purchaseHeld: boolean
}
/** A picture of which only what is given is known. */
export function pictureOf(
	known: Partial<Omit<PairPicture, 'bands'>> & { adult: boolean },
	protocol: Protocol,
): PairPicture {
	const nailsAreSore = known.nailsAreSore ?? false
	const whose = { adult: known.adult, nailsAreSore }
	return {
		sockMm: 0,
		footAtRisk: false,
		heelIsSore: false,
		jointsAtRisk: { left: [], right: [] },
		swollen: false,
		grounds: [],
		lifeShare: 1,
		forecasts: [],
		purchaseHeld: false,
		...known,
		nailsAreSore,
		bands: {
			boots: toeRoomBand('boots', whose, protocol),
			trainers: toeRoomBand('trainers', whose, protocol),
		},
	}
}
