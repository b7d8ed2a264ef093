/**
 * The insert room: from findings to elements, each foot on its own; conflicts enforced,
 * contraindications stop.
 */
import type {
	InsertConflict,
	InsertElement,
	InsertResult,
	InsertSide,
} from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { legLengthSymptomatic } from '../visit/leg-length.ts'
import { bothSides, otherSide, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import {
	domeEdgeMm,
	eversionChangeDeg,
	legLengthRaiseMm,
	postHeightMm,
	shellThickness,
} from './dose.ts'
import {
	type ElementId,
	type ElementRow,
	elementRows,
	elementWords,
	practiceBasis,
	speaksAgainst,
} from './elements.ts'
import { type InsertContext, type InsertFacts, insertFacts } from './facts.ts'
import { stopsOf } from './stops.ts'
import { wearInPlan } from './wear-in.ts'

export type { InsertContext, InsertRoom } from './facts.ts'
/** What the clinician recorded as done, by limb: ids of stops that no longer hold. */
export type Released = Readonly<Record<Side, readonly string[]>>
const nothingReleased: Released = { left: [], right: [] }
/** Two elements that work against each other: both are shown, and one is to be chosen. */
const opposites: readonly (readonly [ElementId, ElementId])[] = [
	['rearfoot-post-medial', 'rearfoot-post-lateral'],
	['medial-skive', 'lateral-skive'],
	['forefoot-post-medial', 'forefoot-post-lateral'],
	['first-ray-cutout', 'forefoot-stiffener'],
	['metatarsal-dome', 'forefoot-cushion'],
]
const forefootElements: readonly string[] = [
	'forefoot-post-medial',
	'forefoot-post-lateral',
	'forefoot-stiffener',
	'forefoot-cushion',
	'first-head-aperture',
]

/**
 * The proposal for both feet.
 * @param context results of the rooms it draws on, and the room in the boot where known
 * @param released stops about which the clinician has recorded what was done
 */
export function insert(
	visit: Visit,
	context: InsertContext,
	protocol: Protocol,
	released: Released = nothingReleased,
): InsertResult {
	const conflicts: InsertConflict[] = [],
		findings: Finding[] = []
	const facts = perSide((side) => insertFacts(visit, context, side, protocol))
	const wishes = perSide((side) => wishesOf(facts[side], visit, context, protocol))
	sameRaise(wishes.left.elements, wishes.right.elements)
	const made = perSide((side): InsertSide => {
		const stoppedBy = stopsOf(visit, context.screening, side, facts[side].adult, released[side])
		if (stoppedBy.length > 0) return { state: 'stopped', stoppedBy, elements: [] }
		conflicts.push(...wishes[side].conflicts)
		return wishes[side].elements.length === 0
			? { state: 'not-needed', stoppedBy: [], elements: [] }
			: { state: 'proposed', stoppedBy: [], elements: wishes[side].elements }
	})
	for (const side of bothSides)
		if (made[side].state === 'proposed' && made[otherSide(side)].state === 'stopped')
			holdBack(made[side], side, conflicts)
	for (const side of bothSides) {
		const one = made[side]
		if (one.state === 'stopped' && wishes[side].elements.length > 0)
			findings.push({
				id: `insert.stopped.${side}`,
				topic: 'insert',
				side,
				level: 'stop',
				says:
					`No insert for the ${side} foot until what was done about the warning signs is ` +
					'recorded.',
				because: one.stoppedBy.map(({ id, says }) => ({ measure: id, value: says })),
				basis: {
					rule: 'contraindications of an insert',
					source: 'expert opinion and common practice',
					strength: 'expert',
				},
			})
		if (one.state === 'proposed')
			findings.push({
				id: `insert.proposal.${side}`,
				topic: 'insert',
				side,
				level: 'advise',
				says:
					`Insert, ${side}: ${one.elements.map(elementText).join('; ')}. A starting point ` +
					'for the clinician to change.',
				because: wishes[side].because,
				basis: practiceBasis('from finding to element: each element has its own basis'),
			})
	}
	for (const conflict of conflicts)
		findings.push({
			id: conflict.id,
			topic: 'insert',
			side: conflict.side,
			level: 'caution',
			says: conflict.says,
			because: conflict.elements.map((element) => ({
				measure: 'Element',
				value: elementWords[element as ElementId],
			})),
			basis: conflict.basis,
		})
	const proposed = bothSides.some((side) => made[side].state === 'proposed')
	return {
		left: made.left,
		right: made.right,
		conflicts,
		wearIn: proposed ? wearInPlan(facts.left.anySide('hypermobility').length > 0, protocol) : [],
		findings,
	}
}
/** One element in a few words: 'medial rearfoot post 4 deg'. */
export function elementText(one: InsertElement): string {
	const name = elementWords[one.element as ElementId] ?? one.element
	return [
		name,
		...(one.choice === undefined ? [] : [one.choice]),
		...(one.value === undefined ? [] : [`${rounded(one.value, 1)} ${one.unit ?? ''}`.trim()]),
	].join(' ')
}

/**
 * The raise for both shoes is equal on both sides, so that a leg-length raise is not undone: the
 * lower one stands.
 */
function sameRaise(left: InsertElement[], right: InsertElement[]): void {
	const raises = [left, right].map((elements) =>
		elements.find((element) => element.element === 'heel-raise'),
	)
	if (
		!raises.some((raise) => raise) ||
		![left, right].some((elements) =>
			elements.some((element) => element.element === 'leg-length-raise'),
		)
	)
		return
	const lower = Math.min(...raises.map((raise) => raise?.value ?? 0))
	for (const raise of raises)
		if (raise && raise.value !== lower) {
			raise.value = lower
			raise.says = `${raise.says} Equal on both sides, so that the leg-length raise keeps its effect.`
		}
	for (const elements of [left, right]) {
		const at = elements.findIndex(
			(element) => element.element === 'heel-raise' && element.value === 0,
		)
		if (at >= 0) elements.splice(at, 1)
		if (elements.every((element) => carriers.includes(element.element))) elements.length = 0
	}
}
const carriers: readonly string[] = ['device', 'shell', 'heel-cup', 'cover', 'length']
/** A raise for both shoes is not given to one foot alone while the other waits. */
function holdBack(one: InsertSide, side: Side, conflicts: InsertConflict[]): void {
	if (!one.elements.some((element) => element.element === 'heel-raise')) return
	one.elements = one.elements.filter((element) => element.element !== 'heel-raise')
	if (one.elements.every((element) => carriers.includes(element.element)))
		Object.assign(one, { state: 'not-needed', elements: [] })
	conflicts.push({
		id: `insert.raise-waits.${side}`,
		side,
		elements: ['heel-raise'],
		says:
			'The heel raise is for both shoes: it waits until what was done about the ' +
			`${otherSide(side)} side is recorded.`,
		basis: practiceBasis('heel raise to both shoes'),
	})
}

interface Wishes {
	elements: InsertElement[]
	conflicts: InsertConflict[]
	because: Because[]
}
function wishesOf(
	facts: InsertFacts,
	visit: Visit,
	context: InsertContext,
	protocol: Protocol,
): Wishes {
	const { side } = facts
	const conflicts: InsertConflict[] = []
	const clash = (id: string, elements: ElementId[], says: string, basis: InsertConflict['basis']) =>
		conflicts.push({ id: `insert.${id}.${side}`, side, elements, says, basis })
	const elements: InsertElement[] = []
	let shell = false
	for (const row of elementRows) {
		const because = row.when(facts)
		if (because.length === 0) continue
		const against = speaksAgainst(row, facts),
			basis = protocol.basis(elementWords[row.element], row.key)
		const hard = against.filter((one) => one.hard)
		if (hard.length > 0) {
			clash(
				`withheld-${row.element}`,
				[row.element],
				`${upper(elementWords[row.element])} is left out on the ${side}: ` +
					`${hard.map((one) => one.says).join('; ')}.`,
				basis,
			)
			continue
		}
		shell ||= row.device
		elements.push(
			elementOf(row, facts, because, [
				...against.map((one) => `${upper(one.says)}.`),
				...row.cautions,
			]),
		)
	}
	const legLength = legLengthElement(visit, facts, context, protocol)
	if (legLength) elements.push(legLength)
	limitRaises(elements, protocol, (says) =>
		clash(
			'raise-total',
			elements.filter((element) => isRaise(element)).map((element) => element.element as ElementId),
			says,
			protocol.basis('all raises in a boot', 'insert.raiseMaxMm'),
		),
	)
	const has = (element: ElementId) => elements.some((one) => one.element === element)
	for (const [a, b] of opposites)
		if (has(a) && has(b))
			clash(
				`choose-${a}`,
				[a, b],
				`${upper(elementWords[a])} and ${elementWords[b]} on the ${side} work against each ` +
					'other or do the same: choose one.',
				practiceBasis('elements that exclude each other'),
			)
	const because = elements
		.flatMap((element) => element.because)
		.filter(
			(reason, at, all) =>
				all.findIndex(
					(other) => other.measure === reason.measure && other.value === reason.value,
				) === at,
		)
	if (elements.length > 0)
		elements.unshift(...baseOf(elements, shell, facts, because, context, protocol, clash))
	return { elements, conflicts, because }
}
const upper = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)
const isRaise = (one: InsertElement) =>
	one.element === 'heel-raise' || one.element === 'leg-length-raise'

