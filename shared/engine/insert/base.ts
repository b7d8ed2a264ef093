/** What carries the elements called for: device, shell, heel cup, cover and length. */
import type { InsertConflict, InsertElement } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Side } from '../visit/visit.ts'
import { conflictOn } from './conflict.ts'
import { shellThickness } from './dose.ts'
import { type ElementId, practiceBasis } from './element-words.ts'
import type { InsertFacts } from './facts.ts'
import { isRaise } from './raises.ts'
import { isUnderForefoot } from './room-in-boot.ts'

/** Elements, and what in them works against a boot. */
interface Base {
	elements: InsertElement[]
	conflicts: InsertConflict[]
}
/** What an element of the base has besides its sentence and basis. */
type More = Partial<Omit<InsertElement, 'element' | 'says' | 'basis'>>
type Add = (element: ElementId, says: string, basis: Basis, more: More) => InsertElement

/**
 * @param called the elements that findings call for: at least one
 * @param shelled whether one of them needs a shell to carry it; a raise or a cushion needs none
 * @param because the reasons for all of them
 */
export function baseOf(
	called: readonly InsertElement[],
	shelled: boolean,
	because: Because[],
	facts: InsertFacts,
): Base {
	const { protocol } = facts
	const add: Add = (element, says, basis, { where = 'both', cautions = [], ...more }) => ({
		element,
		where,
		says,
		because: more.because ?? because,
		basis,
		cautions,
		...present({
			choice: more.choice,
			value: more.value,
			unit: more.unit,
			range: more.range,
		}),
	})
	const onlyRaises = called.every(isRaise)
	const shell = shelled ? shellOf(facts, add) : nothing
	const cup = shelled ? heelCup(called, facts, add) : nothing
	return {
		elements: [
			shelled ? shelledDevice(facts, add) : plainDevice(onlyRaises, facts, add),
			...shell.elements,
			...cup.elements,
			...(called.some(({ element }) => element === 'cover') ? [] : [thinCover(protocol, add)]),
			...(onlyRaises ? [] : [lengthOf(called, add)]),
		],
		conflicts: [...shell.conflicts, ...cup.conflicts],
	}
}
const nothing: Base = { elements: [], conflicts: [] }

const forMinors = ({ adult }: InsertFacts): string[] =>
	adult
		? []
		: [
				'Under 18: record the consenting adult; measure again each season, the size can change ' +
					'in months.',
			]
const plainDevice = (onlyRaises: boolean, facts: InsertFacts, add: Add): InsertElement =>
	add(
		'device',
		onlyRaises
			? 'A raise alone, under the liner.'
			: 'Additions to the liner; no shell is called for.',
		practiceBasis('device kind'),
		{
			choice: onlyRaises ? 'raise alone' : 'additions to the liner',
			cautions: forMinors(facts),
		},
	)
const shelledDevice = (facts: InsertFacts, add: Add): InsertElement =>
	add(
		'device',
		'Prefabricated first, with the additions below; a custom device only where it does not ' +
			'fit or does not help.',
		{
			rule: 'device kind',
			source: 'Whittaker 2018 (19 trials: custom no better than prefabricated for heel pain)',
			strength: 'trial',
		},
		{ choice: 'prefabricated, modified', cautions: forMinors(facts) },
	)

