/** Fills a fresh, throw-away store with the invented clinic of assets/demo. */
import { readFileSync } from 'node:fs'
import { z } from 'zod'
import { assess } from '../../shared/engine/assess.ts'
import { isMinor } from '../../shared/engine/facts/age.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import { present } from '../../shared/engine/plain/present.ts'
import { settleAll } from '../../shared/engine/prescription/answers.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { clinicSchema } from '../../shared/engine/report/clinic.ts'
import { refers } from '../../shared/engine/report/signing.ts'
import { usualAgreement } from '../../shared/engine/visit/agreement.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { shelfSchema } from '../../shared/engine/visit/shelf.ts'
import { playerSchema, type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import type { App } from '../app.ts'

export const demoPassphrase = 'demo demo'
const demoSchema = z.strictObject({
	clinic: clinicSchema,
	players: z.array(z.strictObject({ player: playerSchema, visits: z.array(visitSchema) })),
})

/**
 * The demo's clinician settles every question as proposed; a real one looks at each.
 * @internal
 */
export const settledAsProposed = (
	assessment: Assessment,
	decisions: Decisions = noDecisions,
): Decisions => settleAll(decisions, assessment.prescription, 'Demo: not asked that day.')
/** A file of assets/demo. */
const readAsset = (name: string): unknown =>
	JSON.parse(readFileSync(new URL(`../../assets/demo/${name}`, import.meta.url), 'utf8'))
/** The player whose season and footwear the pictures show. */
const picturedFamily = 'Lindqvist-Okafor'
type Call = (name: string, input: unknown) => Promise<Record<string, unknown>>

/** @throws Error naming the call that refused, with its problems */
function callOf(app: App): Call {
	return async (name, input) => {
		const answer = await app.call(name, input)
		if (answer.ok) return answer.value as Record<string, unknown>
		const problems = (answer.problems ?? []).map(({ path, message }) => `${path}: ${message}`)
		throw new Error(`demo: ${name} refused: ${answer.message} ${problems.join('; ')}`)
	}
}
/**
 * Goes through the same calls as the screens. Visits but the last are signed; the last stays an
 * open draft. @throws Error naming the call that refused
 */
export async function seedDemo(app: App): Promise<void> {
	const { clinic, players } = demoSchema.parse(readAsset('demo.json'))
	const call = callOf(app)
	const { recoveryKey } = await call('session.setUp', { clinic, passphrase: demoPassphrase })
	// nobody prints the key of a demo
	const [first = '', second = ''] = String(recoveryKey).split('-')
	const groups = [first, second].map((typed, index) => ({ group: index + 1, typed }))
	await call('session.confirmRecoveryKey', { groups })
	const shelf = shelfSchema.parse(readAsset('shelf.json'))
	await call('shelf.save', { shelf })
	const pictured = visitSchema.parse(readAsset('season-visit.json'))
	for (const { player, visits } of players) {
		const { playerId } = await call('players.save', { player })
		const isPictured = player.familyName === picturedFamily
		if (isPictured && pictured.season)
			await call('season.save', { playerId, season: pictured.season })
		for (const [index, plainVisit] of visits.entries()) {
			const isLast = index === visits.length - 1
			const visit =
				isPictured && isLast ? { ...plainVisit, footwear: pictured.footwear } : plainVisit
			const assessment = assess(visit, visits.slice(0, index), undefined, shelf)
			const draftId = await writeDraft(call, playerId, visit, assessment, !isLast)
			if (!isLast) await call('visits.sign', { draftId })
		}
	}
}
/** @param decided whether its questions are settled. @returns the draft's id */
async function writeDraft(
	call: Call,
	playerId: unknown,
	visit: Visit,
	assessment: Assessment,
	decided: boolean,
): Promise<string> {
	const { draft } = await call('drafts.open', { playerId, visitDate: visit.visitDate })
	const { draftId } = draft as { draftId: string }
	const decisions: Decisions = {
		...(decided ? settledAsProposed(assessment) : noDecisions),
		...(decided &&
			present({ agreement: usualAgreement(visit.player, isMinor(visit, openProtocol())) })),
		...(refers(assessment) && {
			referralDone: 'Demo: seen by the team doctor the same day.',
		}),
	}
	await call('drafts.save', { draftId, content: { visit, raw: {}, decisions } })
	return draftId
}