function elementOf(
	row: ElementRow,
	facts: InsertFacts,
	because: Because[],
	cautions: string[],
): InsertElement {
	const { protocol, side } = facts
	const value = row.element === 'heel-raise' ? raiseOf(facts) : protocol.value(row.key)
	const made: InsertElement = {
		element: row.element,
		value,
		unit: row.unit,
		range: [protocol.value(row.range[0]), protocol.value(row.range[1])],
		where: row.where,
		says: row.says,
		because,
		basis: protocol.basis(elementWords[row.element], row.key),
		cautions,
	}
	if (
		row.element === 'heel-raise' &&
		facts.anySide('achilles-midportion', 'achilles-insertional', 'haglund-deformity').length === 0
	)
		made.basis = facts.ankleRaiseBasis ?? practiceBasis('heel raise from the ankle')
	if (
		row.element === 'heel-raise' &&
		!facts.adult &&
		facts.anySide('calcaneal-apophysitis').length > 0
	)
		made.cautions = [
			...cautions,
			`Growing heel: look again at ${protocol.value('insert.growingHeelReviewWeeks')} weeks, ` +
				'and take the raise out when the heel is free of pain.',
		]
	if (row.element.startsWith('rearfoot-post')) {
		made.says =
			facts.heelWidthMm === undefined
				? `${row.says} Measure the ${side} heel width for its height.`
				: `${row.says} On a heel ${rounded(facts.heelWidthMm, 1)} mm wide that is ` +
					`${rounded(postHeightMm(facts.heelWidthMm, value), 1)} mm high.`
		if (facts.heelWidthMm !== undefined)
			made.because = [
				...because,
				{ measure: 'Heel width', value: rounded(facts.heelWidthMm, 1), unit: 'mm' },
			]
		if (row.element === 'rearfoot-post-medial')
			made.cautions = [
				...cautions,
				`Expected change of eversion about ${rounded(eversionChangeDeg(value, protocol), 1)} ` +
					'degrees.',
			]
	}
	if (row.element === 'metatarsal-dome') {
		const behind = protocol.value('insert.domeBehindHeadsMm')
		made.says =
			facts.ballLengthMm === undefined
				? `${row.says} Its distal edge lies ${behind} mm behind the heads: measure the ${side} ` +
					'heel-to-ball length for its place.'
				: `${row.says} Its distal edge lies ` +
					`${rounded(domeEdgeMm(facts.ballLengthMm, behind), 1)} mm from the heel, ${behind} mm ` +
					'behind the heads; confirm with the finger.'
		if (facts.ballLengthMm !== undefined)
			made.because = [
				...because,
				{ measure: 'Heel to ball', value: rounded(facts.ballLengthMm, 1), unit: 'mm' },
			]
	}
	return made
}
/** The higher of what the ankle asks for and what the tendon asks for, mm. */
function raiseOf(facts: InsertFacts): number {
	const tendon =
		facts.anySide('achilles-midportion', 'achilles-insertional', 'haglund-deformity').length > 0
			? facts.protocol.value('insert.achillesRaiseMm')
			: 0
	return Math.max(tendon, facts.ankleRaiseMm ?? 0)
}
function legLengthElement(
	visit: Visit,
	facts: InsertFacts,
	context: InsertContext,
	protocol: Protocol,
): InsertElement | undefined {
	const difference = facts.legLengthMm
	if (
		difference === undefined ||
		!facts.shorter ||
		difference < protocol.value('posture.legLengthRecordMm')
	)
		return undefined
	const symptom = (visit.conditions ?? [])
		.filter(
			(condition) =>
				condition.condition === 'leg-length-difference' && condition.status === 'current',
		)
		.map(
			(condition): Because => ({
				measure: 'Leg-length difference',
				value:
					condition.painWorst === undefined
						? condition.status
						: `${condition.status}, worst pain ${condition.painWorst} of 10`,
			}),
		)
	if (
		!legLengthSymptomatic(visit) &&
		(difference < protocol.value('posture.legLengthConsiderMm') || !facts.adult)
	)
		return undefined
	if (difference >= protocol.value('posture.legLengthReferMm'))
		return {
			element: 'leg-length-raise',
			where: 'both',
			says: `A difference of ${difference} mm is for referral before any raise.`,
			because: [{ measure: 'Shorter leg', value: difference, unit: 'mm' }, ...symptom],
			basis: protocol.basis('leg-length difference', 'posture.legLengthReferMm'),
			cautions: ['No raise is proposed.'],
		}
	const percent = protocol.value('insert.legLengthPercent'),
		range: [number, number] = [
			rounded(difference * protocol.value('posture.legLengthShareMin'), 1),
			rounded(difference * protocol.value('posture.legLengthShareMax'), 1),
		]
	// Where the ankle room already proposes unequal raises, the difference between them is this
	// correction: one figure on every page.
	const raises = context.ankle.heelRaiseMm,
		ankleShare = raises ? rounded(raises[facts.side] - raises[otherSide(facts.side)], 1) : 0
	const value = ankleShare > 0 ? ankleShare : legLengthRaiseMm(difference, percent)
	const words =
		ankleShare > 0
			? `${rounded(value, 1)} mm of the ${difference} mm difference, as proposed with the heel ` +
				'raise'
			: `${percent} % of the ${difference} mm difference to start with`
	return {
		element: 'leg-length-raise',
		value,
		unit: 'mm',
		range,
		where: 'both',
		says: `Raise under the shorter ${facts.side} leg, ${words}: full at the heel, half at the ball.`,
		because: [{ measure: 'Shorter leg', value: difference, unit: 'mm' }, ...symptom],
		basis: protocol.basis('leg-length difference', 'insert.legLengthPercent'),
		cautions: [
			'Measure again with blocks before it is made; a clinical reading can be wrong by more ' +
				'than 5 mm.',
			...(facts.adult ? [] : ['Growing player: measure again each season.']),
		],
	}
}
/**
 * All raises of a foot together stay within the boot's limit; the symmetrical raise gives way
 * first.
 */
