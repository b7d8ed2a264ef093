/** The sizing room's numbers, each with its formula and this player's values put in. */
import type { SizingResult } from '../findings/assessment.ts'
import { changeLines } from '../findings/change.ts'
import type { Working } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bothSides, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { limitKey } from './changes.ts'
import { jisCentreE, jisPrinted, regressions, usLowestC } from './fittings.ts'
import { euLongerOf, formulas, sizesOf } from './sizes.ts'

const n = (value: number, digits = 2): string => String(rounded(value, digits))
/** Whole per cent: the error it rests on bears no more; never nought or a hundred. */
const percent = (probability: number): string =>
	probability > 0.99
		? 'over 99 %'
		: probability < 0.01
			? 'under 1 %'
			: `${n(100 * probability, 0)} %`
const list = (value: number | number[] | undefined): number[] =>
	value === undefined ? [] : [value].flat()
const mean = (readings: number[]): string =>
	readings.length === 1
		? `One reading: ${n(readings[0]!)} mm`
		: `Mean of ${readings.length} readings: (${readings.map((reading) => n(reading)).join(' + ')}) / ` +
			`${readings.length} = ${n(readings.reduce((sum, one) => sum + one, 0) / readings.length)} ` +
			'mm'
const iso: Basis = {
	rule: 'foot length, longer foot',
	source:
		'ISO 9407 definition of foot length (standing; the larger foot decides), as read on ' +
		'secondary pages',
	strength: 'standard',
}
const names = { lengthMm: 'length', widthMm: 'width', girthMm: 'girth' } as const

