/** What carries the elements called for: device, shell, heel cup, cover and length. */
import type { InsertConflict, InsertElement } from '../findings/assessment.ts'
import { reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Side } from '../visit/visit.ts'
import type { ElementId } from '../words/en/insert-names.ts'
import { type Statement, state } from '../words/statement.ts'
import { practiceBasis } from './basis.ts'
import { conflictOn } from './conflict.ts'
import { shellThickness } from './dose.ts'
import type { InsertFacts } from './facts.ts'
import { isUnderForefoot } from './room-in-boot.ts'
import { cautionsOf } from './said.ts'
import { veryMobile } from './wear-in.ts'

/** Said with the device until the surgeon's clearance is recorded. Common practice, no source. */
export const afterSurgery = {
	condition: 'foot-or-ankle-surgery',
	code: 'insert.caution-surgery',
} as const

/** Elements, and what in them gave way to a boot. */
interface Base {
	elements: InsertElement[]
	settled: InsertConflict[]
}
/** What an element of the base has besides its sentence and basis. */
interface More
	extends Partial<
		Pick<InsertElement, 'choice' | 'value' | 'unit' | 'range' | 'where' | 'because'>
	> {
	cautions?: Statement[]
}
type Add = (element: ElementId, statement: Statement, basis: Basis, more: More) => InsertElement

/**
 * @param called the elements that findings call for: at least one
 * @param shelled whether one of them needs a shell to carry it; a cushion needs none
 * @param because the reasons for all of them
 */
export function baseOf(
	called: readonly InsertElement[],
	shelled: boolean,
	because: Because[],
	facts: InsertFacts,
): Base {
	const { protocol } = facts
	const add: Add = (element, statement, basis, { where = 'both', cautions = [], ...more }) => ({
		element,
		where,
		...statement,
		because: more.because ?? because,
		basis,
		...cautionsOf(cautions),
		...present({
			choice: more.choice,
			value: more.value,
			unit: more.unit,
			range: more.range,
		}),
	})
	const shell = shelled ? shellOf(facts, add) : nothing
	const cup = shelled ? heelCup(called, facts, add) : nothing
	return {
		elements: [
			shelled ? shelledDevice(facts, add) : plainDevice(facts, add),
			...shell.elements,
			...cup.elements,
			...(called.some(({ element }) => element === 'cover') ? [] : [thinCover(protocol, add)]),
			lengthOf(called, add),
		],
		settled: [...shell.settled, ...cup.settled],
	}
}
const nothing: Base = { elements: [], settled: [] }

const ofPlayer = ({ adult, uncleared }: InsertFacts): Statement[] => [
	...(adult ? [] : [state('insert.caution-minor')]),
	...(uncleared ? [state(afterSurgery.code)] : []),
]
const plainDevice = (facts: InsertFacts, add: Add): InsertElement =>
	add('device', state('insert.device-additions'), practiceBasis('device kind'), {
		choice: 'additions to the liner',
		cautions: ofPlayer(facts),
	})
const shelledDevice = (facts: InsertFacts, add: Add): InsertElement =>
	add(
		'device',
		state('insert.device-prefabricated'),
		{
			rule: 'device kind',
			source: 'Whittaker 2018 (19 trials: custom no better than prefabricated for heel pain)',
			strength: 'trial',
		},
		{ choice: 'prefabricated, modified', cautions: ofPlayer(facts) },
	)