function shellOf(facts: InsertFacts, add: Add): Base {
	const { protocol, side, fpi, massKg, adult } = facts
	const found = shellThickness(fpi, massKg, adult, protocol)
	const forChildren = 'key' in found && found.key === 'insert.shellChildMm'
	const cautions: string[] = []
	if (facts.nowAnywhere('hypermobility').length > 0)
		cautions.push('Very mobile joints: softer shell, full contact.')
	if (!adult && !forChildren)
		cautions.push('The rule of thickness is that of a protocol for adults.')
	if (!('mm' in found))
		return {
			elements: [
				add(
					'shell',
					`The thickness is for you to decide, since ${found.undefinedBecause}.`,
					protocol.basis('shell thickness', 'insert.shellMassKg'),
					{ choice: 'not decided', cautions },
				),
			],
			conflicts: [],
		}
	const because: Because[] = []
	if (fpi !== undefined) because.push({ measure: 'Foot posture index', value: fpi })
	if (massKg !== undefined) because.push({ measure: 'Body mass', value: massKg, unit: 'kg' })
	return {
		elements: [
			add(
				'shell',
				`Polypropylene ${found.mm} mm, by foot posture and body mass.`,
				protocol.basis('shell thickness', found.key),
				{ value: found.mm, unit: 'mm polypropylene', cautions, because },
			),
		],
		conflicts: tooThickForBoots(found.mm, side, protocol),
	}
}
function tooThickForBoots(shellMm: number, side: Side, protocol: Protocol): InsertConflict[] {
	const mostMm = protocol.value('insert.bootShellMaxMm')
	if (shellMm <= mostMm) return []
	return [
		conflictOn(
			side,
			'shell-boot',
			['shell'],
			`The ${side} shell of ${shellMm} mm is thicker than the ${mostMm} mm that boots ` +
				'usually take: a stiffer, thinner material in the boot, or a device for trainers ' +
				'only.',
			protocol.basis('shell in a boot', 'insert.bootShellMaxMm'),
		),
	]
}

/** A skive needs a deeper cup than a boot holds. */
function heelCup(called: readonly InsertElement[], facts: InsertFacts, add: Add): Base {
	const { protocol } = facts
	const bootMm = protocol.value('insert.bootCupMm')
	const skive = called.find(
		({ element }) => element === 'medial-skive' || element === 'lateral-skive',
	)
	if (skive) return cupForSkive(skive, bootMm, facts, add)
	return {
		elements: [
			add(
				'heel-cup',
				`Heel cup ${bootMm} mm, so that the boot still closes.`,
				protocol.basis('heel cup', 'insert.bootCupMm'),
				{
					value: bootMm,
					unit: 'mm',
					range: [protocol.value('insert.bootCupMinMm'), protocol.value('insert.bootCupMaxMm')],
				},
			),
		],
		conflicts: [],
	}
}
function cupForSkive(
	skive: InsertElement,
	bootMm: number,
	{ protocol, side }: InsertFacts,
	add: Add,
): Base {
	const usualMm = protocol.value('insert.skiveCupMm')
	const big = (skive.value ?? 0) > protocol.value('insert.skiveBigSum')
	const cupMm = big ? protocol.value('insert.skiveBigCupMm') : usualMm
	const cup = add(
		'heel-cup',
		`Heel cup ${cupMm} mm in trainers to carry the skive; ${bootMm} mm in boots, without it.`,
		protocol.basis('heel cup', cupMm > usualMm ? 'insert.skiveBigCupMm' : 'insert.skiveCupMm'),
		{
			value: cupMm,
			unit: 'mm',
			where: 'trainer',
			range: [usualMm, protocol.value('insert.skiveCupMaxMm')],
		},
	)
	if (bootMm >= usualMm) return { elements: [cup], conflicts: [] }
	return {
		elements: [cup],
		conflicts: [
			conflictOn(
				side,
				'skive-cup',
				[skive.element, 'heel-cup'],
				`The skive on the ${side} needs a heel cup of ${usualMm} mm and a boot holds about ` +
					`${bootMm} mm: leave it out in boots and use a post or a forefoot wedge there.`,
				protocol.basis('skive against cup depth', 'insert.skiveCupMm'),
			),
		],
	}
}

function thinCover(protocol: Protocol, add: Add): InsertElement {
	const mostMm = protocol.value('insert.coverBootMm')
	return add(
		'cover',
		`Thin non-slip cover, ${mostMm} mm at most in boots.`,
		protocol.basis('cover in boots', 'insert.coverBootMm'),
		{ value: mostMm, unit: 'mm', range: [0, mostMm], where: 'boot' },
	)
}
function lengthOf(called: readonly InsertElement[], add: Add): InsertElement {
	const full = called.some(isUnderForefoot)
	return add(
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
