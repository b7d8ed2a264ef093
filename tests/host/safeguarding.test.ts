/** The safeguarding note in the host: read by those who lead, kept by whoever else saves. */
import { expect, test } from 'vitest'
import type { DraftContent } from '../../shared/contract.ts'
import { type open, passphrase, signed, withPlayer } from './bench-app.ts'

const mark = 'Zq-marked-note-Zq'
type App = ReturnType<typeof open>
const drafted = async (app: App, playerId: string) =>
	(await app.ask('drafts.open', { playerId, visitDate: '2027-03-02' })) as {
		draft: { draftId: string; content: DraftContent }
		earlier: unknown[]
	}
async function workAs(app: App, words: string) {
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: words })
}

test('a student is not answered it, and saving does not lose it; nor is it in the trail', async () => {
	const { app, playerId } = await withPlayer()
	for (const role of ['student', 'clinician'])
		await app.ask('people.save', {
			name: `Invented ${role}`,
			registration: role === 'clinician' ? 'X2' : '',
			role,
			passphrase: `${role} words`,
		})
	const screening = { nightPain: false, safeguardingNote: mark }
	const visitId = await signed(app, playerId, { screening })
	const { draft } = await drafted(app, playerId)
	await app.ask('drafts.save', {
		draftId: draft.draftId,
		content: { ...draft.content, visit: { ...draft.content.visit, screening } },
	})

	await workAs(app, 'student words')
	const toStudent = await drafted(app, playerId)
	expect(toStudent.draft.content.visit.screening).toEqual({ nightPain: false })
	expect(toStudent.earlier).toHaveLength(1)
	const answers = [
		toStudent,
		await app.ask('visits.open', { visitId }),
		await app.ask('visits.history', { visitId }),
		await app.ask('reports.page', { visitId }),
	]
	expect(JSON.stringify(answers)).not.toContain(mark)
	await app.ask('drafts.save', {
		draftId: draft.draftId,
		content: {
			...toStudent.draft.content,
			visit: { ...toStudent.draft.content.visit, screening: { nightPain: true } },
		},
	})

	await workAs(app, 'clinician words')
	expect((await drafted(app, playerId)).draft.content.visit.screening).toEqual({
		nightPain: true,
		safeguardingNote: mark,
	})
	expect((await app.ask('visits.open', { visitId })).visit.screening).toEqual(screening)

	await workAs(app, passphrase)
	const trail = await app.ask('audit.page', { limit: 200 })
	expect(trail.rows.length).toBeGreaterThan(5)
	expect(JSON.stringify(trail)).not.toContain(mark)
	app.close()
})
