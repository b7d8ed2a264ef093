/** A re-check from the last signed visit to its signature, and when there is nothing to look back to. */
import { expect, test } from 'vitest'
import type { DraftContent } from '../../shared/contract.ts'
import { withUnchanged } from '../../shared/engine/recheck/take-over.ts'
import { decideAll } from '../decide.ts'
import { signed, withPlayer } from './bench-app.ts'
import { found } from './found-visit.ts'

const on = '2027-03-24'
test('asks what the last signed visit makes worth asking, and keeps the answers', async () => {
	const { app, playerId } = await withPlayer()
	const sore = { condition: 'achilles-midportion', side: 'left', status: 'current', painWorst: 6 }
	await signed(app, playerId, { ...found, conditions: [sore] })
	const { draft, earlier } = await app.ask('drafts.open', {
		playerId,
		visitDate: on,
		recheck: true,
	})
	const { visit } = draft.content as DraftContent
	const { since } = visit
	expect(since?.visitDate).toBe('2027-01-20')
	expect(since?.worn).toEqual([{ what: 'raise', side: 'both' }])
	expect(since?.plan?.map(({ question }) => question)).toContain('raise')
	expect(visit.conditions).toEqual([{ condition: 'achilles-midportion', side: 'left' }])
	expect(visit.screening).toEqual({})
	// resumed as it stands, whichever way it is opened
	const again = await app.ask('drafts.open', { playerId, visitDate: on })
	expect(again.draft).toMatchObject({ draftId: draft.draftId, content: { visit: { since } } })
	const told = {
		...visit,
		screening: found.screening,
		feet: found.feet,
		conditions: [
			{ ...sore, status: 'recovering', painWorst: 3, painNow: 1, daysOff: 4, sessionsMissed: 2 },
		],
		since: {
			...since,
			worn: [{ what: 'raise', side: 'both', weeks: 8, now: 'still-worn', trouble: ['none'] }],
		},
	} as typeof visit
	const content = { ...draft.content, visit: withUnchanged(told, earlier[0], ['play']) }
	await app.ask('drafts.save', { draftId: draft.draftId, content })
	const draftId = await decideAll(app.ask, playerId, on)
	const { visitId } = await app.ask('visits.sign', { draftId })
	const kept = (await app.ask('visits.open', { visitId })).visit
	expect(kept.since).toMatchObject({ worn: content.visit.since?.worn, unchanged: ['play'] })
	expect(kept.play).toEqual(earlier[0].play)
	expect(kept.conditions).toEqual(told.conditions)
	const { sheet } = await app.ask('reports.sheet', { visitId })
	expect(sheet.facts.length).toBeGreaterThan(0)
})
test('is refused in words without a signed visit before its day', async () => {
	const { app, playerId } = await withPlayer()
	const open = (visitDate: string) =>
		app.call('drafts.open', { playerId, visitDate, recheck: true })
	expect(await open(on)).toMatchObject({
		ok: false,
		code: 'visits.nothing-to-recheck',
		message: expect.stringContaining('none of this player is signed'),
	})
	await signed(app, playerId, found)
	expect(await open('2027-01-20')).toMatchObject({
		ok: false,
		message: expect.stringContaining('20 January 2027'),
	})
	expect(await open(on)).toMatchObject({ ok: true })
})
