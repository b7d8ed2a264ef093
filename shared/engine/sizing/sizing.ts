/** Sizing room: both feet in mm, the length to fit, labels, toe room and inside length. */

import type { FootSizing, SizingResult, Span } from '../findings/assessment.ts'
import type { Finding, FindingSide, Level } from '../findings/finding.ts'
import { below } from '../plain/normal.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { bothSides, meanOf, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { changeFindings, footChanges } from './changes.ts'
import { labelConfidence } from './confidence.ts'
import { girthForLengthZ, jisFitting, lengthZ, usMenFitting, widthForLengthZ } from './fittings.ts'
import { sizesOf } from './sizes.ts'
import { sizingWorkings } from './workings.ts'

const list = (value: number | number[] | undefined): number[] =>
	value === undefined ? [] : [value].flat()
const mm = (measure: string, value: number): Because => ({
	measure,
	value: rounded(value, 1),
	unit: 'mm',
})
const sameStance: Basis = {
	rule: 'same stance',
	source:
		'Xiong 2009 (n 30): 2.8 mm (men) and 3.3 mm (women) between unloaded and fully loaded, ' +
		'derived for a stature of 1750 mm',
	strength: 'cross-sectional',
}
const longerFootRule: Basis = {
	rule: 'longer foot',
	source:
		'ISO 9407 definition of foot length (the larger foot decides), as read on secondary pages',
	strength: 'standard',
}

const rooms = {
	boots: {
		adult: ['sizing.toeRoomAdultMinMm', 'sizing.toeRoomAdultTargetMm', 'sizing.toeRoomAdultMaxMm'],
		youth: ['sizing.toeRoomYouthMinMm', 'sizing.toeRoomYouthTargetMm', 'sizing.toeRoomYouthMaxMm'],
	},
	trainers: {
		adult: [
			'sizing.trainerRoomAdultMinMm',
			'sizing.trainerRoomAdultTargetMm',
			'sizing.trainerRoomAdultMaxMm',
		],
		youth: [
			'sizing.trainerRoomYouthMinMm',
			'sizing.trainerRoomYouthTargetMm',
			'sizing.trainerRoomYouthMaxMm',
		],
	},
} as const

/**
 * The measures that a decision rests on: each read twice, a third time where the two differ too
 * much.
 */
const repeated = [
	['heelToToeMm', 'third-reading', 'foot length'],
	['heelToBallMm', 'third-reading-ball', 'heel-to-ball length'],
	['ballWidthMm', 'third-reading-width', 'ball width'],
	['ballGirthMm', 'third-reading-girth', 'ball girth'],
] as const

/**
 * Sizes of a visit's feet. sizeConfidence is the probability that the UK half-size label is right,
 * from the normal error of the mean reading only (SEM of one reading / square root of the
 * readings).
 * @param visit a parsed visit; @param earlier the player's earlier visits, any order
 */
