/** Width and girth letters, adults only: no published numbers were found for minors. */
import type { Protocol } from '../protocol/protocol.ts'
import { sizesOf } from './sizes.ts'

const jisLetters = ['A', 'B', 'C', 'D', 'E', 'EE', 'EEE', 'EEEE', 'F', 'G'] as const
const usLetters = ['C', 'D', 'E', '2E'] as const

/** JIS S 5037 size and letter, such as '27E', from length and ball girth in mm; undefined outside A to G. */
export function jisFitting(lengthMm: number, girthMm: number, sex: 'male' | 'female', protocol: Protocol): string | undefined {
	const size = sizesOf(lengthMm).mondopoint.lengthMm
	const centreE = protocol.value('sizing.jisGirthEMm') + protocol.value('sizing.jisGirthSlope') * (size - 250) - (sex === 'female' ? protocol.value('sizing.jisGirthWomenLessMm') : 0)
	const step = Math.floor((Math.round(girthMm) - Math.round(centreE) + protocol.value('sizing.jisBandBelowMm')) / protocol.value('sizing.jisLetterMm'))
	const letter = jisLetters[step + jisLetters.indexOf('E')]
	return letter && `${size / 10}${letter}`
}
/** US men's width letter at the label size from ball width in mm, read to 1 mm as the chart is; undefined outside the chart. */
export function usMenFitting(lengthMm: number, widthMm: number, protocol: Protocol): string | undefined {
	const size = sizesOf(lengthMm).usMen.label
	const min = protocol.value('sizing.usWidthSizeMin')
	if (size < min || size > protocol.value('sizing.usWidthSizeMax')) return undefined
	const lower = protocol.value('sizing.usWidthBaseMm') + protocol.value('sizing.usWidthPerSizeMm') * (Math.floor(size) - min)
	return usLetters[Math.floor((Math.round(widthMm) + 0.5 - lower) / protocol.value('sizing.usWidthLetterMm') + 1e-9)]
}
/** Ball width for length as z, adults (ANSUR II regression). Lengths in mm. */
export function widthForLengthZ(lengthMm: number, widthMm: number, sex: 'male' | 'female', protocol: Protocol): number {
	const keys = sex === 'male'
		? (['sizing.breadthInterceptMen', 'sizing.breadthSlopeMen', 'sizing.breadthSdMen'] as const)
		: (['sizing.breadthInterceptWomen', 'sizing.breadthSlopeWomen', 'sizing.breadthSdWomen'] as const)
	const [intercept, slope, sd] = keys.map((key) => protocol.value(key)) as [number, number, number]
	return (widthMm - intercept - slope * lengthMm) / sd
}
