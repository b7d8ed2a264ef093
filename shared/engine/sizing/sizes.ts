/**
 * Size labels from foot length, in exact integer arithmetic so that ties round the same way
 * everywhere.
 */
import type { SizeLabel, Sizes } from '../findings/assessment.ts'
import type { Basis } from '../protocol/basis.ts'
import { rounded } from '../visit/sides.ts'

/** Parts of a mm: a mean of up to six readings of 0.001 mm is a whole number of them. */
const parts = 60_000
/** Common denominator of every formula below: 15/127 per mm is 3 per inch; 29/3 needs the 3. */
const denominator = parts * 127 * 60

/**
 * A size system: slope as a fraction per mm, constant in sixtieths. Sources: sizing reference 1.2.
 */
interface Scale {
	rise: number
	run: number
	sixtieths: number
}
const inchScale = (sixtieths: number): Scale => ({ rise: 15, run: 127, sixtieths })
const scales = {
	jpCm: { rise: 1, run: 10, sixtieths: 0 },
	eu: { rise: 3, run: 20, sixtieths: 120 }, // 1.5 cm + 2
	euLonger: { rise: 3, run: 20, sixtieths: 135 }, // 1.5 (cm + 1.5) = 1.5 cm + 2.25
	ukChild: inchScale(-600), // 3 in - 10
	usMen: inchScale(-1320), // 3 in - 22
	usWomen: inchScale(-1260), // 3 in - 21
	usChild: inchScale(-580), // 3 in - 29/3
} as const
const wrapSizes = 13
const lastChildSize = 13.5

const numerator = (part: number, scale: Scale): number =>
	part * ((scale.rise * 127 * 60) / scale.run) + scale.sixtieths * (denominator / 60)
/** The nearest half size of an exact size over the common denominator; ties up, never -0. */
const nearestHalf = (exact: number): number =>
	Math.floor((4 * exact + denominator) / (2 * denominator)) / 2 + 0
/** The next half size up; an exact half stays. */
const nextHalf = (exact: number): number => Math.ceil((2 * exact) / denominator) / 2 + 0

const labelled = (exact: number, scale: SizeLabel['scale']): SizeLabel => ({
	exact: exact / denominator,
	label: nearestHalf(exact),
	fitting: nextHalf(exact),
	scale,
})
function plain(part: number, scale: Scale): SizeLabel {
	return labelled(numerator(part, scale), 'adult')
}
/**
 * Child up to and including 13.5, above that the next scale; a fitting above child 13.5 is 1 of the
 * next scale.
 */
function wrapped(part: number, scale: Scale, above: 'adult' | 'youth'): SizeLabel {
	const exact = numerator(part, scale)
	if (nearestHalf(exact) > lastChildSize) return labelled(exact - wrapSizes * denominator, above)
	const child = labelled(exact, 'child')
	const wraps = child.fitting > lastChildSize
	return wraps ? { ...child, fitting: child.fitting - wrapSizes } : child
}
/** A length in parts of a mm. @throws RangeError when it is not a positive number */
function partsOf(lengthMm: number): number {
	if (!Number.isFinite(lengthMm) || lengthMm <= 0)
		throw new RangeError(
			`foot length: ${lengthMm} mm is not a length, give a positive number of mm`,
		)
	return Math.round(lengthMm * parts)
}
/**
 * Every size system for a foot length in mm and, where known, a ball width in mm.
 * `label` is the nearest half, ties up; `fitting` the next half up (exact halves stay);
 * `scale` names the scale of `label` and `exact`. A child label of 13.5 whose fitting would be 14
 * shows fitting 1: the next half up is 1 of the adult (UK, AU) or youth (US) scale, since 14 does
 * not exist.
 * AU follows UK (common practice, from memory).
 * @throws RangeError when the length is not a positive number
 */
export function sizesOf(lengthMm: number, widthMm?: number): Sizes {
	const part = partsOf(lengthMm)
	const uk = wrapped(part, scales.ukChild, 'adult')
	return {
		mondopoint: {
			lengthMm: Math.floor((2 * part + 5 * parts) / (10 * parts)) * 5,
			...(widthMm === undefined ? {} : { widthMm: Math.round(widthMm) }),
		},
		jpCm: plain(part, scales.jpCm),
		eu: plain(part, scales.eu),
		uk,
		usMen: plain(part, scales.usMen),
		usWomen: plain(part, scales.usWomen),
		usChild: wrapped(part, scales.usChild, 'youth'),
		au: { ...uk },
	}
}

/**
 * EU by the other formula in print, 1.5 (F + 1.5): 15 mm of allowance in place of two points (13.3
 * mm). @throws RangeError as `sizesOf`
 */
export const euLongerOf = (lengthMm: number): SizeLabel => plain(partsOf(lengthMm), scales.euLonger)

/**
 * The named formula of each system with a length put in; unrounded values as `sizesOf` gives them.
 */
const inch = (mm: number): string => String(rounded(mm / 25.4, 3))
const cm = (mm: number): string => String(rounded(mm / 10, 3))
type System = Exclude<keyof Sizes, 'mondopoint'>
const calculators = 'formula read on two size-calculator pages'
const practice = (rule: string, source: string): Basis => ({ rule, source, strength: 'practice' })
export const formulas: Record<
	System,
	{ title: string; line(mm: number, scale: SizeLabel['scale']): string; basis: Basis }
> = {
	jpCm: {
		title: 'Japan',
		line: (mm) => `F cm = ${cm(mm)}`,
		basis: {
			rule: 'Japan: foot length in cm',
			source: 'JIS S 5037 as read on two secondary pages',
			strength: 'standard',
		},
	},
	eu: {
		title: 'EU',
		line: (mm) => `1.5 x F cm + 2 = 1.5 x ${cm(mm)} + 2`,
		basis: practice(
			'EU: 1.5 F + 2',
			'Paris point of 2/3 cm (introduction of PD ISO/TS 19407:2015) with two points of ' +
				'allowance; 1.5 F + 2.25 is in print as well',
		),
	},
	uk: {
		title: 'UK',
		line: (mm, scale) =>
			scale === 'child'
				? `3 x F in - 10 = 3 x ${inch(mm)} - 10, child scale`
				: `3 x F in - 23 = 3 x ${inch(mm)} - 23, adult scale (child 13.5 is followed by adult 1)`,
		basis: practice(
			'UK: 3 F - 23, child 3 F - 10',
			`${calculators}; adult 5 is a last of 10 in (London makers, 1885)`,
		),
	},
	usMen: {
		title: 'US men',
		line: (mm) => `3 x F in - 22 = 3 x ${inch(mm)} - 22`,
		basis: practice('US men: 3 F - 22', calculators),
	},
	usWomen: {
		title: 'US women',
		line: (mm) => `3 x F in - 21 = 3 x ${inch(mm)} - 21`,
		basis: practice(
			'US women: 3 F - 21',
			`${calculators}; retail often uses men plus 1.5 (from memory)`,
		),
	},
	usChild: {
		title: 'US child',
		line: (mm, scale) =>
			`3 x F in - 29/3 = 3 x ${inch(mm)} - ` +
			`9.667${scale === 'child' ? ', child scale' : ', less 13 on the youth scale'}`,
		basis: practice('US child: 3 F - 29/3', calculators),
	},
	au: {
		title: 'Australia',
		line: (mm, scale) => `As UK: 3 x ${inch(mm)} - ${scale === 'child' ? 10 : 23}`,
		basis: practice('Australia: as UK', 'common practice (from memory)'),
	},
}
