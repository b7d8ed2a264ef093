/** What the sizing room returns. Lengths in mm; a number that cannot be computed is absent. */
import type { Changes } from './compared.ts'
import type { Finding, Working } from './finding.ts'

export interface SizeLabel {
	exact: number
	label: number
	fitting: number
	scale: 'child' | 'adult' | 'youth'
}
export interface Sizes {
	mondopoint: { lengthMm: number; widthMm?: number }
	jpCm: SizeLabel
	eu: SizeLabel
	uk: SizeLabel
	usMen: SizeLabel
	usWomen: SizeLabel
	usChild: SizeLabel
	au: SizeLabel
}
export interface FootSizing {
	lengthMm?: number
	/** Foot length among adults of the same sex; none for minors. */
	lengthZ?: number
	lengthPercentile?: number
	ballLengthMm?: number
	archLengthMm?: number
	widthMm?: number
	girthMm?: number
	widthForLengthZ?: number
	girthForLengthZ?: number
	fitting: { jis?: string; us?: string }
	/** Letters above the usual one of each scheme (JIS E, US D); below it negative. */
	lettersAboveUsual?: { jis?: number; us?: number }
}
export interface Span {
	min: number
	target: number
	max: number
}
export interface SizingResult {
	fitLengthMm?: number
	longerFoot?: 'left' | 'right' | 'equal'
	/** Whether heel to toe or heel to ball decided the length to fit, and of which foot. */
	decidedBy?: 'toe-length' | 'ball-length'
	decidedByFoot?: 'left' | 'right' | 'equal'
	/** False where a foot was measured swollen or acutely injured: nothing is bought by it. */
	usableForBuying?: false
	left: FootSizing
	right: FootSizing
	sizes?: Sizes
	toeRoomMm?: Span
	insideLengthMm?: Span
	/** Probability (0 to 1) that the label size is right, from measurement error. */
	sizeConfidence?: number
	/** The next most likely UK half size and its probability (0 to 1), by the same error. */
	nextSize?: { system: 'uk'; label: number; scale: 'child' | 'adult'; probability: number }
	/** Letters of the wider foot at the length to fit, adults only. */
	fitting?: { jis?: string; us?: string }
	/**
	 * Toe room and inside length to look for in trainers; `toeRoomMm` and `insideLengthMm` above are
	 * for boots.
	 */
	trainers?: { toeRoomMm: Span; insideLengthMm: Span }
	changes: Changes<'lengthMm' | 'widthMm' | 'girthMm'>
	findings: Finding[]
	workings: Working[]
}
