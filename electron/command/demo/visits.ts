/** Players and their visits, signed or left open. */
import { assess } from '../../../shared/engine/assess.ts'
import { isMinor } from '../../../shared/engine/facts/age.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { settleAll } from '../../../shared/engine/prescription/answers.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import { refers } from '../../../shared/engine/report/signing.ts'
import { usualAgreement } from '../../../shared/engine/visit/agreement.ts'
import { type Decisions, noDecisions } from '../../../shared/engine/visit/decisions.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import type { Ask } from './asking.ts'
import type { PlayerTold, Scenario } from './scenario.ts'

/**
 * The demo's clinician settles every question as proposed; a real one looks at each.
 * @internal
 */
export const settledAsProposed = (
	assessment: Assessment,
	decisions: Decisions = noDecisions,
): Decisions => settleAll(decisions, assessment.prescription, 'Not asked that day.')

/** What the records of the demo are known by while they are filled. */
export class Known {
	readonly #players = new Map<string, string>()
	readonly #visits = new Map<string, string>()
	tookPlayer(name: string, playerId: string): void {
		this.#players.set(name, playerId)
	}
	tookVisit(name: string, visitDate: string, visitId: string): void {
		this.#visits.set(`${name} ${visitDate}`, visitId)
	}
	/** @throws Error where the files name somebody whom they do not bring */
	player(name: string): string {
		const playerId = this.#players.get(name)
		if (playerId === undefined) throw new Error(`demo: no player is named ${name}`)
		return playerId
	}
	/** @throws Error where the files name a visit that is not signed by then */
	visit(name: string, visitDate: string): string {
		const visitId = this.#visits.get(`${name} ${visitDate}`)
		if (visitId === undefined) throw new Error(`demo: no signed visit of ${name}, ${visitDate}`)
		return visitId
	}
}

/** A visit with what stands around it. */
export interface VisitTold {
	playerId: string
	visit: Visit
	earlier: readonly Visit[]
	shelf: Shelf
	referralDone?: string | undefined
}
/** Writes the entries of a visit, as they are typed before anything is decided. */
export async function writeOpen(
	ask: Ask,
	{ playerId, visit }: Pick<VisitTold, 'playerId' | 'visit'>,
	decisions: Decisions = noDecisions,
): Promise<string> {
	const { draft } = await ask('drafts.open', { playerId, visitDate: visit.visitDate })
	const { draftId } = draft
	await ask('drafts.save', { draftId, content: { visit, raw: {}, decisions } })
	return draftId
}
/** Settles what a visit asks, and signs it. @param before what is done while it is open */
export async function writeSigned(
	ask: Ask,
	{ playerId, visit, earlier, shelf, referralDone }: VisitTold,
	before: () => Promise<unknown> = async () => {},
): Promise<string> {
	const assessment = assess(visit, [...earlier], undefined, shelf)
	const draftId = await writeOpen(
		ask,
		{ playerId, visit },
		{
			...settledAsProposed(assessment),
			...present({ agreement: usualAgreement(visit.player, isMinor(visit, openProtocol())) }),
			...(refers(assessment) && present({ referralDone })),
		},
	)
	await before()
	const { visitId } = await ask('visits.sign', { draftId })
	return visitId
}
/** Takes a player in at the first visit, and enters one visit after the other. */
export function visitsOf(
	ask: Ask,
	known: Known,
	{ shelf, season }: Scenario,
	{ player, visits, lastIsOpen, seasonIn, referralDone = {}, handedTo }: PlayerTold,
): { day: string; enter: () => Promise<void> }[] {
	const name = fullName(player)
	return visits.map((visit, index) => {
		const { visitDate } = visit
		const isPlanned = seasonIn === visitDate
		const planned = async (playerId: string) => {
			if (!isPlanned) return
			await ask('season.save', { playerId, season })
			await ask('season.plan', { playerId })
		}
		const enter = async () => {
			if (index === 0) await takeIn(ask, known, player)
			const playerId = known.player(name)
			const told = { playerId, visit, earlier: visits.slice(0, index), shelf }
			if (lastIsOpen && index === visits.length - 1) {
				await writeOpen(ask, told)
				return
			}
			const done = referralDone[visitDate]
			const visitId = await writeSigned(ask, { ...told, referralDone: done }, () =>
				planned(playerId),
			)
			known.tookVisit(name, visitDate, visitId)
			if (handedTo === undefined) return
			await ask('reports.handedOver', { visitId, recipient: handedTo, channel: 'by-hand' })
		}
		return { day: visitDate, enter }
	})
}
export async function takeIn(ask: Ask, known: Known, player: PlayerTold['player']): Promise<void> {
	const { playerId } = await ask('players.save', { player })
	known.tookPlayer(fullName(player), playerId)
}
