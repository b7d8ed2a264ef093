/** How the numbers of one foot were worked out. */
import { isAdult } from '../facts/age.ts'
import type { FootSizing, SizingResult } from '../findings/assessment.ts'
import { changeLines } from '../findings/change.ts'
import type { Working } from '../findings/finding.ts'
import { equation, minus, quantity } from '../findings/formula.ts'
import { meanLine } from '../findings/mean-line.ts'
import { figure, linesOf } from '../findings/working.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { footMeasures, limitKey } from './changes.ts'
import { ballRatioKey, lengthFromBall } from './feet.ts'
import {
	adultLengths,
	forLength,
	jisCentreE,
	jisPrinted,
	lengthZ,
	regressions,
	usLowestC,
	usWiderE,
} from './fittings.ts'
import { readingsOf } from './readings.ts'
import { sizesOf } from './sizes.ts'

/** What the length of a foot rests on, where heel to toe decides. */
export const footLengthBasis: Basis = {
	rule: 'foot length, longer foot',
	source:
		'ISO 9407 definition of foot length (standing; the larger foot decides), as read on ' +
		'secondary pages',
	strength: 'standard',
}
/** One foot of a visit, with the protocol that judges it. */
interface Foot {
	visit: Visit
	side: Side
	foot: FootSizing
	protocol: Protocol
}

function lengthWorkings({ visit, side, foot }: Foot): Working[] {
	if (foot.lengthMm === undefined) return []
	return [
		{
			id: `sizing.length.${side}`,
			title: `Foot length, ${side}`,
			lines: [
				meanLine(readingsOf(visit, side, 'heelToToeMm'), 'mm'),
				`Stance: ${visit.feet?.stance ?? 'not recorded, taken as standing'}`,
			],
			basis: footLengthBasis,
		},
	]
}
const adultWords = { male: 'men', female: 'women' } as const
function lengthAmongAdultsWorkings({ visit, side, foot, protocol }: Foot): Working[] {
	const { lengthMm, lengthPercentile } = foot
	if (lengthMm === undefined || lengthPercentile === undefined) return []
	const { sex } = visit.player
	return [
		{
			id: `sizing.length-z.${side}`,
			title: `Foot length among adults, ${side}`,
			lines: [
				`z: ${equation(lengthZ(lengthMm, sex, protocol))}; centile ` +
					`${figure(lengthPercentile, 0)} of adult ${adultWords[sex]}`,
			],
			basis: protocol.basis('foot length among adults', adultLengths[sex].mean),
		},
	]
}
function archLengthWorkings({ visit, side, foot, protocol }: Foot): Working[] {
	const { lengthMm, ballLengthMm, archLengthMm } = foot
	if (ballLengthMm === undefined || archLengthMm === undefined) return []
	const ratioKey = ballRatioKey(visit)
	const compared =
		lengthMm === undefined
			? undefined
			: `${equation(minus(quantity(archLengthMm), quantity(lengthMm)), 'mm')}; it decides the size ` +
				`from ${protocol.value('sizing.halfSizeMm')} mm (half a size)`
	return [
		{
			id: `sizing.arch-length.${side}`,
			title: `Length from heel to ball, ${side}`,
			lines: linesOf(
				meanLine(readingsOf(visit, side, 'heelToBallMm'), 'mm'),
				`Heel to ball / published ratio: ` +
					equation(lengthFromBall(visit, ballLengthMm, protocol), 'mm'),
				compared,
				isAdult(visit, protocol)
					? undefined
					: 'The ratio is that of adults: none for minors was found',
			),
			basis: protocol.basis('heel-to-ball length', ratioKey),
		},
	]
}
const measuredForLength = [
	{ what: 'width', field: 'ballWidthMm', mean: 'widthMm', zScore: 'widthForLengthZ' },
	{ what: 'girth', field: 'ballGirthMm', mean: 'girthMm', zScore: 'girthForLengthZ' },
] as const

