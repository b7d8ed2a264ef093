/**
 * Size labels from foot length, in exact integer arithmetic so that ties round the same way
 * everywhere.
 */
import type { SizeLabel, Sizes } from '../findings/assessment.ts'
import {
	equation,
	exactly,
	type Formula,
	inNames,
	inNumbers,
	plus,
	quantity,
	times,
} from '../findings/formula.ts'
import { figure } from '../findings/working.ts'
import type { Basis } from '../protocol/basis.ts'
import { rounded } from '../visit/sides.ts'

/** Parts of a mm: a mean of up to six readings of 0.001 mm is a whole number of them. */
const parts = 60_000
/** Common denominator of every formula below: 15/127 per mm is 3 per inch; 29/3 needs the 3. */
const denominator = parts * 127 * 60

/**
 * A size system: slope as a fraction per mm, constant in sixtieths of a size, and the unit in which
 * the trade writes the length. Sources: sizing reference 1.2.
 */
interface Scale {
	rise: number
	run: number
	sixtieths: number
	unit: 'cm' | 'in'
}
const mmPer = { cm: 10, in: 25.4 } as const
const inchScale = (sixtieths: number): Scale => ({ rise: 15, run: 127, sixtieths, unit: 'in' })
const cmScale = (rise: number, run: number, sixtieths: number): Scale => ({
	rise,
	run,
	sixtieths,
	unit: 'cm',
})
const scales = {
	jpCm: cmScale(1, 10, 0),
	eu: cmScale(3, 20, 120), // 1.5 cm + 2
	euLonger: cmScale(3, 20, 135), // 1.5 (cm + 1.5) = 1.5 cm + 2.25
	ukChild: inchScale(-600), // 3 in - 10
	usMen: inchScale(-1320), // 3 in - 22
	usWomen: inchScale(-1260), // 3 in - 21
	usChild: inchScale(-580), // 3 in - 29/3
} as const
/** After the last child size the next scale begins again at its 1. */
export const wrapSizes = 13
export const lastChildSize = 13.5
/** A UK or US size, mm. */
export const mmPerInchSize = scales.ukChild.run / scales.ukChild.rise

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
const ukOf = (part: number): SizeLabel => wrapped(part, scales.ukChild, 'adult')
/** The UK size for a foot length in mm. @throws RangeError as `sizesOf` */
export const ukSizeOf = (lengthMm: number): SizeLabel => ukOf(partsOf(lengthMm))
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
	const uk = ukOf(part)
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
 * mm). @throws RangeError as `sizesOf` @internal
 */
export const euLongerOf = (lengthMm: number): SizeLabel => plain(partsOf(lengthMm), scales.euLonger)

/** The size of a scale as the trade writes it: slope times length in its unit, and the constant. */
function sizeFormula({ rise, run, sixtieths, unit }: Scale, lengthMm: number, less = 0): Formula {
	const per = mmPer[unit]
	// so many sizes a unit, to the last digit of a double: 3 an inch, 1.5 a cm
	const slope = rounded((rise * per) / run, 9)
	const length = quantity(lengthMm / per, 3, `F ${unit}`)
	const scaled = slope === 1 ? length : times(exactly(slope), length)
	const constant = quantity(sixtieths / 60 - less, 3)
	return constant.value === 0 ? scaled : plus(scaled, constant)
}
type System = Exclude<keyof Sizes, 'mondopoint'>
interface SystemWords {
	title: string
	scale: keyof typeof scales
	/** What follows the scale of a child. */
	wraps?: 'adult' | 'youth'
	/** What is said of the formula beside itself. */
	note?: string
	source: string
	strength: Basis['strength']
}
const calculators = 'formula read on two size-calculator pages'
const systems: Record<System, SystemWords> = {
	jpCm: {
		title: 'Japan',
		scale: 'jpCm',
		source: 'JIS S 5037 as read on two secondary pages',
		strength: 'standard',
	},
	eu: {
		title: 'EU',
		scale: 'eu',
		source:
			'Paris point of 2/3 cm (introduction of PD ISO/TS 19407:2015) with two points of ' +
			'allowance; another constant is in print as well',
		strength: 'practice',
	},
	uk: {
		title: 'UK',
		scale: 'ukChild',
		wraps: 'adult',
		source: `${calculators}; adult 5 is a last of 10 in (London makers, 1885)`,
		strength: 'practice',
	},
	usMen: { title: 'US men', scale: 'usMen', source: calculators, strength: 'practice' },
	usWomen: {
		title: 'US women',
		scale: 'usWomen',
		source: `${calculators}; retail often uses men plus 1.5 (from memory)`,
		strength: 'practice',
	},
	usChild: {
		title: 'US child',
		scale: 'usChild',
		wraps: 'youth',
		source: calculators,
		strength: 'practice',
	},
	au: {
		title: 'Australia',
		scale: 'ukChild',
		wraps: 'adult',
		note: 'As UK',
		source: 'common practice (from memory)',
		strength: 'practice',
	},
}
export const systemNames = Object.keys(systems) as System[]
/** A formula with its names and with its numbers, and what it comes to. */
const bothWays = (formula: Formula): string =>
	inNumbers(formula) === figure(formula.value, 3)
		? `${inNames(formula)}: ${inNumbers(formula)}`
		: `${inNames(formula)}: ${equation(formula, '', 3)}`
/** How a system is worked out: its name, the sum with a length put in, and what it rests on. */
export function sizeWorking(
	system: System,
	lengthMm: number,
	{ scale: at }: SizeLabel,
): { title: string; line: string; basis: Basis } {
	const { title, scale, wraps, note, source, strength } = systems[system]
	const wrapped = wraps !== undefined && at !== 'child'
	const formula = sizeFormula(scales[scale], lengthMm, wrapped ? wrapSizes : 0)
	const onScale = wraps === undefined ? '' : `, ${at} scale`
	const after = wrapped ? ` (child ${lastChildSize} is followed by ${at} 1)` : ''
	return {
		title,
		line: `${note === undefined ? '' : `${note}: `}${bothWays(formula)}${onScale}${after}`,
		basis: { rule: `${title}: ${inNames(formula)}${onScale}`, source, strength },
	}
}
/** The EU size by the other formula in print, worked out. */
export function otherEuLine(lengthMm: number): string {
	const formula = sizeFormula(scales.euLonger, lengthMm)
	return `By the other formula in print, ${bothWays(formula)}, label ${euLongerOf(lengthMm).label}`
}
/** The foot length, mm, whose exact size in a system is this one. */
export function lengthOfSize(system: System, size: number): number {
	const { rise, run, sixtieths } = scales[systems[system].scale]
	return ((size - sixtieths / 60) * run) / rise
}
