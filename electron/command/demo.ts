/** Fills a fresh, throw-away store with the invented clinic of assets/demo. */
import { readFileSync } from 'node:fs'
import { z } from 'zod'
import { assess } from '../../shared/engine/assess.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import { clinicSchema } from '../../shared/engine/report/clinic.ts'
import { quiet, refers } from '../../shared/engine/report/signing.ts'
import { type Decision, type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { shelfSchema } from '../../shared/engine/visit/shelf.ts'
import { playerSchema, visitSchema } from '../../shared/engine/visit/visit.ts'
import type { App } from '../app.ts'

export const demoPassphrase = 'demo demo'
const demoSchema = z.strictObject({
	clinic: clinicSchema,
	players: z.array(z.strictObject({ player: playerSchema, visits: z.array(visitSchema) })),
})

/**
 * The demo's clinician accepts every caution and stop as it stands; a real one decides line by
 * line.
 */
export const acceptedLines = ({ findings }: Assessment): Decision[] =>
	findings
		.filter((finding) => !quiet(finding))
		.map(({ id, says }) => ({ findingId: id, choice: 'accept', about: says }))
/**
 * Goes through the same calls as the screens. Visits but the last are signed; the last stays an
 * open draft. @throws Error naming the call that refused
 */
export async function seedDemo(app: App): Promise<void> {
	const { clinic, players } = demoSchema.parse(
		JSON.parse(readFileSync(new URL('../../assets/demo/demo.json', import.meta.url), 'utf8')),
	)
	const call = async (name: string, input: unknown): Promise<Record<string, unknown>> => {
		const answer = await app.call(name, input)
		if (!answer.ok)
			throw new Error(
				`demo: ${name} refused: ${answer.message} ` +
					`${(answer.problems ?? []).map((problem) => `${problem.path}: ${problem.message}`).join('; ')}`,
			)
		return answer.value as Record<string, unknown>
	}
	await call('session.setUp', { clinic, passphrase: demoPassphrase })
	const shelf = shelfSchema.parse(
		JSON.parse(readFileSync(new URL('../../assets/demo/shelf.json', import.meta.url), 'utf8')),
	)
	await call('shelf.save', { shelf })
	const pictured = visitSchema.parse(
		JSON.parse(
			readFileSync(new URL('../../assets/demo/season-visit.json', import.meta.url), 'utf8'),
		),
	)
	for (const { player, visits } of players) {
		const { playerId } = await call('players.save', { player })
		const ownSeason = player.familyName === 'Lindqvist-Okafor'
		if (ownSeason && pictured.season)
			await call('season.save', { playerId, season: pictured.season })
		for (const [index, plainVisit] of visits.entries()) {
			const visit =
				ownSeason && index === visits.length - 1
					? { ...plainVisit, footwear: pictured.footwear }
					: plainVisit
			const { draft } = await call('drafts.open', { playerId, visitDate: visit.visitDate })
			const { draftId } = draft as { draftId: string }
			const sign = index < visits.length - 1
			const assessment = assess(visit, visits.slice(0, index), undefined, shelf)
			const decisions: Decisions = {
				...noDecisions,
				consentNoted: true,
				...(sign ? { lines: acceptedLines(assessment) } : {}),
				...(refers(assessment)
					? { referralDone: 'Demo: seen by the team doctor the same day.' }
					: {}),
			}
			await call('drafts.save', { draftId, content: { visit, raw: {}, decisions } })
			if (sign) await call('visits.sign', { draftId })
		}
	}
}
