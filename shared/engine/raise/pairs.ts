/** The pairs that a raise is worked out for: those owned, and the roles that none of them fills. */
import { isTrainer, rolesOfPair } from '../facts/trainer.ts'
import type { PerSide, PlayerFacts, RaiseInPair, SizingResult } from '../findings/assessment.ts'
import { idPart } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import type { PairRole } from '../visit/terms.ts'
import type { Pair, Visit } from '../visit/visit.ts'

/** What an insert puts under each heel, mm; absent for a foot without one. */
export type InsertInside = Partial<PerSide<number>>
/** A pair as the raise sees it. Heights mm. */
export interface RaisedPair {
	/** Id of an owned pair, or `role.<role>`. */
	id: string
	/** As part of a finding's id. */
	idPart: string
	/** As it is named to a reader; absent for one still to be chosen. */
	name?: string
	role?: PairRole
	/** What it is worn for. */
	wornFor: readonly PairRole[]
	/** A trainer or everyday shoe: it holds more than a boot. */
	roomy: boolean
	offsetMm?: number
	offsetFrom: RaiseInPair['offsetFrom']
	/** What lies inside today. */
	wornMm: number
	insertWorn: boolean
	/** An insert to be made, mm under each heel; it takes the place of one that is worn. */
	insertMm?: InsertInside
	heelSlips: boolean
	leftOff: boolean
}
const roomyRoles: readonly PairRole[] = ['running', 'everyday']
/** Offset of the kind that a role usually has; everyday shoes differ too much for one. */
const offsetOfRole: Partial<Record<PairRole, ThresholdKey>> = {
	match: 'raise.bootOffsetMm',
	training: 'raise.bootOffsetMm',
	running: 'raise.trainerOffsetMm',
}
const dangers: readonly string[] = ['stud-sharp', 'sole-separated']

/** The length inside that boots and trainers need, mm. */
export interface LengthsInside extends Pick<SizingResult, 'insideLengthMm'> {
	trainers?: Pick<NonNullable<SizingResult['trainers']>, 'insideLengthMm'>
}
/**
 * Pairs that nothing is put into: dangerously damaged, or shorter inside than the foot needs by
 * more than an error of measurement.
 */
export function pairsToLeaveOff(
	visit: Visit,
	sizing: LengthsInside,
	protocol: Protocol,
): ReadonlySet<string> {
	const short = protocol.value('raise.shortByMm')
	const isShort = (pair: Pair): boolean => {
		const least = (isTrainer(pair) ? sizing.trainers : sizing)?.insideLengthMm?.min
		if (least === undefined || pair.insideLengthMm === undefined) return false
		return pair.insideLengthMm <= least - short
	}
	return new Set(
		(visit.footwear ?? [])
			.filter(
				(pair) => isShort(pair) || (pair.damage ?? []).some((damage) => dangers.includes(damage)),
			)
			.map(({ id }) => id),
	)
}
function ownedPair(pair: Pair, index: number, leftOff: ReadonlySet<string>): RaisedPair {
	const offsetMm = pair.heelToForefootOffsetMm
	return present({
		id: pair.id,
		idPart: idPart(pair.id, index),
		name: pair.name ?? pair.id,
		wornFor: rolesOfPair(pair),
		roomy: isTrainer(pair) || rolesOfPair(pair).every((role) => roomyRoles.includes(role)),
		offsetMm,
		offsetFrom: offsetMm === undefined ? ('unknown' as const) : ('measured' as const),
		wornMm: pair.heelLiftMm ?? 0,
		insertWorn: pair.insertInside === true,
		heelSlips: pair.damage?.includes('heel-slips') === true,
		leftOff: leftOff.has(pair.id),
	})
}
function pairOfRole(role: PairRole, protocol: Protocol): RaisedPair {
	const key = offsetOfRole[role]
	return present({
		id: `role.${role}`,
		idPart: `role-${role}`,
		role,
		wornFor: [role],
		roomy: roomyRoles.includes(role),
		offsetMm: key && protocol.value(key),
		offsetFrom: key === undefined ? ('unknown' as const) : ('stated' as const),
		wornMm: 0,
		insertWorn: false,
		heelSlips: false,
		leftOff: false,
	})
}
/** What is known of the pairs beside the visit: ids. */
export interface PairsKnown {
	/** Nothing is put into these. */
	leftOff: ReadonlySet<string>
	/** These are worn until another takes their place. */
	replaced: ReadonlySet<string>
	/** An insert to be made, by pair. */
	inserts: ReadonlyMap<string, InsertInside>
}
/** Every pair of the visit, then the roles for which a pair is still to be chosen. */
export function raisedPairs(
	visit: Visit,
	{ roles }: PlayerFacts,
	{ leftOff, replaced, inserts }: PairsKnown,
	protocol: Protocol,
): RaisedPair[] {
	const owned = visit.footwear ?? []
	const staying = owned.filter(({ id }) => !leftOff.has(id) && !replaced.has(id))
	const filled = new Set(staying.flatMap((pair) => rolesOfPair(pair)))
	return [
		...owned.map((pair, index) => ownedPair(pair, index, leftOff)),
		...roles.filter((role) => !filled.has(role)).map((role) => pairOfRole(role, protocol)),
	].map((pair) => present({ ...pair, insertMm: inserts.get(pair.id) }))
}
