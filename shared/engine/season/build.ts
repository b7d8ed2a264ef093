/** A visit's season and pairs made into the numbers of the rotation. */

import { lifeShare } from '../facts/life-share.ts'
import type { Finding } from '../findings/finding.ts'
import type { Ground } from '../protocol/norms/suitability.table.ts'
import type { Suitability } from '../protocol/norms/suitability.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { addDays, dayNumber, twoDigits } from '../visit/age.ts'
import { termWords } from '../visit/terms.ts'
import type { Pair, Session, Visit } from '../visit/visit.ts'
import { barredBy, barredFindings } from './code-rules.ts'
import { layLadders } from './ladder.ts'
import { easeIn, usualWeekMinutes } from './lay-off.ts'
import { stopOf, weeklyLimits } from './limits.ts'
import { fullDay, mondayOf, seasonSessions } from './pattern.ts'
import type { Fixed, Owned, SeasonProblem, Slot, Weights } from './problem.ts'

/**
 * A plan made earlier: what it said of the past stands where the visit does not say what was worn.
 */
export interface EarlierPlan {
	sessions: readonly {
		id?: string | undefined
		date: string
		pair?: string | undefined
		minutes: number
		fullMinutes?: number | undefined
		parts?: readonly { pair: string; minutes: number }[] | undefined
	}[]
	pairs?: readonly { id: string; letter: string }[]
}
export interface BuildInput {
	visit: Visit
	protocol: Protocol
	suitability: Suitability
	/** Sessions before this date stay as they were. Absent: the day of the visit. */ from?: string
	earlier?: EarlierPlan
	/** an insert is started together with the new pairs: every step of their ladder is shortened */ newInsert?: boolean
	/** ids of pairs judged outgrown at the visit */ outgrown?: readonly string[]
}
export interface Built {
	problem: SeasonProblem
	findings: Finding[]
	sessions: (Session & { id: string })[]
	off: (Session & { id: string })[]
}

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'
/**
 * Letters as recorded, then those of an earlier plan, so that a new pair never renames the others;
 * the rest in the order given.
 */
export function lettersOf(
	pairs: readonly Pick<Pair, 'id' | 'letter'>[],
	before: readonly { id: string; letter: string }[] = [],
): Map<string, string> {
	const given = new Map(
		pairs.flatMap((pair) => (pair.letter === undefined ? [] : [[pair.id, pair.letter] as const])),
	)
	for (const { id, letter } of before)
		if (
			!given.has(id) &&
			/^[A-Z]$/.test(letter) &&
			![...given.values()].includes(letter) &&
			pairs.some((pair) => pair.id === id)
		)
			given.set(id, letter)
	const free = [...letters].filter((letter) => ![...given.values()].includes(letter))
	return new Map(pairs.map((pair) => [pair.id, given.get(pair.id) ?? free.shift() ?? '?']))
}
const byId = (a: Pair, b: Pair): number => (a.id < b.id ? -1 : 1)

function slotOf(
	session: Session & { id: string },
	protocol: Protocol,
	from: string,
	{ visitDate, play }: Visit,
): Slot {
	const usual = protocol.value(
		session.kind === 'match' ? 'season.matchStartHour' : 'season.trainingStartHour',
	)
	const start =
		session.start ?? `${twoDigits(Math.floor(usual))}:${twoDigits(Math.round((usual % 1) * 60))}`
	const [hour = 0, minute = 0] = start.split(':').map(Number)
	return {
		id: session.id,
		date: session.date,
		start,
		startHour: dayNumber(session.date) * 24 + hour + minute / 60,
		minutes: session.minutes,
		kind: session.kind,
		surface: session.surface,
		ground: session.ground ?? 'dry',
		...(session.team === undefined ? {} : { team: session.team }),
		...(session.title === undefined ? {} : { title: session.title }),
		...((session.code ?? play?.code) === undefined ? {} : { code: session.code ?? play?.code }),
		past: session.date < from,
		counts: session.date >= visitDate,
		split: false,
	}
}
function weightsOf(protocol: Protocol): Weights {
	const v = protocol.value
	return {
		noPair: v('season.noPairPoints'),
		pin: v('season.pinPoints'),
		notDry: v('season.notDryPoints'),
		unfamiliar: v('season.unfamiliarPoints'),
		change: v('season.changePoints'),
		shareBound: v('season.shareBoundPoints'),
		wear: v('season.wearPoints'),
		share: v('season.sharePoints'),
		switchOver: v('season.switchPoints'),
		switchHours: v('season.switchHours'),
		price: v('season.pricePoints'),
		familiarDays: v('season.familiarDays'),
	}
}
const perMinute = (pair: Pair, life: number): number =>
	pair.price === undefined || life <= 0 ? 0 : pair.price / life