function limitRaises(
	elements: InsertElement[],
	protocol: Protocol,
	say: (says: string) => void,
): void {
	const limit = protocol.value('insert.raiseMaxMm'),
		raises = elements.filter((element) => isRaise(element) && element.value !== undefined)
	const total = raises.reduce((sum, one) => sum + one.value!, 0)
	if (total <= limit) return
	let over = total - limit
	for (const raise of [...raises].sort((a) => (a.element === 'heel-raise' ? -1 : 1))) {
		const less = Math.min(over, raise.value!)
		raise.value = raise.value! - less
		over -= less
	}
	for (const raise of raises) if (raise.value === 0) elements.splice(elements.indexOf(raise), 1)
	say(
		`Raises of ${rounded(total, 1)} mm together are more than the ${limit} mm a boot holds: cut ` +
			`to ${limit} mm inside; the rest belongs on the outside of the sole or in another shoe.`,
	)
}

/** Device, shell, heel cup, cover, length and volume: what carries the elements called for. */
function baseOf(
	called: readonly InsertElement[],
	shell: boolean,
	facts: InsertFacts,
	because: Because[],
	context: InsertContext,
	protocol: Protocol,
	clash: (
		id: string,
		elements: ElementId[],
		says: string,
		basis: InsertConflict['basis'],
	) => unknown,
): InsertElement[] {
	const { side } = facts,
		base: InsertElement[] = []
	const add = (
		element: ElementId,
		says: string,
		basis: InsertElement['basis'],
		more: Partial<InsertElement> = {},
	) => base.push({ element, where: 'both', says, because, basis, cautions: [], ...more })
	const onlyRaises = called.every(isRaise)
	const trial = {
		rule: 'device kind',
		source: 'Whittaker 2018 (19 trials: custom no better than prefabricated for heel pain)',
		strength: 'trial',
	} as const
	const young = facts.adult
		? []
		: [
				'Under 18: record the consenting adult; measure again each season, the size can change ' +
					'in months.',
			]
	if (!shell)
		add(
			'device',
			onlyRaises
				? 'A raise alone, under the liner.'
				: 'Additions to the liner; no shell is called for.',
			practiceBasis('device kind'),
			{ choice: onlyRaises ? 'raise alone' : 'additions to the liner', cautions: young },
		)
	else
		add(
			'device',
			'Prefabricated first, with the additions below; a custom device only where it does not ' +
				'fit or does not help.',
			trial,
			{ choice: 'prefabricated, modified', cautions: young },
		)
	if (shell) {
		const found = shellThickness(facts.fpi, facts.massKg, facts.adult, protocol),
			softer = [
				...(facts.anySide('hypermobility').length > 0
					? ['Very mobile joints: softer shell, full contact.']
					: []),
				...(facts.adult || ('key' in found && found.key === 'insert.shellChildMm')
					? []
					: ['The rule of thickness is that of a protocol for adults.']),
			]
		if ('mm' in found) {
			add(
				'shell',
				`Polypropylene ${found.mm} mm, by foot posture and body mass.`,
				protocol.basis('shell thickness', found.key),
				{
					value: found.mm,
					unit: 'mm polypropylene',
					cautions: softer,
					because: [
						...(facts.fpi === undefined
							? []
							: [{ measure: 'Foot posture index', value: facts.fpi }]),
						{ measure: 'Body mass', value: facts.massKg!, unit: 'kg' },
					],
				},
			)
			const most = protocol.value('insert.bootShellMaxMm')
			if (found.mm > most)
				clash(
					'shell-boot',
					['shell'],
					`The ${side} shell of ${found.mm} mm is thicker than the ${most} mm that boots ` +
						'usually take: a stiffer, thinner material in the boot, or a device for trainers ' +
						'only.',
					protocol.basis('shell in a boot', 'insert.bootShellMaxMm'),
				)
		} else
			add(
				'shell',
				`The thickness is for you to decide, since ${found.undefinedBecause}.`,
				protocol.basis('shell thickness', 'insert.shellMassKg'),
				{ choice: 'not decided', cautions: softer },
			)
		const skive = called.find(
				(element) => element.element === 'medial-skive' || element.element === 'lateral-skive',
			),
			boot = protocol.value('insert.bootCupMm')
		const cup = skive
			? (skive.value ?? 0) > protocol.value('insert.skiveBigSum')
				? protocol.value('insert.skiveBigCupMm')
				: protocol.value('insert.skiveCupMm')
			: boot
		add(
			'heel-cup',
			skive
				? `Heel cup ${cup} mm in trainers to carry the skive; ${boot} mm in boots, without it.`
				: `Heel cup ${boot} mm, so that the boot still closes.`,
			protocol.basis(
				'heel cup',
				skive
					? cup > protocol.value('insert.skiveCupMm')
						? 'insert.skiveBigCupMm'
						: 'insert.skiveCupMm'
					: 'insert.bootCupMm',
			),
			{
				value: cup,
				unit: 'mm',
				where: skive ? 'trainer' : 'both',
				range: skive
					? [protocol.value('insert.skiveCupMm'), protocol.value('insert.skiveCupMaxMm')]
					: [protocol.value('insert.bootCupMinMm'), protocol.value('insert.bootCupMaxMm')],
			},
		)
		if (skive && boot < protocol.value('insert.skiveCupMm'))
			clash(
				'skive-cup',
				[skive.element as ElementId, 'heel-cup'],
				`The skive on the ${side} needs a heel cup of ${protocol.value('insert.skiveCupMm')} mm ` +
					`and a boot holds about ${boot} mm: leave it out in boots and use a post or a forefoot ` +
					'wedge there.',
				protocol.basis('skive against cup depth', 'insert.skiveCupMm'),
			)
	}
	const coverBoot = protocol.value('insert.coverBootMm')
	if (!called.some((element) => element.element === 'cover'))
		add(
			'cover',
			`Thin non-slip cover, ${coverBoot} mm at most in boots.`,
			protocol.basis('cover in boots', 'insert.coverBootMm'),
			{ value: coverBoot, unit: 'mm', range: [0, coverBoot], where: 'boot' },
		)
	if (!onlyRaises) {
		const full = called.some((element) => forefootElements.includes(element.element))
		add(
			'length',
			full
				? 'Full length, in place of the liner, since something stands under the forefoot.'
				: 'Three-quarter length, to just behind the heads: it takes the least room.',
			practiceBasis('length'),
			{
				choice: full ? 'full' : 'three-quarter',
				cautions: [
					'Take the factory liner out first, then fit the boot again with the insert inside.',
				],
			},
		)
	}
	volume([...base, ...called], context, side, protocol, clash)
	return base
}
/**
 * Height added at the heel in the boot: shell, cover, cushion and raises, less the liner that comes
 * out.
 */