/** @param result the room's result without workings; @param adult whether adult tables apply */
export function sizingWorkings(
	visit: Visit,
	result: Omit<SizingResult, 'workings'>,
	adult: boolean,
	protocol: Protocol,
): Working[] {
	const { sex } = visit.player,
		sockMm = visit.feet?.sockMm ?? 0
	const made: Working[] = []
	const add = (what: string, title: string, lines: string[], basis: Basis) =>
		made.push({ id: `sizing.${what}`, title, lines, basis })
	const ratioKey: ThresholdKey = sex === 'male' ? 'sizing.ballRatioMen' : 'sizing.ballRatioWomen'
	for (const side of bothSides) {
		const foot = result[side],
			read = visit.feet?.[side]
		if (foot.lengthMm !== undefined)
			add(
				`length.${side}`,
				`Foot length, ${side}`,
				[
					mean(list(read?.heelToToeMm)),
					`Stance: ${visit.feet?.stance ?? 'not recorded, taken as standing'}`,
				],
				iso,
			)
		if (
			foot.lengthMm !== undefined &&
			foot.lengthZ !== undefined &&
			foot.lengthPercentile !== undefined
		) {
			const [meanKey, sdKey]: [ThresholdKey, ThresholdKey] =
				sex === 'male'
					? ['sizing.lengthMeanMen', 'sizing.lengthSdMen']
					: ['sizing.lengthMeanWomen', 'sizing.lengthSdWomen']
			add(
				`length-z.${side}`,
				`Foot length among adults, ${side}`,
				[
					`z = (${n(foot.lengthMm)} - ${protocol.value(meanKey)}) / ${protocol.value(sdKey)} = ` +
						`${n(foot.lengthZ)}; centile ${n(foot.lengthPercentile, 0)} of adult ` +
						`${sex === 'male' ? 'men' : 'women'}`,
				],
				protocol.basis('foot length among adults', meanKey),
			)
		}
		if (foot.archLengthMm !== undefined)
			add(
				`arch-length.${side}`,
				`Length from heel to ball, ${side}`,
				[
					mean(list(read?.heelToBallMm)),
					`Heel to ball / published ratio = ${n(foot.ballLengthMm!)} / ` +
						`${protocol.value(ratioKey)} = ${n(foot.archLengthMm)} mm`,
					...(foot.lengthMm === undefined
						? []
						: [
								`${n(foot.archLengthMm)} - ${n(foot.lengthMm)} = ` +
									`${n(foot.archLengthMm - foot.lengthMm)} mm; it decides the size from ` +
									`${protocol.value('sizing.halfSizeMm')} mm (half a size)`,
							]),
					...(adult ? [] : ['The ratio is that of adults: none for minors was found']),
				],
				protocol.basis('heel-to-ball length', ratioKey),
			)
		for (const [what, value, z] of [
			['width', foot.widthMm, foot.widthForLengthZ],
			['girth', foot.girthMm, foot.girthForLengthZ],
		] as const) {
			if (value === undefined || z === undefined) continue
			const keys = regressions[what][sex],
				[intercept, slope, sd] = keys.map((key) => protocol.value(key)) as [number, number, number]
			add(
				`${what}-z.${side}`,
				`Ball ${what} for length, ${side}`,
				[
					mean(list(what === 'width' ? read?.ballWidthMm : read?.ballGirthMm)),
					`Expected: ${intercept} + ${slope} x ${n(foot.lengthMm!)} = ` +
						`${n(intercept + slope * foot.lengthMm!)} mm`,
					`z = (${n(value)} - ${n(intercept + slope * foot.lengthMm!)}) / ${sd} = ${n(z)}`,
				],
				protocol.basis(`ball ${what} for length, adults`, keys[1]),
			)
		}
		if (adult && foot.lengthMm !== undefined && foot.girthMm !== undefined) {
			const size = sizesOf(foot.lengthMm).mondopoint.lengthMm,
				centre = jisCentreE(size, sex, protocol)
			add(
				`jis.${side}`,
				`JIS fitting, ${side}`,
				[
					`Size ${size} mm; middle of letter E: ${protocol.value('sizing.jisGirthEMm')} + ` +
						`${protocol.value('sizing.jisGirthSlope')} x (${size} - ` +
						`250)${sex === 'female' ? ` - ${protocol.value('sizing.jisGirthWomenLessMm')}` : ''} ` +
						`= ${n(centre)} mm; ${protocol.value('sizing.jisLetterMm')} mm a letter, from ` +
						`${protocol.value('sizing.jisBandBelowMm')} mm below the middle`,
					`Ball girth ${n(foot.girthMm)} mm: ` +
						`${foot.fitting.jis ?? (jisPrinted(size, sex, protocol) ? 'outside letters A to G' : `size ${size} is outside the printed sizes`)}`,
				],
				protocol.basis('JIS girth letters', 'sizing.jisGirthEMm'),
			)
		}
		if (adult && sex === 'male' && foot.lengthMm !== undefined && foot.widthMm !== undefined) {
			const size = sizesOf(foot.lengthMm).usMen.label,
				inChart =
					size >= protocol.value('sizing.usWidthSizeMin') &&
					size <= protocol.value('sizing.usWidthSizeMax')
			add(
				`us-width.${side}`,
				`US width letter, ${side}`,
				[
					inChart
						? `US men ${size}: C starts at ${protocol.value('sizing.usWidthBaseMm')} + ` +
							`${protocol.value('sizing.usWidthPerSizeMm')} x (${Math.floor(size)} - ` +
							`${protocol.value('sizing.usWidthSizeMin')}) = ${n(usLowestC(size, protocol))} ` +
							`mm; D, E and 2E each ${protocol.value('sizing.usWidthLetterMm')} mm more`
						: `US men ${size} is outside the chart`,
					`Ball width ${n(foot.widthMm)} mm: ${foot.fitting.us ?? 'no letter'}`,
				],
				protocol.basis("US men's width letters", 'sizing.usWidthBaseMm'),
			)
		}
		for (const measure of ['lengthMm', 'widthMm', 'girthMm'] as const) {
			const change = result.changes[side][measure]
			if (change)
				add(
					`change-${names[measure]}.${side}`,
					`Change of ${names[measure]}, ${side}`,
					changeLines(change),
					protocol.basis('smallest real change', limitKey(measure, change)),
				)
		}
	}
	const { fitLengthMm, sizes, toeRoomMm, insideLengthMm, trainers, sizeConfidence, nextSize } =
		result
	if (
		fitLengthMm === undefined ||
		!sizes ||
		!toeRoomMm ||
		!insideLengthMm ||
		!trainers ||
		sizeConfidence === undefined ||
		!nextSize
	)
		return made
	const feet = bothSides.flatMap((side) =>
		result[side].lengthMm === undefined
			? []
			: [
					`Foot length, ${side}: ${n(result[side].lengthMm!)} ` +
						`mm${result[side].archLengthMm === undefined ? '' : `; from heel to ball ${n(result[side].archLengthMm!)} mm`}`,
				],
	)
	const byToe = bothSides.some((side) => result[side].lengthMm === fitLengthMm)
	add(
		'fit-length',
		'Length to fit',
		[
			...feet,
			`The longer foot decides: ${n(fitLengthMm)} mm, ` +
				`${byToe ? 'heel to toe' : 'from heel to ball, which asks for at least half a size more'}`,
		],
		byToe ? iso : protocol.basis('heel-to-ball length', 'sizing.halfSizeMm'),
	)
	add(
		'mondopoint',
		'Mondopoint',
		[
			`F to the nearest 5 mm: ${n(fitLengthMm)} gives ` +
				`${sizes.mondopoint.lengthMm}${sizes.mondopoint.widthMm === undefined ? '' : `; ball width of the wider foot ${sizes.mondopoint.widthMm}`}`,
		],
		{
			rule: 'Mondopoint',
			source: 'ISO 9407:2019 as summarised; steps of 5 mm',
			strength: 'standard',
		},
	)
	for (const system of Object.keys(formulas) as (keyof typeof formulas)[]) {
		const { title, line, basis } = formulas[system],
			{ exact, label, fitting, scale } = sizes[system]
		const other = euLongerOf(fitLengthMm)
		add(
			`size-${system.toLowerCase()}`,
			title,
			[
				`${line(fitLengthMm, scale)}: ${n(exact, 3)}`,
				`Label, nearest half: ${label}${scale === 'adult' ? '' : ` ${scale}`}; fitting, next ` +
					`half up: ${fitting}`,
				...(system === 'eu'
					? [
							`By the other formula in print, 1.5 F + 2.25: ${n(other.exact, 3)}, label ` +
								`${other.label}`,
						]
					: []),
			],
			basis,
		)
	}
	for (const [what, title, room, inside, key] of [
		[
			'boots',
			'Boots',
			toeRoomMm,
			insideLengthMm,
			adult ? 'sizing.toeRoomAdultMinMm' : 'sizing.toeRoomYouthMinMm',
		],
		[
			'trainers',
			'Trainers',
			trainers.toeRoomMm,
			trainers.insideLengthMm,
			adult ? 'sizing.trainerRoomAdultMinMm' : 'sizing.trainerRoomYouthMinMm',
		],
	] as const)
		add(
			`inside-${what}`,
			`${title}: toe room and inside length`,
			[
				`Toe room ${room.min} to ${room.max} mm, ${adult ? 'adult' : 'growing foot'}; sock ` +
					`${n(sockMm)} mm`,
				...(['min', 'target', 'max'] as const).map(
					(at) =>
						`${{ min: 'Least', target: 'Aim', max: 'Most' }[at]}: ${n(fitLengthMm)} + ` +
						`${n(sockMm)} + ${room[at]} = ${inside[at]} mm inside`,
				),
			],
			protocol.basis(`toe room, ${what}`, key),
		)
	add(
		'confidence',
		'How sure the size is',
		[
			`One reading has a standard error of ${protocol.value('sizing.readingSemMm')} mm; it ` +
				'falls with the square root of the ' +
				`readings${byToe ? '' : ' and grows when divided by the heel-to-ball ratio'}`,
			`UK ${n(sizes.uk.exact, 3)} lies ${n(Math.abs(sizes.uk.exact - sizes.uk.label), 3)} from ` +
				`label ${sizes.uk.label}, which stands for a quarter size either way (${n(127 / 60)} mm)`,
			`Probability of UK ${sizes.uk.label}${sizes.uk.scale === 'child' ? ' child' : ''}: ` +
				`${percent(sizeConfidence)}; next, UK ` +
				`${nextSize.label}${nextSize.scale === 'child' ? ' child' : ''}: ` +
				`${percent(nextSize.probability)}`,
			'Measuring error only: the spread between makers comes on top',
		],
		protocol.basis('error of one reading', 'sizing.readingSemMm'),
	)
	return made
}