function shellOf(facts: InsertFacts, add: Add): Base {
	const { protocol, side, fpi, massKg, adult } = facts
	const found = shellThickness(fpi, massKg, adult, protocol)
	const forChildren = 'key' in found && found.key === 'insert.shellChildMm'
	const cautions: Statement[] = []
	if (facts.nowAnywhere(...veryMobile)) cautions.push(state('insert.caution-very-mobile'))
	if (!adult && !forChildren) cautions.push(state('insert.caution-adult-rule'))
	if (!('mm' in found)) {
		const limitKg = protocol.value('insert.shellMassKg')
		return {
			elements: [
				add(
					'shell',
					state('insert.shell-undecided', { unknown: found.unknown, limitKg }),
					protocol.basis('shell thickness', 'insert.shellMassKg'),
					{ choice: 'not decided', cautions },
				),
			],
			settled: [],
		}
	}
	const because: Because[] = [
		...(fpi === undefined ? [] : [{ measure: 'footPostureIndex', side, value: fpi }]),
		...(massKg === undefined ? [] : [reading('massKg', massKg, 'kg')]),
	]
	const mm = Math.min(found.mm, protocol.value('insert.bootShellMaxMm'))
	const wishedMm = mm < found.mm ? found.mm : undefined
	return {
		elements: [
			add(
				'shell',
				state('insert.shell', present({ thicknessMm: mm, wishedMm })),
				protocol.basis('shell thickness', found.key),
				{ value: mm, unit: 'mm polypropylene', cautions, because },
			),
		],
		settled: wishedMm === undefined ? [] : [thinForBoots(wishedMm, mm, side, protocol)],
	}
}
/** One insert goes from boot to boot: the shell is as thin as they take, of a stiffer material. */
const thinForBoots = (
	wishedMm: number,
	mm: number,
	side: Side,
	protocol: Protocol,
): InsertConflict =>
	conflictOn(
		side,
		state('insert.settled-shell', { side, wishedMm, mm }),
		['shell'],
		protocol.basis('shell in a boot', 'insert.bootShellMaxMm'),
	)

/** A skive needs a deeper cup than a boot holds. */
function heelCup(called: readonly InsertElement[], facts: InsertFacts, add: Add): Base {
	const { protocol } = facts
	const bootMm = protocol.value('insert.bootCupMm')
	const skive = called.find(
		({ element }) => element === 'medial-skive' || element === 'lateral-skive',
	)
	if (skive) return cupForSkive(skive, called, facts, add)
	return {
		elements: [
			add(
				'heel-cup',
				state('insert.heel-cup', { cupMm: bootMm }),
				protocol.basis('heel cup', 'insert.bootCupMm'),
				{
					value: bootMm,
					unit: 'mm',
					range: [protocol.value('insert.bootCupMinMm'), protocol.value('insert.bootCupMaxMm')],
				},
			),
		],
		settled: [],
	}
}
function cupForSkive(
	skive: InsertElement,
	called: readonly InsertElement[],
	{ protocol, side }: InsertFacts,
	add: Add,
): Base {
	const bootMm = protocol.value('insert.bootCupMm')
	const edge = skive.element === 'medial-skive' ? 'medial' : 'lateral'
	const withPost = called.some(({ element }) => element === `rearfoot-post-${edge}`)
	const usualMm = protocol.value('insert.skiveCupMm')
	const big = (skive.value ?? 0) > protocol.value('insert.skiveBigSum')
	const cupMm = big ? protocol.value('insert.skiveBigCupMm') : usualMm
	const cup = add(
		'heel-cup',
		state('insert.heel-cup-for-skive', { cupMm, bootMm }),
		protocol.basis('heel cup', cupMm > usualMm ? 'insert.skiveBigCupMm' : 'insert.skiveCupMm'),
		{
			value: cupMm,
			unit: 'mm',
			where: 'trainer',
			range: [usualMm, protocol.value('insert.skiveCupMaxMm')],
		},
	)
	if (bootMm >= usualMm) return { elements: [cup], settled: [] }
	return {
		elements: [cup],
		settled: [
			conflictOn(
				side,
				state('insert.settled-skive', { side, cupMm: usualMm, bootMm, withPost }),
				[skive.element, 'heel-cup'],
				protocol.basis('skive against cup depth', 'insert.skiveCupMm'),
			),
		],
	}
}

function thinCover(protocol: Protocol, add: Add): InsertElement {
	const mostMm = protocol.value('insert.coverBootMm')
	return add(
		'cover',
		state('insert.cover-thin', { mostMm }),
		protocol.basis('cover in boots', 'insert.coverBootMm'),
		{ value: mostMm, unit: 'mm', range: [0, mostMm], where: 'boot' },
	)
}
function lengthOf(called: readonly InsertElement[], add: Add): InsertElement {
	const full = called.some(isUnderForefoot)
	return add(
		'length',
		full ? state('insert.length-full') : state('insert.length-three-quarter'),
		practiceBasis('length'),
		{
			choice: full ? 'full' : 'three-quarter',
			cautions: [state('insert.caution-liner-out')],
		},
	)
}