function volume(
	elements: readonly InsertElement[],
	context: InsertContext,
	side: Side,
	protocol: Protocol,
	clash: (
		id: string,
		elements: ElementId[],
		says: string,
		basis: InsertConflict['basis'],
	) => unknown,
): void {
	const stacking = ['shell', 'heel-cushion', 'heel-raise', 'leg-length-raise']
	const parts = elements.filter(
		(element) => stacking.includes(element.element) && element.value !== undefined,
	)
	const cover = elements.find((element) => element.element === 'cover')
		? protocol.value('insert.coverBootMm')
		: 0
	const liner = context.room?.removableLiner ? (context.room.linerMm ?? 0) : 0
	const added = parts.reduce((sum, one) => sum + one.value!, 0) + cover - liner,
		limit = protocol.value('insert.raiseMaxMm')
	if (added > limit)
		clash(
			'volume',
			parts.map((part) => part.element as ElementId),
			`The ${side} heel would stand ${rounded(added, 1)} mm higher in the boot ` +
				`(${parts.map((part) => `${elementWords[part.element as ElementId]} ${rounded(part.value!, 1)}`).join(', ')}, ` +
				`cover ${cover}${liner > 0 ? `, liner out ${liner}` : ', liner not counted'}), more than ` +
				`the ${limit} mm in use: thin the shell, take the liner out, or check heel hold and depth ` +
				'in the boot.',
			protocol.basis('height added at the heel', 'insert.raiseMaxMm'),
		)
	const depth = context.room?.depthOverToesMm,
		forefoot = elements
			.filter(
				(element) =>
					forefootElements.includes(element.element) &&
					element.unit?.startsWith('mm') &&
					element.element !== 'first-head-aperture',
			)
			.reduce((sum, one) => sum + (one.value ?? 0), 0)
	if (depth !== undefined && forefoot > depth)
		clash(
			'toe-depth',
			elements
				.filter((element) => forefootElements.includes(element.element))
				.map((element) => element.element as ElementId),
			`The ${side} forefoot additions of ${rounded(forefoot, 1)} mm are more than the ` +
				`${rounded(depth, 1)} mm free over the toes in this boot: thinner additions or a deeper ` +
				'boot.',
			practiceBasis('room over the toes'),
		)
}
