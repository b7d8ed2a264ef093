/** Laws of what is proposed: one raise, within its limits, nothing against itself. */
import { isHeld } from '../../../shared/engine/facts/held.ts'
import { soreNails } from '../../../shared/engine/facts/toe-room.ts'
import { isTrainer } from '../../../shared/engine/facts/trainer.ts'
import type { PerSide, RaiseInPair } from '../../../shared/engine/findings/assessment.ts'
import { opposites } from '../../../shared/engine/footwear/opposites.table.ts'
import { suitability } from '../../../shared/engine/protocol/norms/suitability.ts'
import { bothSides } from '../../../shared/engine/visit/sides.ts'
import { numbers } from '../random-visit.ts'
import { type Case, type Law, protocol, shelf, unless } from './case.ts'

const isLeftOff = ({ limits }: RaiseInPair): boolean =>
	limits.some(({ code }) => code === 'raise.left-off')
const added = ({ left, right }: RaiseInPair): PerSide<number> => ({
	left: left.addMm,
	right: right.addMm,
})
const differenceMm = ({ left, right }: PerSide<number>): number => left - right
const isNear = (one: number, other: number): boolean => Math.abs(one - other) < 1e-6
/** The thickest liner of the shelf that comes out. */
const linerMm = Math.max(
	0,
	...shelf.models.map(({ removableLiner, linerThicknessMm = 0 }) =>
		removableLiner ? linerThicknessMm : 0,
	),
)
/** 6 mm inside a boot, 12 mm in trainers and everyday shoes; raise.table.ts and ankle.table.ts. */
function mostInsideMm({ pair }: RaiseInPair, { visit }: Case): number {
	const owned = visit.footwear?.find(({ id }) => id === pair)
	const roles: readonly string[] = owned?.roles ?? (owned ? [] : [pair.replace('role.', '')])
	const isRoomy = roles.length > 0 && roles.every((role) => /^(running|everyday)$/.test(role))
	return isRoomy || (owned && isTrainer(owned)) ? 12 : 6
}
const raiseLaws: Readonly<Record<string, Law>> = {
	'left less right is the leg-length correction in every pair that is worn': ({ assessment }) => {
		const { raise } = assessment.prescription
		const correction = differenceMm(raise.aim.legLengthMm ?? { left: 0, right: 0 })
		const steps = raise.steps.filter(({ when }) => when !== 'stop')
		return [
			...raise.pairs
				.filter((pair) => !isLeftOff(pair))
				.map((pair) => [pair.pair, differenceMm(added(pair))] as const),
			...steps.map(({ code, addMm }) => [code, differenceMm(addMm)] as const),
		].flatMap(([name, mm]) => unless(isNear(mm, correction), `${name}: ${mm} for ${correction}`))
	},
	'the room and the plan give one figure': ({ assessment: { findings, prescription } }) => {
		const given = prescription.raise.pairs.map((pair) => JSON.stringify(added(pair)))
		return findings
			.filter(({ code }) => code === 'raise.pair')
			.flatMap(({ id, params }) => unless(given.includes(JSON.stringify(params.mm)), id))
	},
	'a raise keeps within its pair': (one) =>
		one.assessment.prescription.raise.pairs.flatMap((pair) => {
			const ownMm = mostInsideMm(pair, one)
			const isOwned = one.visit.footwear?.some(({ id }) => id === pair.pair)
			const bothMm = Math.min(pair.left.addMm, pair.right.addMm)
			return [
				...bothSides.flatMap((side) => {
					const { addedUnderHeelMm, madeBy } = pair[side]
					// an insert alone may lie where the liner of a boot still to be bought came out
					const isRaised = madeBy === 'wedge' || madeBy === 'insert'
					const mostMm = isOwned || isRaised ? ownMm : ownMm + linerMm
					const fault = `${pair.pair} ${side}: ${addedUnderHeelMm} mm inside`
					return unless(addedUnderHeelMm <= mostMm + 1e-6, fault)
				}),
				...unless(
					bothMm === 0 || (pair.offsetMm ?? 0) + bothMm <= 24 + 1e-6,
					`${pair.pair}: heel ${(pair.offsetMm ?? 0) + bothMm} mm above the ball`,
				),
				...unless(!isLeftOff(pair) || bothMm === 0, `${pair.pair} is left off and raised`),
			]
		}),
	'an insert carries no more than the raise of its pairs': ({ assessment }) => {
		const { raise } = assessment.prescription
		return bothSides.flatMap((side) => {
			const carried = assessment.insert[side].elements.filter(({ element }) =>
				element.endsWith('-raise'),
			)
			const carriedMm = carried.reduce((sum, { value = 0 }) => sum + value, 0)
			const mostMm = Math.max(0, ...raise.pairs.map((pair) => pair[side].addMm))
			return unless(carriedMm <= mostMm + 1e-6, `${side}: ${carriedMm} mm of ${mostMm} mm`)
		})
	},
}
const insertLaws: Readonly<Record<string, Law>> = {
	'every element keeps within its own range': ({ assessment: { insert } }) =>
		bothSides.flatMap((side) =>
			insert[side].elements.flatMap(({ element, value, range }) => {
				if (value === undefined || range === undefined) return []
				const isWithin = range[0] <= value && value <= range[1]
				return unless(isWithin, `${side} ${element}: ${value} of ${range.join(' to ')}`)
			}),
		),
	'nothing of an insert is left to be settled': ({ assessment: { insert } }) =>
		insert.conflicts.map(({ id }) => id),
}
const pairLaws: Readonly<Record<string, Law>> = {
	'no feature is sought and avoided in one pair, nor two opposites': ({ assessment }) =>
		assessment.prescription.pairs.flatMap(({ id, seek, avoid }) => [
			...seek.filter((feature) => avoid.includes(feature)).map((both) => `${id}: ${both}`),
			...opposites
				.filter((two) => two.every((feature) => seek.includes(feature)))
				.map((two) => `${id}: ${two.join(' and ')}`),
		]),
	'a pair is asked for at a length between its ends, on ground that its sole may stand on': ({
		assessment,
	}) =>
		assessment.prescription.pairs.flatMap(({ id, insideLengthMm, sole, surfaces, shelf }) => {
			const { min = 0, target = 0, max = 0 } = insideLengthMm ?? {}
			return [
				...unless(min <= target && target <= max, `${id}: ${min} ${target} ${max}`),
				...unless(shelf.length <= 3, `${id}: ${shelf.length} models`),
				...(sole === undefined || isHeld(assessment.prescription.gate, 'purchase')
					? []
					: surfaces
							.filter((ground) => suitability[sole][ground].dry === 'forbidden')
							.map((ground) => `${id}: ${sole} on ${ground}`)),
			]
		}),
	'a pair judged keep lies within measuring error of the band it was told': ({
		visit,
		assessment: { prescription, sizing },
	}) => {
		// the lengths told are rounded to a tenth
		const rounding = 0.051
		const errorMm = protocol.value('sizing.bandErrorMm') + rounding
		const shortMm = soreNails(visit).length > 0 ? rounding : errorMm
		return prescription.owned.flatMap(({ id, verdict }) => {
			const pair = visit.footwear?.find((own) => own.id === id)
			const told = (pair && isTrainer(pair) ? sizing.trainers : sizing)?.insideLengthMm
			const insideMm = pair?.insideLengthMm
			if (verdict !== 'keep' || insideMm === undefined || told === undefined) return []
			const isWithin = insideMm >= told.min - shortMm && insideMm <= told.max + errorMm
			return unless(isWithin, `${id}: ${insideMm} of ${told.min} to ${told.max}`)
		})
	},
	'every number is one': ({ assessment }) =>
		unless(numbers(assessment).every(Number.isFinite), 'a number is none'),
}
export const figures: Readonly<Record<string, Law>> = { ...raiseLaws, ...insertLaws, ...pairLaws }
