/** Width and girth letters, adults only: no published numbers were found for minors. */
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { sizesOf } from './sizes.ts'

const jisLetters = ['A', 'B', 'C', 'D', 'E', 'EE', 'EEE', 'EEEE', 'F', 'G'] as const
const usLetters = ['C', 'D', 'E', '2E'] as const
/** The letter that most footwear is made in. */
const usual = { jis: 'E', us: 'D' } as const

/** Girth of the middle of letter E at a JIS size, mm. */
export function jisCentreE(sizeMm: number, sex: 'male' | 'female', protocol: Protocol): number {
	return (
		protocol.value('sizing.jisGirthEMm') +
		protocol.value('sizing.jisGirthSlope') * (sizeMm - 250) -
		(sex === 'female' ? protocol.value('sizing.jisGirthWomenLessMm') : 0)
	)
}
/** Lowest width of letter C at a US men's size, mm. */
export function usLowestC(size: number, protocol: Protocol): number {
	return (
		protocol.value('sizing.usWidthBaseMm') +
		protocol.value('sizing.usWidthPerSizeMm') *
			(Math.floor(size) - protocol.value('sizing.usWidthSizeMin'))
	)
}
/** Whether the standard prints fittings at this size: men 20 to 30 cm, women 19.5 to 27 cm. */
export const jisPrinted = (sizeMm: number, sex: 'male' | 'female', protocol: Protocol): boolean =>
	sizeMm >=
		protocol.value(sex === 'male' ? 'sizing.jisSizeMinMenMm' : 'sizing.jisSizeMinWomenMm') &&
	sizeMm <= protocol.value(sex === 'male' ? 'sizing.jisSizeMaxMenMm' : 'sizing.jisSizeMaxWomenMm')
/**
 * Letters above the usual JIS letter E (below it negative), from length and ball girth in mm;
 * undefined outside A to G and outside the printed sizes.
 */
export function jisLettersAbove(
	lengthMm: number,
	girthMm: number,
	sex: 'male' | 'female',
	protocol: Protocol,
): number | undefined {
	const size = sizesOf(lengthMm).mondopoint.lengthMm
	if (!jisPrinted(size, sex, protocol)) return undefined
	const centreE = jisCentreE(size, sex, protocol)
	const step = Math.floor(
		(Math.round(girthMm) - Math.round(centreE) + protocol.value('sizing.jisBandBelowMm')) /
			protocol.value('sizing.jisLetterMm'),
	)
	return jisLetters[step + jisLetters.indexOf(usual.jis)] === undefined ? undefined : step
}
/**
 * JIS S 5037 size and letter, such as '27E', from length and ball girth in mm; undefined outside A
 * to G and outside the printed sizes.
 */
export function jisFitting(
	lengthMm: number,
	girthMm: number,
	sex: 'male' | 'female',
	protocol: Protocol,
): string | undefined {
	const step = jisLettersAbove(lengthMm, girthMm, sex, protocol)
	if (step === undefined) return undefined
	const letter = jisLetters[step + jisLetters.indexOf(usual.jis)]
	return letter && `${sizesOf(lengthMm).mondopoint.lengthMm / 10}${letter}`
}
/**
 * Letters above the usual US men's letter D (below it negative) at the label size, from ball width
 * in mm, read to 1 mm as the chart is; undefined outside the chart.
 */
export function usMenLettersAbove(
	lengthMm: number,
	widthMm: number,
	protocol: Protocol,
): number | undefined {
	const size = sizesOf(lengthMm).usMen.label
	const min = protocol.value('sizing.usWidthSizeMin')
	if (size < min || size > protocol.value('sizing.usWidthSizeMax')) return undefined
	const at = Math.floor(
		(Math.round(widthMm) + 0.5 - usLowestC(size, protocol)) /
			protocol.value('sizing.usWidthLetterMm') +
			1e-9,
	)
	return usLetters[at] === undefined ? undefined : at - usLetters.indexOf(usual.us)
}
/** US men's width letter at the label size from ball width in mm; undefined outside the chart. */
export function usMenFitting(
	lengthMm: number,
	widthMm: number,
	protocol: Protocol,
): string | undefined {
	const above = usMenLettersAbove(lengthMm, widthMm, protocol)
	return above === undefined ? undefined : usLetters[above + usLetters.indexOf(usual.us)]
}
/** Foot length among adults of the same sex as z (ANSUR II means). Length in mm. */
export const lengthZ = (lengthMm: number, sex: 'male' | 'female', protocol: Protocol): number =>
	sex === 'male'
		? (lengthMm - protocol.value('sizing.lengthMeanMen')) / protocol.value('sizing.lengthSdMen')
		: (lengthMm - protocol.value('sizing.lengthMeanWomen')) / protocol.value('sizing.lengthSdWomen')
type Regression = readonly [intercept: ThresholdKey, slope: ThresholdKey, sd: ThresholdKey]
/** Regressions on foot length, adults (ANSUR II): what is measured, by sex. */
export const regressions: Record<'width' | 'girth', Record<'male' | 'female', Regression>> = {
	width: {
		male: ['sizing.breadthInterceptMen', 'sizing.breadthSlopeMen', 'sizing.breadthSdMen'],
		female: ['sizing.breadthInterceptWomen', 'sizing.breadthSlopeWomen', 'sizing.breadthSdWomen'],
	},
	girth: {
		male: ['sizing.girthInterceptMen', 'sizing.girthSlopeMen', 'sizing.girthSdMen'],
		female: ['sizing.girthInterceptWomen', 'sizing.girthSlopeWomen', 'sizing.girthSdWomen'],
	},
}
const forLengthZ = (
	lengthMm: number,
	value: number,
	[intercept, slope, sd]: Regression,
	protocol: Protocol,
): number =>
	(value - protocol.value(intercept) - protocol.value(slope) * lengthMm) / protocol.value(sd)
/** Ball width for length as z, adults (ANSUR II regression). Lengths in mm. */
export const widthForLengthZ = (
	lengthMm: number,
	widthMm: number,
	sex: 'male' | 'female',
	protocol: Protocol,
): number => forLengthZ(lengthMm, widthMm, regressions.width[sex], protocol)
/** Ball girth for length as z, adults (ANSUR II regression). Lengths in mm. */
export const girthForLengthZ = (
	lengthMm: number,
	girthMm: number,
	sex: 'male' | 'female',
	protocol: Protocol,
): number => forLengthZ(lengthMm, girthMm, regressions.girth[sex], protocol)
