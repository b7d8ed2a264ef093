/**
 * Matching the shelf to a player: the best size and fitting of each model, hard stops, soft
 * penalties, and the reasons.
 * Deterministic: the order is stops last, then points, then id. Points are for the order only;
 * every weight is a protocol row.
 */
import type {
	AnkleResult,
	FeatureWish,
	FootwearResult,
	InsertElement,
	InsertResult,
	JointName,
	MatchReason,
	PerSide,
	PostureResult,
	RankedModel,
	SizingResult,
	Span,
	StudDistance,
} from '../findings/assessment.ts'
import type { Basis, Because, Strength } from '../protocol/basis.ts'
import { suitabilityBasis } from '../protocol/norms/suitability.table.ts'
import { suitability } from '../protocol/norms/suitability.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { type Model, offsetOf, type Shelf, type ShelfSize } from '../visit/shelf.ts'
import { bothSides, meanOf, perSide, rounded } from '../visit/sides.ts'
import { type Feature, type Sole, type Surface, termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { type Fitted, hasAvoided, hasFeature, type Limits, limitsOf } from './features.ts'
import {
	type JointRisks,
	type Joints,
	jointNames,
	jointRisks,
	jointsOf,
	studDistances,
	studWork,
} from './studs.ts'

/**
 * What an insert takes: its thickness under the forefoot and at the heel, mm; a cup also takes
 * length.
 */
export interface InsertVolume {
	forefootMm: number
	heelMm: number
	cup: boolean
}
/**
 * What the insert proposed would take in a boot, the larger of the two sides; undefined where none
 * is proposed.
 */
export function insertVolume(inserts: InsertResult): InsertVolume | undefined {
	const sides = bothSides
		.map((side) => inserts[side])
		.filter((side) => side.state === 'proposed')
		.map((side) => side.elements.filter((element) => element.where !== 'trainer'))
	if (sides.length === 0) return undefined
	const sum = (elements: readonly InsertElement[], names: readonly string[]) =>
		elements
			.filter((element) => names.includes(element.element) && element.unit?.startsWith('mm'))
			.reduce((total, one) => total + (one.value ?? 0), 0)
	const full = (elements: readonly InsertElement[]) =>
		elements.some((element) => element.element === 'length' && element.choice === 'full')
	return {
		forefootMm: Math.max(
			...sides.map((side) =>
				full(side) ? sum(side, ['cover', 'forefoot-cushion', 'forefoot-stiffener']) : 0,
			),
		),
		heelMm: Math.max(
			...sides.map((side) =>
				sum(side, ['shell', 'cover', 'heel-cushion', 'heel-raise', 'leg-length-raise']),
			),
		),
		cup: sides.some((side) => side.some((element) => element.element === 'heel-cup')),
	}
}
type Code = NonNullable<NonNullable<Visit['play']>['code']>
export interface MatchContext {
	sizing: SizingResult
	ankle: AnkleResult
	posture: PostureResult
	target: FootwearResult['target']
	contradictions: FootwearResult['contradictions']
	adult: boolean
	strictRules: ReadonlySet<string>
	insert?: InsertVolume | undefined
}

/** Everything that does not depend on the model, worked out once for the whole shelf. */
export interface Needs {
	/** Length to fit with sock and insert, mm: inside length less this is the toe room. */
	lengthMm: number
	widthMm?: number
	depthMm?: number
	insert?: InsertVolume
	adult: boolean
	boot: Span
	trainer: Span
	surfaces: readonly Surface[]
	code?: Code
	joints: PerSide<Joints | undefined>
	risks: PerSide<JointRisks>
	because: { length: Because[]; width: Because[]; depth: Because[] }
}
const mm = (measure: string, value: number): Because => ({
	measure,
	value: rounded(value, 1),
	unit: 'mm',
})
const most = (values: (number | undefined)[]): number | undefined => {
	const known = values.filter((value) => value !== undefined)
	return known.length === 0 ? undefined : Math.max(...known)
}

/** @returns undefined where no foot length is known: nothing can be matched */
export function needsOf(
	visit: Visit,
	context: MatchContext,
	protocol: Protocol,
): Needs | undefined {
	const { sizing, posture, insert, adult } = context
	if (
		sizing.fitLengthMm === undefined ||
		sizing.toeRoomMm === undefined ||
		sizing.trainers === undefined
	)
		return undefined
	const sock = visit.feet?.sockMm ?? 0
	const taken = insert?.cup ? protocol.value('footwear.insertLengthMm') : 0
	const widthMm = most([sizing.left.widthMm, sizing.right.widthMm])
	const depthMm = most(bothSides.map((side) => meanOf(visit.feet?.[side]?.toeDepthMm)))
	return {
		lengthMm: sizing.fitLengthMm + sock + taken,
		...(widthMm === undefined ? {} : { widthMm }),
		...(depthMm === undefined ? {} : { depthMm }),
		...(insert ? { insert } : {}),
		adult,
		boot: sizing.toeRoomMm,
		trainer: sizing.trainers.toeRoomMm,
		surfaces: visit.play?.surfaces ?? [],
		...(visit.play?.code ? { code: visit.play.code } : {}),
		joints: perSide((side) => jointsOf(sizing, side, protocol)),
		risks: perSide((side) => jointRisks(visit, posture, side)),
		because: {
			length: [
				mm('Length to fit', sizing.fitLengthMm),
				...(sock > 0 ? [mm('Sock', sock)] : []),
				...(taken > 0 ? [mm('Insert, heel cup', taken)] : []),
			],
			width: widthMm === undefined ? [] : [mm('Wider foot', widthMm)],
			depth:
				depthMm === undefined
					? []
					: [
							mm('Toe depth', depthMm),
							...(insert && insert.forefootMm > 0
								? [mm('Insert under the forefoot', insert.forefootMm)]
								: []),
						],
		},
	}
}
const trainers = ['road', 'trail']
const roomKeys = {
	boot: {
		adult: {
			min: 'sizing.toeRoomAdultMinMm',
			target: 'sizing.toeRoomAdultTargetMm',
			max: 'sizing.toeRoomAdultMaxMm',
		},
		youth: {
			min: 'sizing.toeRoomYouthMinMm',
			target: 'sizing.toeRoomYouthTargetMm',
			max: 'sizing.toeRoomYouthMaxMm',
		},
	},
	trainer: {
		adult: {
			min: 'sizing.trainerRoomAdultMinMm',
			target: 'sizing.trainerRoomAdultTargetMm',
			max: 'sizing.trainerRoomAdultMaxMm',
		},
		youth: {
			min: 'sizing.trainerRoomYouthMinMm',
			target: 'sizing.trainerRoomYouthTargetMm',
			max: 'sizing.trainerRoomYouthMaxMm',
		},
	},
} as const satisfies Record<
	'boot' | 'trainer',
	Record<'adult' | 'youth', Record<keyof Span, ThresholdKey>>
>
export const roomFor = (model: Model, needs: Needs): Span =>
	trainers.includes(model.sole) ? needs.trainer : needs.boot

interface SizeGroup {
	insideLengthMm: number
	fittings: ShelfSize[]
}
/** The fittings of one label, told by the shortest of them. */
function groupsOf(model: Model): SizeGroup[] {
	const groups: (SizeGroup & { system: string; label: number })[] = []
	for (const size of model.sizes) {
		const last = groups.at(-1)
		const group =
			last?.label === size.label && last.system === size.system
				? last
				: groups.find((one) => one.label === size.label && one.system === size.system)
		if (group) {
			group.fittings.push(size)
			group.insideLengthMm = Math.min(group.insideLengthMm, size.insideLengthMm)
		} else
			groups.push({
				system: size.system,
				label: size.label,
				insideLengthMm: size.insideLengthMm,
				fittings: [size],
			})
	}
	return groups
}
/** Text order that does not depend on the language of the PC. */
const byText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
const sameSize = (a: ShelfSize, b: ShelfSize) =>
	byText(`${a.system} ${a.label} ${a.fitting ?? ''}`, `${b.system} ${b.label} ${b.fitting ?? ''}`)
/**
 * The best size: of the labels with enough toe room the one nearest the target (else the longest),
 * then of its fittings the
 * narrowest that is not tight on the wider foot (else the widest). A longer or wider foot never
 * gets a shorter label or a narrower fitting.
 */
export function bestSize(model: Model, needs: Needs, tightMm: number): ShelfSize {
	const room = roomFor(model, needs)
	const groups = groupsOf(model)
	const enough = groups.filter((group) => group.insideLengthMm - needs.lengthMm >= room.min)
	const off = (group: SizeGroup) => Math.abs(group.insideLengthMm - needs.lengthMm - room.target)
	const group =
		enough.length > 0
			? enough.reduce((best, one) =>
					off(one) < off(best) ||
					(off(one) === off(best) && one.insideLengthMm > best.insideLengthMm)
						? one
						: best,
				)
			: groups.reduce((best, one) => (one.insideLengthMm > best.insideLengthMm ? one : best))
	const fittings = [...group.fittings].sort(
		(a, b) => a.ballWidthMm - b.ballWidthMm || sameSize(a, b),
	)
	if (needs.widthMm === undefined) return fittings[Math.floor((fittings.length - 1) / 2)]!
	return (
		fittings.find((fitting) => fitting.ballWidthMm - needs.widthMm! >= tightMm) ?? fittings.at(-1)!
	)
}

const pointsKey: Record<Strength, ThresholdKey> = {
	standard: 'footwear.pointsFirm',
	guideline: 'footwear.pointsFirm',
	trial: 'footwear.pointsFirm',
	cohort: 'footwear.pointsCohort',
	'cross-sectional': 'footwear.pointsCohort',
	expert: 'footwear.pointsPractice',
	practice: 'footwear.pointsPractice',
	clinic: 'footwear.pointsPractice',
}
const strengthOrder: readonly Strength[] = [
	'standard',
	'guideline',
	'trial',
	'cohort',
	'cross-sectional',
	'expert',
	'practice',
	'clinic',
]
interface Wish {
	feature: Feature
	because: Because[]
	basis: Basis
	rules: string
	words: string
	points: number
	strict: boolean
	has: MatchReason
	lacks: MatchReason
	better: MatchReason
}
/**
 * The wishes for one feature as one, on the strongest basis; a contradicted one counts for less.
 */
function merged(
	wishes: readonly FeatureWish[],
	contested: ReadonlySet<Feature>,
	strict: ReadonlySet<string>,
	protocol: Protocol,
): Wish[] {
	const by = new Map<Feature, FeatureWish[]>()
	for (const wish of wishes) by.set(wish.feature, [...(by.get(wish.feature) ?? []), wish])
	return [...by].map(([feature, list]) => {
		const first = [...list].sort(
			(a, b) => strengthOrder.indexOf(a.basis.strength) - strengthOrder.indexOf(b.basis.strength),
		)[0]!
		const seen = new Set<string>()
		const because = list
			.flatMap((wish) => wish.because)
			.filter((reason) => {
				const key = `${reason.measure} ${reason.value}`
				if (seen.has(key)) return false
				seen.add(key)
				return true
			})
		const share = contested.has(feature) ? protocol.value('footwear.pointsContested') : 1
		const words = termWords(feature),
			rules = [...new Set(list.map((wish) => termWords(wish.rule)))].join(', '),
			{ basis } = first
		const points = rounded(protocol.value(pointsKey[basis.strength]) * share, 2)
		return {
			feature,
			because,
			basis,
			rules,
			words,
			points,
			strict: list.some((wish) => strict.has(wish.rule)),
			has: {
				rule: `seek-${feature}`,
				says: `Has what is sought: ${words} (${rules}).`,
				because,
				basis,
			},
			lacks: {
				rule: `seek-${feature}`,
				says: `Lacks what is sought: ${words} (${rules}).`,
				points,
				because,
				basis,
			},
			better: {
				rule: `avoid-${feature}`,
				says: `Has what is better avoided: ${words} (${rules}).`,
				points,
				because,
				basis,
			},
		}
	})
}

interface Judge {
	needs: Needs
	surfacesOf(sole: Sole): GroundVerdict
	seek: Wish[]
	avoid: Wish[]
	limits: Limits
	offset: AnkleResult['offsetMm']
	value: (key: ThresholdKey) => number
	basis: (rule: string, key: ThresholdKey) => Basis
}
const list = (words: readonly string[]) =>
	words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
const withArticle = (words: string) => `${/^[aeiou]/.test(words) ? 'An' : 'A'} ${words}`
const clearOf: Partial<Record<Feature, JointName>> = {
	'stud-clear-of-first-joint': 'first metatarsal head',
	'stud-clear-of-fifth-metatarsal': 'fifth metatarsal head',
}

interface GroundVerdict {
	stops: MatchReason[]
	for: MatchReason[]
	against: MatchReason[]
}
/**
 * A sole on the player's surfaces, on dry ground: which pair on which wet day is for the season's
 * plan.
 */
function groundVerdict(
	sole: Sole,
	surfaces: readonly Surface[],
	value: Judge['value'],
): GroundVerdict {
	const verdict: GroundVerdict = { stops: [], for: [], against: [] }
	if (surfaces.length === 0) return verdict
	const costs = surfaces.map((surface) => ({
		words: termWords(surface),
		cost: suitability[sole][surface].dry,
	}))
	const banned = costs.filter((cost) => cost.cost === 'forbidden').map((cost) => cost.words)
	const because = costs.map((cost) => ({
		measure: `${termWords(sole)} sole on ${cost.words}`,
		value: cost.cost,
	}))
	const open = costs.flatMap((cost) => (cost.cost === 'forbidden' ? [] : [cost.cost]))
	const reason = (rule: string, says: string, points?: number): MatchReason => ({
		rule,
		says,
		...(points === undefined ? {} : { points: rounded(points, 2) }),
		because,
		basis: suitabilityBasis,
	})
	const a = withArticle(termWords(sole))
	if (open.length === 0)
		return {
			...verdict,
			stops: [
				reason('sole', `${a} sole is unsuitable on every surface played on (${list(banned)}).`),
			],
		}
	if (banned.length > 0)
		verdict.against.push(
			reason(
				'sole-part',
				`Not to be worn on ${list(banned)}: a second pair is needed there.`,
				banned.length * value('footwear.pointsForbidden'),
			),
		)
	const mean = open.reduce((sum, one) => sum + one, 0) / open.length
	const fine = costs
		.filter((cost) => cost.cost !== 'forbidden' && cost.cost <= 0.5)
		.map((cost) => cost.words)
	if (mean > 0)
		verdict.against.push(
			reason(
				'surface',
				`${a} sole is ` +
					`${mean > 1.5 ? 'poor' : mean > 0.5 ? 'second choice' : 'nearly the best choice'} for ` +
					'the surfaces it may be worn on.',
				mean * value('footwear.pointsSurface'),
			),
		)
	if (fine.length > 0)
		verdict.for.push(reason('surface-fit', `Its ${termWords(sole)} sole suits ${list(fine)}.`))
	return verdict
}

function judge(
	model: Model,
	size: ShelfSize,
	{ needs, surfacesOf, seek, avoid, limits, offset, value, basis }: Judge,
): RankedModel {
	const stops: MatchReason[] = [],
		pro: MatchReason[] = [],
		against: MatchReason[] = [],
		unknown: string[] = [],
		wouldChange: string[] = []
	const stop = (rule: string, says: string, because: Because[], source: Basis) =>
		stops.push({ rule, says, because, basis: source })
	const good = (rule: string, says: string, because: Because[], source: Basis) =>
		pro.push({ rule, says, because, basis: source })
	const bad = (rule: string, says: string, points: number, because: Because[], source: Basis) =>
		against.push({ rule, says, points: rounded(points, 2), because, basis: source })
	let changes = 0
	const room = roomFor(model, needs)
	const soft = model.upperSoftness === 'soft'
	const { code } = needs

	// Length
	const toeRoomMm = rounded(size.insideLengthMm - needs.lengthMm, 1)
	const lengthBecause = [
		mm('Inside length', size.insideLengthMm),
		...needs.because.length,
		mm('Toe room', toeRoomMm),
	]
	const keys =
		roomKeys[trainers.includes(model.sole) ? 'trainer' : 'boot'][needs.adult ? 'adult' : 'youth']
	if (toeRoomMm < room.min) {
		stop(
			'too-short',
			`Too short: toe room ${toeRoomMm} mm in its longest fitting size, ${room.min} mm is the ` +
				'least.',
			lengthBecause,
			basis('toe room', keys.min),
		)
		wouldChange.push(`An inside length of ${rounded(needs.lengthMm + room.min, 1)} mm or more.`)
	} else if (toeRoomMm > room.max + value('footwear.tooLongBeyondMm')) {
		stop(
			'too-long',
			`Too long: toe room ${toeRoomMm} mm in the nearest size, ${room.max} mm is the most.`,
			lengthBecause,
			basis('too long', 'footwear.tooLongBeyondMm'),
		)
		wouldChange.push(
			`A size with an inside length of ${rounded(needs.lengthMm + room.min, 1)} to ` +
				`${rounded(needs.lengthMm + room.max, 1)} mm.`,
		)
	} else {
		const off = Math.abs(toeRoomMm - room.target)
		if (toeRoomMm > room.max)
			bad(
				'toe-room',
				`Toe room ${toeRoomMm} mm is above the band of ${room.min} to ${room.max} mm.`,
				off * value('footwear.pointsToeRoom'),
				lengthBecause,
				basis('toe room', keys.max),
			)
		else {
			good(
				'toe-room',
				`Toe room ${toeRoomMm} mm, target ${room.target} mm.`,
				lengthBecause,
				basis('toe room', keys.target),
			)
			if (off > 0.05)
				bad(
					'toe-room-target',
					`Toe room is ${rounded(off, 1)} mm ${toeRoomMm < room.target ? 'below' : 'above'} the ` +
						'target.',
					off * value('footwear.pointsToeRoom'),
					lengthBecause,
					basis('toe room target', 'footwear.pointsToeRoom'),
				)
		}
	}

	// Width
	const widthMarginMm =
		needs.widthMm === undefined ? undefined : rounded(size.ballWidthMm - needs.widthMm, 1)
	if (widthMarginMm !== undefined) {
		const because = [mm('Inside ball width', size.ballWidthMm), ...needs.because.width]
		const gives = soft ? value('footwear.softUpperGivesMm') : 0
		const short = -widthMarginMm - gives
		const stopKey =
			model.upperSoftness === 'firm' ? 'footwear.widthStopFirmMm' : 'footwear.widthStopMm'
		if (short > value(stopKey)) {
			stop(
				'too-narrow',
				`Too narrow: ${rounded(-widthMarginMm, 1)} mm narrower than the wider ` +
					`foot${soft ? ', more than its soft upper gives' : ''}.`,
				because,
				basis(`too narrow, ${model.upperSoftness === 'firm' ? 'firm' : 'giving'} upper`, stopKey),
			)
			wouldChange.push(`A wider fitting: ${rounded(needs.widthMm!, 1)} mm inside at the ball.`)
		} else if (widthMarginMm < limits.tight) {
			const tight = Math.max(0, limits.tight - widthMarginMm - gives)
			if (tight > 0) {
				bad(
					'tight',
					`${rounded(limits.tight - widthMarginMm, 1)} mm narrow at the ball.`,
					tight * value('footwear.pointsWidth'),
					because,
					basis('width margin', 'footwear.widthTightMm'),
				)
				if (tight <= value('footwear.stretchMaxMm') && model.upperSoftness !== 'firm') {
					wouldChange.push(
						`Stretching at the ball by about ${rounded(tight, 1)} mm (limit ` +
							`${value('footwear.stretchMaxMm')} mm).`,
					)
					changes++
				} else wouldChange.push(`A fitting ${rounded(tight, 1)} mm wider.`)
			} else
				good(
					'tight-gives',
					`${rounded(-widthMarginMm, 1)} mm narrow at the ball, which a soft upper gives.`,
					because,
					basis('soft upper', 'footwear.softUpperGivesMm'),
				)
		} else if (widthMarginMm > limits.loose) {
			bad(
				'loose',
				`${widthMarginMm} mm of room at the ball: loose. A thicker sock or lacing takes up some.`,
				(widthMarginMm - limits.loose) * value('footwear.pointsLoose'),
				because,
				basis('width margin', 'footwear.widthLooseMm'),
			)
		} else
			good(
				'width',
				`Width at the ball fits: ${widthMarginMm} mm over the wider foot.`,
				because,
				basis('width margin', 'footwear.widthLooseMm'),
			)
	}

	// Depth: an insert in place of the liner gains what the liner took
	const liner = needs.insert && model.removableLiner ? (model.linerThicknessMm ?? 0) : 0
	const depthMarginMm =
		needs.depthMm === undefined || model.toeBoxDepthMm === undefined
			? undefined
			: rounded(model.toeBoxDepthMm + liner - needs.depthMm - (needs.insert?.forefootMm ?? 0), 1)
	if (depthMarginMm !== undefined) {
		const because = [
			mm('Toe-box depth', model.toeBoxDepthMm!),
			...needs.because.depth,
			...(liner > 0 ? [mm('Liner taken out', liner)] : []),
		]
		if (-depthMarginMm > value('footwear.depthStopMm'))
			stop(
				'too-shallow',
				`Too shallow over the toes by ${rounded(-depthMarginMm, 1)} mm.`,
				because,
				basis('too shallow', 'footwear.depthStopMm'),
			)
		else if (depthMarginMm < value('footwear.depthLeastMm')) {
			bad(
				'shallow',
				`Shallow over the toes by ${rounded(value('footwear.depthLeastMm') - depthMarginMm, 1)} mm.`,
				(value('footwear.depthLeastMm') - depthMarginMm) * value('footwear.pointsDepth'),
				because,
				basis('depth margin', 'footwear.depthLeastMm'),
			)
			if (model.removableLiner && model.linerThicknessMm && liner === 0) {
				wouldChange.push(`A thinner liner: the one inside is ${model.linerThicknessMm} mm.`)
				changes++
			}
		} else
			good(
				'depth',
				`Depth over the toes: ${depthMarginMm} mm to spare.`,
				because,
				basis('depth margin', 'footwear.depthLeastMm'),
			)
	}

	const ground = surfacesOf(model.sole)
	stops.push(...ground.stops)
	pro.push(...ground.for)
	against.push(...ground.against)

	// Studs against joints
	const studs: { left?: StudDistance[]; right?: StudDistance[] } = {}
	if (model.studs && model.studs.length > 0) {
		const shared = model.studs.length >= limits.many
		for (const side of bothSides) {
			const joints = needs.joints[side]
			if (joints)
				studs[side] = studDistances(
					model,
					size,
					joints,
					needs.risks[side],
					value('footwear.underJointMm'),
					value('footwear.studLeastMm'),
				)
		}
		for (const joint of jointNames) {
			const told = bothSides.flatMap((side) =>
				(studs[side] ?? [])
					.filter((distance) => distance.joint === joint && distance.atRisk.length > 0)
					.map((distance) => ({ ...distance, side })),
			)
			const name = joint.split(' ')[0]
			const says = (each: (typeof told)[number]) => [
				...each.atRisk,
				mm(`Nearest stud to the ${each.side} ${joint}`, each.nearestMm),
			]
			const hit = told.filter((each) => each.under.length > 0)
			for (const each of hit)
				bad(
					`stud-${name}-${each.side}`,
					`A stud stands ${each.nearestMm} mm from the ${each.side} ${joint}, a joint at ` +
						`risk${shared ? '; its many studs share the load' : ''}.`,
					value('footwear.pointsStud') * (shared ? value('footwear.pointsStudMany') : 1),
					says(each),
					basis('stud under a joint', 'footwear.underJointMm'),
				)
			if (hit.length > 0) {
				const work = studWork(model, [...new Set(hit.flatMap((each) => each.under))])
				wouldChange.push(
					`At the ${list(hit.map((each) => each.side))} ${joint}: ${work.says}. ${work.limits}`,
				)
				changes++
			}
			for (const each of told)
				if (each.under.length === 0 && each.nearestMm >= value('footwear.nearJointMm'))
					good(
						`stud-clear-${name}-${each.side}`,
						`No stud near the ${each.side} ${joint} (nearest ${each.nearestMm} mm).`,
						says(each),
						basis('stud clear of a joint', 'footwear.nearJointMm'),
					)
		}
	}

	// Wishes. Width and depth wishes are already paid for by the margins, stud wishes by the
	// distances.
	const joints = [...(studs.left ?? []), ...(studs.right ?? [])]
	const one: Fitted = {
		model,
		widthMarginMm,
		depthMarginMm,
		joints: joints.filter((joint) => joint.atRisk.length > 0),
	}
	const fitted: Fitted = {
		...one,
		joints: joints.length > 0 && one.joints.length === 0 ? joints : one.joints,
	}
	const present = avoid.filter((wish) => hasAvoided(wish.feature, fitted, limits) === true)
	for (const wish of seek) {
		const has = hasFeature(wish.feature, fitted, limits)
		if (has === undefined) {
			unknown.push(wish.words)
			continue
		}
		if (has) pro.push(wish.has)
		else if (
			wish.feature !== 'wide-fitting' &&
			!present.some((each) => opposite[each.feature] === wish.feature) &&
			!(clearOf[wish.feature] && against.some((reason) => reason.rule.startsWith('stud-')))
		)
			against.push(wish.lacks)
	}
	for (const wish of present) {
		const { words } = wish
		const wanted = seek.find((each) => each.feature === opposite[wish.feature])
		if (wish.strict)
			stop(
				`avoid-${wish.feature}`,
				`Has what must be avoided: ${words} (${wish.rules}).`,
				wish.because,
				wish.basis,
			)
		else if (wanted)
			bad(
				`avoid-${wish.feature}`,
				`Has ${words} where ${termWords(wanted.feature)} is sought (${wanted.rules}).`,
				wish.points + wanted.points,
				wanted.because,
				wanted.basis,
			)
		else if (wish.feature !== 'wide-fitting' && wish.feature !== 'narrow-fitting')
			against.push(wish.better)
	}
	if (code && model.codes && model.codes.length > 0 && !model.codes.includes(code))
		bad(
			'code',
			`Made for ${list(model.codes.map(termWords))}, not for ${termWords(code)}: check base and ` +
				'studs for the task.',
			value('footwear.pointsPractice'),
			[{ measure: 'Code', value: termWords(code) }],
			basis('code of play', 'footwear.pointsPractice'),
		)
	const offsetMm = offsetOf(model)
	if (offset && offsetMm !== undefined && offsetMm < offset.min) {
		const raise = rounded(offset.min - offsetMm, 1)
		const limit = value('ankle.raiseWarnMm')
		wouldChange.push(
			raise <= limit
				? `A heel raise of ${raise} mm inside brings the ${offsetMm} mm offset to ${offset.min} mm.`
				: `Its offset is ${offsetMm} mm; the ${raise} mm of heel raise it lacks is above the ` +
						`${limit} mm limit in use.`,
		)
		if (raise <= limit) changes++
	}
	const points = rounded(
		against.reduce((sum, each) => sum + (each.points ?? 0), 0) +
			unknown.length * value('footwear.pointsUnknown'),
		2,
	)
	return {
		id: model.id,
		name: model.name,
		sole: model.sole,
		verdict: stops.length > 0 ? 'unsuitable' : changes > 0 ? 'with-changes' : 'suits',
		points,
		size: {
			system: size.system,
			label: size.label,
			...(size.fitting === undefined ? {} : { fitting: size.fitting }),
			insideLengthMm: size.insideLengthMm,
			ballWidthMm: size.ballWidthMm,
		},
		toeRoomMm,
		...(widthMarginMm === undefined ? {} : { widthMarginMm }),
		...(depthMarginMm === undefined ? {} : { depthMarginMm }),
		...(offsetMm === undefined ? {} : { offsetMm }),
		stops,
		for: pro,
		against: against.sort((a, b) => (b.points ?? 0) - (a.points ?? 0) || byText(a.rule, b.rule)),
		unknown,
		wouldChange,
		...(studs.left || studs.right ? { studs } : {}),
		...(model.price === undefined ? {} : { price: model.price }),
	}
}
/** What a feature to avoid is the opposite of: the two are told, and counted, in one line. */
const opposite: Partial<Record<Feature, Feature>> = {
	'low-heel': 'raised-heel',
	'firm-heel-counter': 'soft-heel-counter',
	'soft-heel-counter': 'firm-heel-counter',
	'flexible-forefoot': 'stiff-forefoot',
	'stiff-forefoot': 'flexible-forefoot',
	'bladed-studs': 'round-studs',
}

/**
 * Every model on sale, best first. Empty where no foot length is known. Under 20 ms for 500 models.
 */
export function matchShelf(
	shelf: Shelf,
	visit: Visit,
	context: MatchContext,
	protocol: Protocol,
): RankedModel[] {
	const needs = needsOf(visit, context, protocol)
	if (!needs) return []
	const contested = new Set(context.contradictions.map((contradiction) => contradiction.feature))
	const values = new Map<ThresholdKey, number>()
	const bases = new Map<string, Basis>()
	const value = (key: ThresholdKey) => {
		let known = values.get(key)
		if (known === undefined) {
			known = protocol.value(key)
			values.set(key, known)
		}
		return known
	}
	const basis = (rule: string, key: ThresholdKey) => {
		const name = `${rule} ${key}`
		let known = bases.get(name)
		if (!known) {
			known = protocol.basis(rule, key)
			bases.set(name, known)
		}
		return known
	}
	const grounds = new Map<Sole, GroundVerdict>()
	const surfacesOf = (sole: Sole) => {
		const known = grounds.get(sole) ?? groundVerdict(sole, needs.surfaces, value)
		grounds.set(sole, known)
		return known
	}
	const tools: Judge = {
		needs,
		surfacesOf,
		seek: merged(context.target.seek, contested, context.strictRules, protocol),
		avoid: merged(context.target.avoid, contested, context.strictRules, protocol),
		limits: limitsOf(protocol, context.ankle.offsetMm?.min),
		offset: context.ankle.offsetMm,
		value,
		basis,
	}
	return shelf.models
		.filter((model) => !model.retired)
		.map((model) => judge(model, bestSize(model, needs, tools.limits.tight), tools))
		.sort(
			(a, b) =>
				Number(a.verdict === 'unsuitable') - Number(b.verdict === 'unsuitable') ||
				a.points - b.points ||
				byText(a.id, b.id),
		)
}