/** Points per hour of a pair in a session, or in plain words why it may not be worn there. */
function costOf(pair: Pair, owned: Owned, slot: Slot, input: BuildInput): number | string {
	if (owned.startMinutes >= owned.lifeMinutes) return 'worn out'
	if (pair.newFrom !== undefined && slot.date < pair.newFrom) return 'not yet bought'
	if (pair.acquired !== undefined && slot.date < pair.acquired) return 'not yet bought'
	if (pair.unavailable?.some((one) => slot.date >= one.from && slot.date <= one.to))
		return 'not at hand'
	const fit = input.suitability[owned.sole][slot.surface][slot.ground]
	const barred = barredBy(pair, slot.code, input.protocol)
	if (barred !== undefined) return barred
	if (fit === 'forbidden') return `${termWords(owned.sole)} sole not for ${termWords(slot.surface)}`
	return (
		fit + (input.outgrown?.includes(pair.id) ? input.protocol.value('season.outgrownPoints') : 0)
	)
}
/** The life of a pair in minutes: as recorded, else the usual one times the share for body mass. */
const lifeOf = (pair: Pair, share: number, protocol: Protocol): number =>
	pair.lifeMinutes ?? protocol.value('season.lifeMinutes') * share
function ownedOf(
	pair: Pair & { sole: NonNullable<Pair['sole']> },
	letter: string,
	dearest: number,
	share: number,
	protocol: Protocol,
): Owned {
	const life = lifeOf(pair, share, protocol)
	const worn = pair.minutesWorn ?? 0
	const drying = (
		ground: Ground,
		key: 'season.dryingDryHours' | 'season.dryingDampHours' | 'season.dryingWetHours',
	): [Ground, number] => [ground, pair.dryingHours ?? protocol.value(key)]
	const isNew =
		pair.newFrom !== undefined ||
		(pair.minutesWorn !== undefined && worn < protocol.value('season.matchFromMinutes'))
	return {
		id: pair.id,
		name: pair.name ?? `pair ${letter}`,
		letter,
		sole: pair.sole,
		startMinutes: worn,
		lifeMinutes: life,
		dryingHours: Object.fromEntries([
			drying('dry', 'season.dryingDryHours'),
			drying('damp', 'season.dryingDampHours'),
			drying('wet', 'season.dryingWetHours'),
		]) as Record<Ground, number>,
		isNew,
		...(pair.newFrom === undefined ? {} : { newFrom: pair.newFrom }),
		...(pair.shareMinPercent === undefined ? {} : { shareMin: pair.shareMinPercent / 100 }),
		...(pair.shareMaxPercent === undefined ? {} : { shareMax: pair.shareMaxPercent / 100 }),
		relativePrice: dearest > 0 ? perMinute(pair, life) / dearest : 0,
	}
}
function breakInOf({ protocol, newInsert }: BuildInput): SeasonProblem['breakIn'] {
	// the first step alone is shortened: each later one grows out of it and is then the same share of
	// the usual one
	return {
		firstMinutes:
			(newInsert ? protocol.value('season.newInsertShare') : 1) *
			protocol.value('season.breakInFirstMinutes'),
		share: protocol.value('season.breakInShare'),
		roundMinutes: protocol.value('season.roundMinutes'),
	}
}
function settled(
	slots: readonly Slot[],
	sessions: readonly Session[],
	pairs: readonly Owned[],
	earlier: EarlierPlan | undefined,
): Fixed[] {
	const index = new Map(pairs.map((pair, p) => [pair.id, p]))
	const before = new Map(
		(earlier?.sessions ?? []).map((session) => [session.id ?? session.date, session]),
	)
	return slots.flatMap((slot, s): Fixed[] => {
		if (!slot.past) return []
		const worn = sessions[s]!.worn
		const was = before.get(slot.id)
		const parts =
			worn !== undefined
				? [{ pair: worn, minutes: slot.minutes }]
				: (was?.parts ??
					(was?.pair === undefined ? [] : [{ pair: was.pair, minutes: slot.minutes }]))
		return parts.flatMap((part) =>
			index.has(part.pair)
				? [{ slot: s, pair: index.get(part.pair)!, minutes: part.minutes, why: 'worn' as const }]
				: [],
		)
	})
}
/** A session that a lay-off had shortened was played short: it counts as it was planned. */
function keepShortened(slots: Slot[], earlier: EarlierPlan | undefined): void {
	const before = new Map((earlier?.sessions ?? []).map((session) => [session.id, session]))
	for (const slot of slots) {
		const was = before.get(slot.id)
		if (slot.past && was?.fullMinutes === slot.minutes)
			Object.assign(slot, { fullMinutes: slot.minutes, minutes: was.minutes })
	}
}
const note = (
	id: string,
	level: Finding['level'],
	says: string,
	because: Finding['because'],
	basis: Finding['basis'],
): Finding => ({ id, topic: 'season', side: 'none', level, says, because, basis })