function forLengthWorkings({ visit, side, foot, protocol }: Foot): Working[] {
	return measuredForLength.flatMap(({ what, field, mean, zScore }) => {
		const { lengthMm } = foot
		const value = foot[mean]
		if (lengthMm === undefined || value === undefined || foot[zScore] === undefined) return []
		const regression = regressions[what][visit.player.sex]
		const { expected, z } = forLength(lengthMm, value, regression, protocol)
		return [
			{
				id: `sizing.${what}-z.${side}`,
				title: `Ball ${what} for length, ${side}`,
				lines: [
					meanLine(readingsOf(visit, side, field), 'mm'),
					`Expected: ${equation(expected, 'mm')}`,
					`z: ${equation(z)}`,
				],
				basis: protocol.basis(`ball ${what} for length, adults`, regression.slope),
			},
		]
	})
}
function jisLetterWords({ visit, foot, protocol }: Foot, sizeMm: number): string {
	if (foot.fitting.jis) return foot.fitting.jis
	return jisPrinted(sizeMm, visit.player.sex, protocol)
		? 'outside letters A to G'
		: `size ${sizeMm} is outside the printed sizes`
}
function jisWorkings(of: Foot): Working[] {
	const { visit, side, foot, protocol } = of
	const { lengthMm, girthMm } = foot
	if (!isAdult(visit, protocol) || lengthMm === undefined || girthMm === undefined) return []
	const { sex } = visit.player
	const sizeMm = sizesOf(lengthMm).mondopoint.lengthMm
	return [
		{
			id: `sizing.jis.${side}`,
			title: `JIS fitting, ${side}`,
			lines: [
				`Size ${sizeMm} mm; middle of letter E: ` +
					`${equation(jisCentreE(sizeMm, sex, protocol), 'mm')}; ` +
					`${protocol.value('sizing.jisLetterMm')} mm a letter, from ` +
					`${protocol.value('sizing.jisBandBelowMm')} mm below the middle`,
				`Ball girth ${figure(girthMm)} mm: ${jisLetterWords(of, sizeMm)}`,
			],
			basis: protocol.basis('JIS girth letters', 'sizing.jisGirthEMm'),
		},
	]
}
const widerEWords = (size: number, protocol: Protocol): string => {
	const widerMm = usWiderE(size, protocol)
	return widerMm === 0 ? '' : `, 2E ${widerMm} mm later at this size`
}
function usChartLine(size: number, protocol: Protocol): string {
	const least = protocol.value('sizing.usWidthSizeMin')
	if (size < least || size > protocol.value('sizing.usWidthSizeMax'))
		return `US men ${size} is outside the chart`
	return (
		`US men ${size}: C starts at ${equation(usLowestC(size, protocol), 'mm')}; D, E and 2E each ` +
		`${protocol.value('sizing.usWidthLetterMm')} mm more${widerEWords(size, protocol)}`
	)
}
function usWidthWorkings({ visit, side, foot, protocol }: Foot): Working[] {
	const { lengthMm, widthMm, fitting } = foot
	if (!isAdult(visit, protocol) || visit.player.sex !== 'male') return []
	if (lengthMm === undefined || widthMm === undefined) return []
	return [
		{
			id: `sizing.us-width.${side}`,
			title: `US width letter, ${side}`,
			lines: [
				usChartLine(sizesOf(lengthMm).usMen.label, protocol),
				`Ball width ${figure(widthMm)} mm: ${fitting.us ?? 'no letter'}`,
			],
			basis: protocol.basis("US men's width letters", 'sizing.usWidthBaseMm'),
		},
	]
}
const changeNames = { lengthMm: 'length', widthMm: 'width', girthMm: 'girth' } as const

function changeWorkings(
	side: Side,
	changes: SizingResult['changes'],
	protocol: Protocol,
): Working[] {
	return footMeasures.flatMap((measure) => {
		const change = changes[side][measure]
		if (!change) return []
		const name = changeNames[measure]
		return [
			{
				id: `sizing.change-${name}.${side}`,
				title: `Change of ${name}, ${side}`,
				lines: changeLines(change),
				basis: protocol.basis('smallest real change', limitKey(measure, change)),
			},
		]
	})
}
/** The workings of one foot. */
export function footWorkings(
	visit: Visit,
	side: Side,
	result: Omit<SizingResult, 'workings'>,
	protocol: Protocol,
): Working[] {
	const foot = { visit, side, foot: result[side], protocol }
	return [
		...lengthWorkings(foot),
		...lengthAmongAdultsWorkings(foot),
		...archLengthWorkings(foot),
		...forLengthWorkings(foot),
		...jisWorkings(foot),
		...usWidthWorkings(foot),
		...changeWorkings(side, result.changes, protocol),
	]
}
