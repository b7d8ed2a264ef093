/**
 * Counts what became of the visits: one player after the other, and of each only numbers stay. Others
 * who work here are let through in between.
 */
import { type Audit, auditOf, marksOf } from '../../../shared/desk/clinic-audit/audit.ts'
import { forecastMarks } from '../../../shared/desk/clinic-audit/forecasts.ts'
import {
	type Asking,
	type Course,
	type Mark,
	type Period,
	type Seen,
	seenOf,
} from '../../../shared/desk/clinic-audit/seen.ts'
import { Tally } from '../../../shared/desk/clinic-audit/tally.ts'
import type { FollowUp } from '../../../shared/desk/recall/referral.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { isAdultOn } from '../../../shared/engine/facts/age.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import { assessmentOf } from '../records/assessment.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { tryVisit } from '../visits/reading.ts'
import { type VisitLine, visitsOf } from '../visits/visits.ts'

export type AuditNeeds = Pick<
	Memory,
	'clinic' | 'clinicAudit' | 'people' | 'players' | 'recall' | 'shelf'
>
/** How long one look may keep other calls waiting, ms: a choice of this program. */
const lookMs = 25
const rest = (): Promise<void> => new Promise((done) => setImmediate(done))

/** Undefined where this version cannot read it. */
function readSeen(deps: Deps, line: VisitLine): Seen | undefined {
	const read = tryVisit(deps, line)
	if ('trouble' in read) return undefined
	const { visitId, visit, decisions } = read.visit
	try {
		return seenOf(visitId, { visit, decisions, assessment: assessmentOf(read.visit) })
	} catch (error) {
		if (error instanceof Refusal) return undefined
		throw error
	}
}
/** Models by name and by id: what a pair may be named by. */
const modelsOf = ({ shelf }: Pick<Memory, 'shelf'>): Map<string, string> =>
	new Map(
		(shelf.shelf?.models ?? []).flatMap(({ id, name }) => [
			[id, name],
			[name, name],
		]),
	)
export function askingOf(memory: AuditNeeds, deps: Deps, period: Period): Asking {
	return {
		...period,
		today: dayHere(deps.now()),
		protocol: openProtocol(memory.clinic.protocol),
		models: modelsOf(memory),
	}
}
/** Lets others through, and sees whether the same person is still at work. */
function breather({ people }: AuditNeeds, deps: Deps) {
	const person = people.acts()
	let since = performance.now()
	return async () => {
		if (performance.now() - since < lookMs) return
		await rest()
		since = performance.now()
		if (!deps.store.isOpen || people.atWork !== person)
			throw new Refusal('people.locked', 'The records are locked. Unlock them first.')
	}
}
/** What was written of referrals, by player. */
type Written = ReadonlyMap<string, readonly FollowUp[]>

/** What is counted, of whom. */
interface Counting {
	marks: (course: Course, asking: Asking) => Mark[]
	/** by birth date, whether a player can have anything to count */
	wants: (birthDate: string) => boolean
}
const everything: Counting = { marks: marksOf, wants: () => true }
/** The forecasts alone: nothing is forecast of who was of age before the first day. */
export const forecastsOnly = ({ from, protocol }: Asking): Counting => ({
	marks: forecastMarks,
	wants: (birthDate) => !isAdultOn(birthDate, from, protocol),
})
const isOf =
	({ from, to }: Period) =>
	({ card: { visitDate } }: VisitLine): boolean =>
		visitDate >= from && visitDate <= to

/** @throws Refusal where the records were locked meanwhile, or another person took over */
export async function count(
	memory: AuditNeeds,
	deps: Deps,
	asking: Asking,
	{ marks, wants }: Counting = everything,
): Promise<{ audit: Audit; unread: number }> {
	const breathe = breather(memory, deps)
	const written: Written = memory.recall.followUpsByPlayer()
	const tally = new Tally()
	let unread = 0
	for (const { card } of memory.players.ordered()) {
		await breathe()
		if (!wants(card.birthDate)) continue
		const lines = visitsOf(memory.players, deps, card.playerId).filter(({ inError }) => !inError)
		if (!lines.some(isOf(asking))) continue
		const visits: Seen[] = []
		for (const line of lines.toReversed()) {
			const seen = readSeen(deps, line)
			if (seen) visits.push(seen)
			else unread++
			await breathe()
		}
		const of = memory.players.idsOf(card.playerId).flatMap((id) => written.get(id) ?? [])
		tally.add(marks({ visits, written: of }, asking))
	}
	return { audit: auditOf(tally, asking), unread }
}
