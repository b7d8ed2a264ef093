/**
 * What was decided under any version, taken into an amendment under this one: nothing typed is lost,
 * and what reads otherwise now is asked again before it is signed.
 */
import { join } from 'node:path'
import { afterEach, describe, expect, test } from 'vitest'
import type { DraftContent, SignedVisit } from '../../shared/contract.ts'
import { assess } from '../../shared/engine/assess.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { signingBlocks } from '../../shared/engine/report/signing.ts'
import { fixtureNames, fixtures, readManifest } from './manifest.ts'
import { openedFrom } from './scenario/look.ts'
import { type Ask, type Opened, programAt, World } from './scenario/program.ts'

const program = await programAt(join(import.meta.dirname, '../..'))
const apps: Opened[] = []
afterEach(() => {
	for (const app of apps.splice(0)) app.close()
})
/** A signed visit with decisions of a player without an open draft; the newest version of it. */
async function decidedVisit(
	ask: Ask,
): Promise<{ playerId: string; signed: SignedVisit } | undefined> {
	const { cards } = await ask('players.search', { query: '', limit: 50 })
	for (const { playerId } of cards) {
		const { visits, drafts } = await ask('players.open', { playerId })
		if (drafts.length > 0) continue
		for (const { visitId, inError } of visits) {
			const signed: SignedVisit = await ask('visits.open', { visitId })
			if (!inError && signed.decisions.lines.length > 0) return { playerId, signed }
		}
	}
	return undefined
}

describe.each(fixtureNames())('signed under %s', (name) => {
	const { lookedAt, openings } = readManifest(name)
	test('amended under this version', async () => {
		let amended = 0
		for (const opening of openings) {
			const app = await openedFrom(new World(program, lookedAt), join(fixtures, name), opening)
			apps.push(app)
			const { ask } = app
			if (opening.kind === 'pack') continue
			await ask('session.unlock', { passphrase: opening.passphrase })
			const found = await decidedVisit(ask)
			if (!found) continue
			amended++
			const { playerId, signed } = found
			await ask('visits.amend', { visitId: signed.visitId, reason: 'looked at again' })
			const { draft, earlier } = await ask('drafts.open', {
				playerId,
				visitDate: signed.visit.visitDate,
			})
			expect(draft.content.decisions.lines).toEqual(signed.decisions.lines)
			expect(draft.content.decisions.insert).toEqual(signed.decisions.insert)
			const { file } = await ask('protocol.get', {})
			const { shelf } = await ask('shelf.get', {})
			const assessment = assess(draft.content.visit, earlier, file, shelf)
			const { decisions }: DraftContent = draft.content
			const blocks = signingBlocks(draft.content, assessment, openProtocol(file))
			const answered = new Set(decisions.answers?.map(({ question }) => question))
			const asked = assessment.prescription.questions.filter(
				({ id, held }) => !held && !answered.has(id),
			)
			expect(
				blocks.filter(({ code }) => code === 'signing.open-questions').map(({ params }) => params),
			).toEqual(asked.length > 0 ? [{ questions: asked.map(({ id }) => id) }] : [])
			expect(await ask('visits.open', { visitId: signed.visitId })).toEqual(signed)
		}
		// the very first records hold no decisions
		if (name !== 'before-0.1.0') expect(amended).toBeGreaterThan(0)
	})
})