export function sizing(visit: Visit, earlier: readonly Visit[], protocol: Protocol): SizingResult {
	const { sex, birthDate } = visit.player
	const adult = ageYears(birthDate, visit.visitDate) >= protocol.value('sizing.adultFromYears')
	const ratioKey: ThresholdKey = sex === 'male' ? 'sizing.ballRatioMen' : 'sizing.ballRatioWomen'
	const ratio = protocol.value(ratioKey)
	const findings: Finding[] = []
	const say = (
		rule: string,
		side: FindingSide,
		level: Level,
		says: string,
		because: Because[],
		basis: Basis | ThresholdKey,
		name = rule,
	) =>
		findings.push({
			id: `sizing.${rule}.${side}`,
			topic: 'sizing',
			side,
			level,
			says,
			because,
			basis: typeof basis === 'string' ? protocol.basis(name, basis) : basis,
		})

	const foot = (side: Side): FootSizing => {
		const read = visit.feet?.[side]
		const lengthMm = meanOf(read?.heelToToeMm),
			ballLengthMm = meanOf(read?.heelToBallMm),
			widthMm = meanOf(read?.ballWidthMm),
			girthMm = meanOf(read?.ballGirthMm)
		const jis =
			adult && lengthMm !== undefined && girthMm !== undefined
				? jisFitting(lengthMm, girthMm, sex, protocol)
				: undefined
		const us =
			adult && sex === 'male' && lengthMm !== undefined && widthMm !== undefined
				? usMenFitting(lengthMm, widthMm, protocol)
				: undefined
		return {
			...(lengthMm === undefined ? {} : { lengthMm }),
			...(ballLengthMm === undefined ? {} : { ballLengthMm, archLengthMm: ballLengthMm / ratio }),
			...(widthMm === undefined ? {} : { widthMm }),
			...(girthMm === undefined ? {} : { girthMm }),
			...(adult && lengthMm !== undefined
				? {
						lengthZ: lengthZ(lengthMm, sex, protocol),
						lengthPercentile: 100 * below(lengthZ(lengthMm, sex, protocol)),
					}
				: {}),
			...(adult && lengthMm !== undefined && widthMm !== undefined
				? { widthForLengthZ: widthForLengthZ(lengthMm, widthMm, sex, protocol) }
				: {}),
			...(adult && lengthMm !== undefined && girthMm !== undefined
				? { girthForLengthZ: girthForLengthZ(lengthMm, girthMm, sex, protocol) }
				: {}),
			fitting: { ...(jis ? { jis } : {}), ...(us ? { us } : {}) },
		}
	}
	const feet = perSide(foot)
	const { left, right } = feet

	for (const side of bothSides) {
		for (const [field, rule, words] of repeated) {
			const readings = list(visit.feet?.[side]?.[field])
			if (
				readings.length === 2 &&
				rounded(Math.abs(readings[0]! - readings[1]!), 3) > protocol.value('sizing.thirdReadingMm')
			)
				say(
					rule,
					side,
					'advise',
					`Take a third reading of the ${side} ${words}: the two differ by ` +
						`${rounded(Math.abs(readings[0]! - readings[1]!), 1)} mm.`,
					readings.map((reading, i) => mm(`reading ${i + 1}`, reading)),
					'sizing.thirdReadingMm',
					'third reading',
				)
		}
		const z = feet[side].widthForLengthZ
		if (z !== undefined && Math.abs(z) > protocol.value('sizing.widthZ'))
			say(
				z > 0 ? 'wide' : 'narrow',
				side,
				'note',
				`The ${side} foot is ${z > 0 ? 'wide' : 'narrow'} for its length compared with adult ` +
					`${sex === 'male' ? 'men' : 'women'}.`,
				[
					mm('ball width', feet[side].widthMm!),
					mm('foot length', feet[side].lengthMm!),
					{ measure: 'z of width for length', value: rounded(z, 2) },
				],
				'sizing.widthZ',
				'width for length',
			)
	}
	if (visit.feet?.stance === 'seated')
		say(
			'seated',
			'both',
			'caution',
			'The feet were measured seated and read up to about 3 mm shorter than standing. Measure ' +
				'again standing; do not compare these with standing readings.',
			[{ measure: 'stance', value: 'seated' }],
			sameStance,
		)

	const changes = footChanges(visit, earlier, protocol)
	findings.push(...changeFindings(changes, protocol))
	const done = (
		rest: Omit<SizingResult, 'left' | 'right' | 'changes' | 'findings' | 'workings'>,
	): SizingResult => {
		const result = { ...rest, left, right, changes, findings }
		return { ...result, workings: sizingWorkings(visit, result, adult, protocol) }
	}
	const measured = bothSides.filter((side) => feet[side].lengthMm !== undefined)
	if (measured.length === 0) return done({})
	let longerFoot: SizingResult['longerFoot']
	if (measured.length === 2) {
		const difference = rounded(left.lengthMm! - right.lengthMm!, 4)
		longerFoot =
			Math.abs(difference) <= protocol.value('sizing.equalMm')
				? 'equal'
				: difference > 0
					? 'left'
					: 'right'
		if (Math.abs(difference) > protocol.value('sizing.sideDifferenceMm'))
			say(
				'side-difference',
				'both',
				'advise',
				`The ${longerFoot} foot is ${rounded(Math.abs(difference), 1)} mm longer. Fit the ` +
					'longer foot and check how the shorter one is held.',
				[mm('left length', left.lengthMm!), mm('right length', right.lengthMm!)],
				'sizing.sideDifferenceMm',
				'left and right difference',
			)
	} else
		say(
			'one-foot',
			measured[0]!,
			'caution',
			`Only the ${measured[0]} foot was measured. Measure the other: the longer foot decides ` +
				'the size.',
			[mm(`${measured[0]} length`, feet[measured[0]!].lengthMm!)],
			longerFootRule,
		)

	const deciding: Side[] = longerFoot === 'left' || longerFoot === 'right' ? [longerFoot] : measured
	const readingsOf = (side: Side, field: 'heelToToeMm' | 'heelToBallMm') =>
		list(visit.feet?.[side]?.[field]).length
	const largest = (sides: Side[], measure: 'lengthMm' | 'archLengthMm') =>
		sides.filter(
			(side) => feet[side][measure] === Math.max(...sides.map((one) => feet[one][measure]!)),
		)
	const longest = largest(deciding, 'lengthMm')
	const byArch = deciding.filter(
		(side) =>
			feet[side].archLengthMm !== undefined &&
			rounded(feet[side].archLengthMm! - feet[side].lengthMm!, 6) >=
				protocol.value('sizing.halfSizeMm'),
	)
	let fitLengthMm = feet[longest[0]!].lengthMm!
	// Of two feet that tie, the one read fewer times says how sure the size is.
	let readings = Math.min(...longest.map((side) => readingsOf(side, 'heelToToeMm'))),
		semScale = 1
	if (byArch.length > 0) {
		const farthest = largest(byArch, 'archLengthMm')
		fitLengthMm = feet[farthest[0]!].archLengthMm!
		readings = Math.min(...farthest.map((side) => readingsOf(side, 'heelToBallMm')))
		semScale = 1 / ratio
		for (const side of farthest) {
			const { archLengthMm, lengthMm, ballLengthMm } = feet[side]
			say(
				'arch-length',
				side,
				'advise',
				`The ball of the ${side} foot sits far forward: heel to ball asks for a shoe ` +
					`${rounded(archLengthMm! - lengthMm!, 1)} mm longer than heel to toe. The size follows ` +
					'heel to ball.',
				[
					mm('heel to ball', ballLengthMm!),
					mm('length from heel to ball', archLengthMm!),
					mm('heel to toe', lengthMm!),
				],
				ratioKey,
				adult
					? 'heel-to-ball length'
					: 'heel-to-ball length (adult ratio used for a player under 18: no ratio for minors ' +
							'was found)',
			)
		}
	}
	const widths = bothSides.flatMap((side) => feet[side].widthMm ?? [])
	const sizes = sizesOf(fitLengthMm, widths.length ? Math.max(...widths) : undefined)
	const sockMm = visit.feet?.sockMm ?? 0
	const spans = (
		keys: readonly [ThresholdKey, ThresholdKey, ThresholdKey],
	): { toeRoomMm: Span; insideLengthMm: Span } => {
		const room = (key: ThresholdKey) => protocol.value(key),
			inside = (key: ThresholdKey) => rounded(fitLengthMm + sockMm + room(key), 1)
		return {
			toeRoomMm: { min: room(keys[0]), target: room(keys[1]), max: room(keys[2]) },
			insideLengthMm: { min: inside(keys[0]), target: inside(keys[1]), max: inside(keys[2]) },
		}
	}
	const boots = spans(rooms.boots[adult ? 'adult' : 'youth']),
		trainers = spans(rooms.trainers[adult ? 'adult' : 'youth'])
	const sem = (protocol.value('sizing.readingSemMm') * semScale) / Math.sqrt(readings)
	const { insideLengthMm, toeRoomMm } = boots
	say(
		'check-inside',
		'both',
		'note',
		'Labels differ by about one size between makers. Check that the inside length is ' +
			`${insideLengthMm.min} to ${insideLengthMm.max} mm.`,
		[
			mm('length to fit', fitLengthMm),
			mm('sock', sockMm),
			mm('toe room, least', toeRoomMm.min),
			mm('toe room, most', toeRoomMm.max),
		],
		'sizing.labelSpreadMm',
		'check the inside length',
	)
	const girths = bothSides.flatMap((side) => feet[side].girthMm ?? [])
	// The letter belongs to the size chosen: the wider foot, read at the length to fit.
	const jis =
		adult && girths.length > 0
			? jisFitting(fitLengthMm, Math.max(...girths), sex, protocol)
			: undefined
	const us =
		adult && sex === 'male' && widths.length > 0
			? usMenFitting(fitLengthMm, Math.max(...widths), protocol)
			: undefined
	return done({
		fitLengthMm,
		...(longerFoot ? { longerFoot } : {}),
		sizes,
		...boots,
		trainers,
		...labelConfidence(sizes.uk, sem),
		...(jis || us ? { fitting: { ...(jis ? { jis } : {}), ...(us ? { us } : {}) } } : {}),
	})
}
