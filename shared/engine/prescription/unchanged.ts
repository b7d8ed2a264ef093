/**
 * Whether what a question rests on changed since the last visit: figures beyond their published
 * error, everything else at all. Never worked out for the gate.
 */
import { measureChange } from '../findings/measure-change.ts'
import { isInsertTrouble } from '../insert/follow/kept.ts'
import { canonicalJson } from '../plain/canonical.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { troublesTold } from '../recheck/told.ts'
import { ageYears } from '../visit/age.ts'
import {
	catalogue,
	isNumber,
	numberMeasures,
	type Placed,
	pathsOf,
	type Section,
	sidesOf,
} from '../visit/measures/catalogue.ts'
import type { NumberMeasure } from '../visit/measures/measure.ts'
import { measured, recordedAt } from '../visit/measures/value.ts'
import type { Side, Visit } from '../visit/visit.ts'

type Group = Section['group']
interface RestsOn {
	groups: readonly Group[]
	parts: readonly (keyof Visit)[]
}
/** The body, the pairs and what is played: whatever goes into or onto a shoe rests on them. */
const shoe: RestsOn = {
	groups: ['feet', 'ankles', 'posture', 'play', 'body'],
	parts: ['conditions', 'footwear', 'means', 'screening'],
}
/** By the subject of the question; what is not named rests on everything. */
const restsOn: Readonly<Record<string, RestsOn>> = {
	complaint: { groups: ['play'], parts: ['complaint', 'conditions', 'screening'] },
	size: { groups: ['feet'], parts: ['conditions'] },
	raise: shoe,
	pair: shoe,
	owned: shoe,
	insert: shoe,
	changes: shoe,
	lacing: shoe,
}
const everything: RestsOn = {
	groups: ['feet', 'ankles', 'posture', 'play', 'body'],
	parts: ['complaint', 'conditions', 'footwear', 'means', 'screening', 'season'],
}
const same = (now: unknown, then: unknown): boolean =>
	now === then || canonicalJson(now ?? null) === canonicalJson(then ?? null)

/** Many questions rest on one thing: each is compared once. */
function onceEach<Key>(compare: (key: Key) => boolean): (key: Key) => boolean {
	const known = new Map<Key, boolean>()
	return (key) => {
		const found = known.get(key) ?? compare(key)
		known.set(key, found)
		return found
	}
}
/** Two visits that are compared. */
interface Two {
	visit: Visit
	last: Visit
	protocol: Protocol
}
function isSameNumber(
	placed: Placed<NumberMeasure>,
	side: Side | undefined,
	{ visit, last, protocol }: Two,
): boolean {
	const now = measured(visit, placed, side)
	const then = measured(last, placed, side)
	if (now === undefined || then === undefined || now === then) return now === then
	return measureChange(placed, side, visit, [last], protocol)?.verdict === 'within-error'
}
function isSameGroup(group: Group, two: Two): boolean {
	const { visit, last } = two
	const numbers = numberMeasures.filter((placed) => placed.group === group)
	const others = catalogue.filter((placed) => placed.group === group && !isNumber(placed.measure))
	return (
		numbers.every((placed) => sidesOf(placed).every((side) => isSameNumber(placed, side, two))) &&
		others.every((placed) =>
			pathsOf(placed).every((path) => same(recordedAt(visit, path), recordedAt(last, path))),
		)
	)
}
/** Whether a measure taken now is another than then, beyond its error. */
const isOtherNumber = (
	placed: Placed<NumberMeasure>,
	side: Side | undefined,
	two: Two,
): boolean => {
	const taken = [measured(two.visit, placed, side), measured(two.last, placed, side)]
	return !taken.includes(undefined) && !isSameNumber(placed, side, two)
}
/**
 * Whether something of a group was recorded at both visits and changed: figures beyond their error,
 * terms at all. What was not recorded now did not change.
 */
export function changedBeyondError(group: Group, two: Two): boolean {
	return catalogue
		.filter((placed) => placed.group === group)
		.some((placed) =>
			isNumber(placed.measure)
				? sidesOf(placed).some((side) => isOtherNumber(placed as Placed<NumberMeasure>, side, two))
				: pathsOf(placed).some((path) => {
						const now = recordedAt(two.visit, path)
						return now !== undefined && !same(now, recordedAt(two.last, path))
					}),
		)
}
/** A growing player is another one after a birthday. */
function isSamePlayer({ visit, last }: Two, minor: boolean): boolean {
	const years = (at: Visit) => ageYears(at.player.birthDate, at.visitDate)
	const { birthDate, sex } = visit.player
	return (
		birthDate === last.player.birthDate &&
		sex === last.player.sex &&
		(!minor || years(visit) === years(last))
	)
}
/**
 * @param before the player's earlier visits, oldest first; the last of them is compared
 * @returns whether a question rests on what did not change; no question without an earlier visit
 */
export function unchangedSince(
	visit: Visit,
	before: readonly Visit[],
	minor: boolean,
	protocol: Protocol,
): (question: string) => boolean {
	const last = before.at(-1)
	if (!last) return () => false
	const two: Two = { visit, last, protocol }
	if (!isSamePlayer(two, minor)) return () => false
	const groupIsSame = onceEach((group: Group) => isSameGroup(group, two))
	// trouble with what is worn speaks against whatever goes into or onto a shoe
	const troubled = troublesTold(visit).length > 0
	const partIsSame = onceEach((part: keyof Visit) => same(visit[part], last[part]))
	return (question) => {
		const subject = question.split('.')[0] ?? ''
		const { groups, parts } = restsOn[subject] ?? everything
		if (troubled && subject in restsOn && subject !== 'complaint') return false
		if (subject === 'insert' && isInsertTrouble(visit)) return false
		return question !== 'gate' && parts.every(partIsSame) && groups.every(groupIsSame)
	}
}
