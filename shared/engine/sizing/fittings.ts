/** Width and girth letters, adults only: no published numbers were found for minors. */
import { exactly, type Formula, minus, over, plus, quantity, times } from '../findings/formula.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { sizesOf } from './sizes.ts'

const jisLetters = ['A', 'B', 'C', 'D', 'E', 'EE', 'EEE', 'EEEE', 'F', 'G'] as const
const usLetters = ['C', 'D', 'E', '2E'] as const
/** The letter that most footwear is made in. */
const usual = { jis: 'E', us: 'D' } as const

/** The JIS size at which the girth of letter E stands in the table, mm. */
const jisBaseSizeMm = 250
/** Girth of the middle of letter E at a JIS size, mm. */
export function jisCentreE(sizeMm: number, sex: 'male' | 'female', protocol: Protocol): Formula {
	const of = (key: ThresholdKey) => exactly(protocol.value(key))
	const men = plus(
		of('sizing.jisGirthEMm'),
		times(of('sizing.jisGirthSlope'), minus(quantity(sizeMm, 1), exactly(jisBaseSizeMm))),
	)
	return sex === 'female' ? minus(men, of('sizing.jisGirthWomenLessMm')) : men
}
/** Lowest width of letter C at a US men's size, mm. */
export function usLowestC(size: number, protocol: Protocol): Formula {
	const of = (key: ThresholdKey) => exactly(protocol.value(key))
	return plus(
		of('sizing.usWidthBaseMm'),
		times(
			of('sizing.usWidthPerSizeMm'),
			minus(quantity(Math.floor(size), 1), of('sizing.usWidthSizeMin')),
		),
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
	const centreE = jisCentreE(size, sex, protocol).value
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
/** The chart makes E wider at its largest size, and 2E begins so much later. */
export const usWiderE = (size: number, protocol: Protocol): number =>
	size >= protocol.value('sizing.usWidthSizeMax') ? protocol.value('sizing.usWidthWiderEMm') : 0
/** Place among the letters of a width at a size; outside them below 0 or past the last. */
function usLetterAt(size: number, widthMm: number, protocol: Protocol): number {
	const letterMm = protocol.value('sizing.usWidthLetterMm')
	const aboveC = Math.round(widthMm) + 0.5 - usLowestC(size, protocol).value
	const beginsWide = (usLetters.length - 1) * letterMm
	const widerMm = aboveC + 1e-9 < beginsWide ? 0 : usWiderE(size, protocol)
	return Math.floor((aboveC - widerMm) / letterMm + 1e-9)
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
	const at = usLetterAt(size, widthMm, protocol)
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
interface Norm {
	mean: ThresholdKey
	sd: ThresholdKey
}
/** Foot length of adults (ANSUR II), by sex. */
export const adultLengths: Record<'male' | 'female', Norm> = {
	male: { mean: 'sizing.lengthMeanMen', sd: 'sizing.lengthSdMen' },
	female: { mean: 'sizing.lengthMeanWomen', sd: 'sizing.lengthSdWomen' },
}
/** Foot length among adults of the same sex as z. Length in mm. */
export function lengthZ(lengthMm: number, sex: 'male' | 'female', protocol: Protocol): Formula {
	const { mean, sd } = adultLengths[sex]
	const of = (key: ThresholdKey) => exactly(protocol.value(key))
	return over(minus(quantity(lengthMm), of(mean)), of(sd))
}
interface Regression {
	intercept: ThresholdKey
	slope: ThresholdKey
	sd: ThresholdKey
}
/** Regressions on foot length, adults (ANSUR II): what is measured, by sex. */
export const regressions: Record<'width' | 'girth', Record<'male' | 'female', Regression>> = {
	width: {
		male: {
			intercept: 'sizing.breadthInterceptMen',
			slope: 'sizing.breadthSlopeMen',
			sd: 'sizing.breadthSdMen',
		},
		female: {
			intercept: 'sizing.breadthInterceptWomen',
			slope: 'sizing.breadthSlopeWomen',
			sd: 'sizing.breadthSdWomen',
		},
	},
	girth: {
		male: {
			intercept: 'sizing.girthInterceptMen',
			slope: 'sizing.girthSlopeMen',
			sd: 'sizing.girthSdMen',
		},
		female: {
			intercept: 'sizing.girthInterceptWomen',
			slope: 'sizing.girthSlopeWomen',
			sd: 'sizing.girthSdWomen',
		},
	},
}
/** Ball width or girth for length, adults (ANSUR II): what is expected (mm), and how far off (z). */
export function forLength(
	lengthMm: number,
	valueMm: number,
	{ intercept, slope, sd }: Regression,
	protocol: Protocol,
): { expected: Formula; z: Formula } {
	const of = (key: ThresholdKey) => exactly(protocol.value(key))
	const byLength = times(of(slope), quantity(lengthMm))
	const expected = plus(of(intercept), byLength)
	return { expected, z: over(minus(quantity(valueMm), of(intercept), byLength), of(sd)) }
}
/** Ball width for length as z, adults. Lengths in mm. */
export const widthForLengthZ = (
	lengthMm: number,
	widthMm: number,
	sex: 'male' | 'female',
	protocol: Protocol,
): number => forLength(lengthMm, widthMm, regressions.width[sex], protocol).z.value
/** Ball girth for length as z, adults. Lengths in mm. */
export const girthForLengthZ = (
	lengthMm: number,
	girthMm: number,
	sex: 'male' | 'female',
	protocol: Protocol,
): number => forLength(lengthMm, girthMm, regressions.girth[sex], protocol).z.value
