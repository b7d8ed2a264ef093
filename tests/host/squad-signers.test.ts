/** The sheet for a club: who made it, who signed, and who agreed to it, as the records have it. */
import { expect, test } from 'vitest'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { decideAll } from '../decide.ts'
import { clinic, folder, open, passphrase } from './bench-app.ts'
import { day, enter, roster, values } from './squad-bench.ts'

test('names the clinician who makes it and the one who signed, and the guardian who agreed', async () => {
	const drawn: LwDocument[] = []
	const app = open(folder(), `${day}T09:00:00.000Z`, async (document) => {
		drawn.push(document)
		return Buffer.from('%PDF-1.7 fixed bytes')
	})
	await app.ask('session.setUp', { clinic, passphrase })
	const ofOther = 'other invented words'
	await app.ask('people.save', {
		name: 'B. Second',
		registration: 'X2',
		role: 'clinician',
		passphrase: ofOther,
	})
	const text = roster(2)
	const { squadId } = await app.ask('squad.create', { text, team: 'Rovers', day, same: {} })
	const { rows } = await app.ask('squad.open', { squadId })
	const row = rows[1]
	await enter(app.ask, row.playerId, values(1), true)
	await app.ask('visits.sign', { draftId: await decideAll(app.ask, row.playerId, day) })
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: ofOther })
	drawn.length = 0
	// a later day: the sheet says when consent was given, not when it was made
	app.clock.ms += 3 * 86_400_000
	await app.ask('session.unlock', { passphrase: ofOther })
	const { leftOut } = await app.ask('squad.summary', { squadId, version: 'club' })
	expect(leftOut).toEqual([])
	const [sheet] = drawn
	const facts = new Map(sheet?.subject)
	expect(facts.get('By')).toBe('B. Second')
	expect(facts.get('Signed by')).toBe('A. Example')
	expect(sheet?.footer).toContain('Prepared by B. Second (X2)')
	const words = textsIn(sheet).join('\n')
	expect(words).toContain('The guardian agreed on 20 January 2027.')
	expect(sheet?.draft).toBe(false)
	await app.ask('squad.summary', { squadId, version: 'clinician' })
	expect(drawn[1]?.footer).toContain('Prepared for B. Second (X2)')
	app.close()
}, 60_000)