/**
 * Builds the rotation problem. What keeps a pair or the whole season out of it is said in the
 * findings.
 */
export function buildProblem(input: BuildInput): Built {
	const { visit, protocol } = input
	const findings: Finding[] = []
	const from = input.from ?? visit.visitDate
	const all = visit.season ? seasonSessions(visit.season) : []
	const sessions = all.filter((one) => one.status === undefined)
	const slots = sessions.map((session) => slotOf(session, protocol, from, visit))
	const usualWeek = usualWeekMinutes(slots)
	keepShortened(slots, input.earlier)
	const eased = easeIn(slots, all, usualWeek, protocol)
	findings.push(...eased.findings)
	const letter = lettersOf([...(visit.footwear ?? [])].sort(byId), input.earlier?.pairs)
	const recorded = [...(visit.footwear ?? [])]
		.sort(byId)
		.filter((pair): pair is Pair & { sole: NonNullable<Pair['sole']> } => {
			if (pair.sole === undefined)
				findings.push(
					note(
						`season.no-sole-${pair.id}`,
						'caution',
						`Pair ${letter.get(pair.id)} (${pair.name ?? pair.id}) is left out: its sole is not ` +
							'recorded.',
						[],
						{
							rule: 'a pair without a sole class cannot be planned',
							source: 'own rule of this program',
							strength: 'practice',
						},
					),
				)
			return pair.sole !== undefined
		})
	const share = lifeShare(visit, protocol)
	const dearest = Math.max(
		0,
		...recorded.map((pair) => perMinute(pair, lifeOf(pair, share, protocol))),
	)
	const pairs = recorded.map((pair) =>
		ownedOf(pair, letter.get(pair.id)!, dearest, share, protocol),
	)
	for (const pair of recorded)
		if (pair.minutesWorn === undefined)
			findings.push(
				note(
					`season.minutes-unknown-${pair.id}`,
					'note',
					`Minutes worn are not recorded for pair ${letter.get(pair.id)} ` +
						`(${pair.name ?? pair.id}): its wear is counted from 0.`,
					[],
					protocol.basis('wear from recorded minutes', 'season.lifeMinutes'),
				),
			)
	const stop = stopOf(visit)
	if (stop) findings.push(stop)
	const cost = slots.map((slot) =>
		recorded.map((pair, p) =>
			stop ? 'stopped by a finding' : costOf(pair, pairs[p]!, slot, input),
		),
	)
	for (const [s, session] of sessions.entries()) {
		const pin =
			session.pinned === undefined ? -1 : pairs.findIndex((pair) => pair.id === session.pinned)
		if (pin >= 0) slots[s]!.pin = pin
		else if (session.pinned !== undefined)
			findings.push(
				note(
					`season.pin-unknown-${session.id}`,
					'caution',
					`The pair pinned on ${fullDay(session.date)} is not among the pairs that can be planned.`,
					[{ measure: 'pinned', value: session.pinned }],
					{
						rule: 'a pin names a pair of this visit',
						source: 'own rule of this program',
						strength: 'practice',
					},
				),
			)
	}
	const open = slots.filter((slot) => !slot.past)
	const limits = weeklyLimits(visit, recorded, open, usualWeek, protocol)
	const place = open.map((slot) => slots.indexOf(slot))
	const caps = limits.caps.map((cap) => ({
		...cap,
		weeks: cap.weeks.map((week) => ({ ...week, slots: week.slots.map((s) => place[s]!) })),
	}))
	const split = caps.length > 0
	caps.push(...eased.caps(pairs.map((_, p) => p)))
	findings.push(...limits.findings, ...barredFindings(recorded, slots, letter, protocol))
	const splitTo =
		open[0] === undefined
			? ''
			: addDays(mondayOf(open[0].date), 7 * protocol.value('season.splitWeeks'))
	if (split)
		for (const slot of open)
			slot.split = slot.kind === 'training' && slot.pin === undefined && slot.date < splitTo
	const problem: SeasonProblem = {
		slots,
		pairs,
		cost,
		fixed: settled(slots, sessions, pairs, input.earlier),
		caps,
		matchFromMinutes: protocol.value('season.matchFromMinutes'),
		breakIn: breakInOf(input),
		shortestPartMinutes: protocol.value('season.shortestPartMinutes'),
		weights: weightsOf(protocol),
	}
	const { steps, freeFrom } = layLadders(problem)
	problem.fixed.push(...steps)
	for (const [p, free] of freeFrom.entries())
		for (const [s, row] of cost.entries())
			if (typeof row[p] === 'number' && pairs[p]!.isNew && (free === undefined || s < free))
				row[p] = 'still being broken in'
	for (const step of steps) slots[step.slot]!.split = false
	return { problem, findings, sessions, off: all.filter((one) => one.status !== undefined) }
}
