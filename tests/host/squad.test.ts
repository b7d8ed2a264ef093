/** A screening day, played through. */
import { mkdirSync, mkdtempSync, readdirSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { createApp } from '../../electron/app.ts'
import type { BoardRow } from '../../shared/desk/squad/board.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { decideAll } from '../decide.ts'
import { clinic, folder, open, passphrase } from './bench-app.ts'
import { type Ask, day, enter, roster, until, values } from './squad-bench.ts'

test('a day of 40 players, played through', async () => {
	const drawn: LwDocument[] = []
	let slow: Promise<void> = Promise.resolve()
	const clock = { ms: Date.parse('2027-01-20T09:00:00.000Z') }
	const app = createApp({
		dataFolder: folder(),
		scryptCost: 1024,
		now: () => new Date(clock.ms),
		renderPdf: async (document) => {
			await slow
			drawn.push(document)
			return Buffer.from('%PDF-1.7 fixed bytes')
		},
	})
	const ask: Ask = async (name, input = {}) => {
		const answer = await app.call(name, input)
		if (!answer.ok) throw new Error(`${name}: ${answer.message} ${JSON.stringify(answer.problems)}`)
		return answer.value
	}
	await ask('session.setUp', { clinic, passphrase })
	const text = roster(40)
	const preview = await ask('squad.previewRoster', { text, team: 'Invented Rovers', day })
	expect(preview.problems).toEqual([])
	expect(preview.rows).toHaveLength(40)
	expect((await ask('players.search', { query: '', limit: 1 })).total).toBe(0)
	const { squadId } = await ask('squad.create', { text, team: 'Invented Rovers', day, same: {} })
	const board = async (): Promise<BoardRow[]> => (await ask('squad.open', { squadId })).rows
	const rows = await board()
	expect(rows.map((row) => row.number)).toEqual(
		Array.from({ length: 40 }, (_, at) => String(at + 1)),
	)

	// two are absent, one refused; the others walk through the stations
	const [absent, late, refused, ...walking] = rows
	for (const row of [absent, late])
		await ask('squad.mark', { squadId, playerId: row!.playerId, presence: 'absent' })
	expect(
		await app.call('squad.mark', { squadId, playerId: refused!.playerId, presence: 'refused' }),
	).toMatchObject({ ok: false, problems: [{ path: 'reason' }] })
	await ask('squad.mark', {
		squadId,
		playerId: refused!.playerId,
		presence: 'refused',
		reason: 'the player, photos',
	})
	for (const [at, row] of walking.entries()) {
		await ask('squad.mark', { squadId, playerId: row.playerId, presence: 'here', at: 'measures' })
		await enter(ask, row.playerId, values(at).slice(0, 3))
	}
	const halfway = await board()
	expect(halfway.filter((one) => one.state === 'open' && one.at === 'measures')).toHaveLength(37)
	expect(halfway.find((row) => row.state === 'open')?.missing.map((gap) => gap.station)).toEqual([
		'measures',
		'footwear',
		'ankles-and-posture',
	])
	const drafts: string[] = []
	// the one who signs has looked at every caution
	const finished = async (playerId: string, at: number) => {
		await enter(ask, playerId, values(at), true)
		drafts.push(await decideAll(ask, playerId, day))
	}
	for (const [at, row] of walking.entries()) await finished(row.playerId, at)
	await ask('squad.mark', { squadId, playerId: late!.playerId, presence: 'here', at: 'check-in' })
	await finished(late!.playerId, 40)
	expect((await board()).filter((row) => row.state === 'ready')).toHaveLength(38)

	// nothing is written before a signature; then one by one
	const target = mkdtempSync(join(tmpdir(), 'lastwright-reports-'))
	expect(await app.call('squad.reports', { squadId, folder: target })).toMatchObject({
		ok: false,
		code: 'squad.nobody-signed',
	})
	for (const draftId of drafts) await ask('visits.sign', { draftId })
	const states = (await board()).map((row) => row.state)
	expect([
		states.filter((state) => state === 'signed').length,
		states.filter((state) => state === 'absent').length,
		states.filter((state) => state === 'refused').length,
	]).toEqual([38, 1, 1])

	// cancelled while the first two are being drawn: those are finished, no other is begun; then
	// whole
	let go = () => {}
	slow = new Promise((resolve) => {
		go = resolve
	})
	expect(await ask('squad.reports', { squadId, folder: target })).toEqual({ total: 38 })
	expect(await app.call('squad.reports', { squadId, folder: target })).toMatchObject({ ok: false })
	await ask('squad.cancel', { squadId })
	go()
	await until(async () => !(await ask('squad.progress', { squadId })).running)
	expect(await ask('squad.progress', { squadId })).toMatchObject({
		running: false,
		done: 2,
		total: 38,
		said: expect.stringContaining('Cancelled. 2 of 38'),
	})
	const whole = join(target, 'whole')
	mkdirSync(whole)
	await ask('squad.reports', { squadId, folder: whole })
	await until(async () => !(await ask('squad.progress', { squadId })).running)
	expect(await ask('squad.progress', { squadId })).toMatchObject({
		done: 38,
		files: 76,
		failed: [],
		said: '',
	})
	const files = readdirSync(whole)
	expect(files.filter((name) => name.endsWith('-report.pdf'))).toHaveLength(38)
	expect(files.join(' ')).not.toMatch(/Given|Family|writing/)

	// one step to all families: each item is to be checked, a second step puts nothing twice
	const { lines } = await ask('squad.toFamilies', { squadId })
	expect(lines).toHaveLength(38)
	expect(
		lines.every(
			(line: { itemId?: string; channel?: string }) => line.itemId && line.channel === 'print',
		),
	).toBe(true)
	const { items } = await ask('outbox.list')
	expect(
		new Set(items.map((item: { state: string; kind: string }) => `${item.kind} ${item.state}`)),
	).toEqual(new Set(['guardian to-check']))
	const again = (await ask('squad.toFamilies', { squadId })).lines
	expect(again.filter((line: { itemId?: string }) => line.itemId)).toEqual([])

	// the club sees whom it may and no body value; the clinician sees all
	drawn.length = 0
	const club = await ask('squad.summary', { squadId, version: 'club' })
	const permitted = walking.concat(late!).filter((row) => (Number(row.number) - 1) % 3 !== 0)
	const words = JSON.stringify(drawn[0])
	for (const row of permitted) expect(words).toContain(row.name)
	expect(club.leftOut).toHaveLength(38 - permitted.length)
	for (const line of club.leftOut) expect(words).not.toContain(line.split(':')[0])
	expect(words).not.toMatch(/statureCm|heelToToe|\b24\d mm|kg\b/)
	await ask('squad.summary', { squadId, version: 'clinician' })
	expect(JSON.stringify(drawn[1])).toContain(refused!.name)
	expect((await ask('audit.verify')).problems).toEqual([])
	app.close()
}, 120_000)
test(
	'a player on record is asked about, and the number of a late arrival must be ' + 'free',
	async () => {
		const app = open(folder())
		await app.ask('session.setUp', { clinic, passphrase })
		const { playerId } = await app.ask('players.save', {
			player: {
				givenName: 'Given0',
				familyName: 'FamilyA0x',
				birthDate: '2010-01-10',
				sex: 'male',
			},
		})
		const text = roster(2)
		expect(
			(await app.refused('squad.create', { text, team: 'Rovers', day, same: {} })).problems?.[0]
				?.path,
		).toBe('row 2')
		const { squadId } = await app.ask('squad.create', {
			text,
			team: 'Rovers',
			day,
			same: { 2: playerId },
		})
		expect((await app.ask('players.search', { query: '', limit: 9 })).total).toBe(2)
		const late = (number: number) => ({
			text: `Number,Given name,Family name,Birth date,Sex\r\n${number},Late,Comer,2011-11-30,f`,
			team: 'Rovers',
			day,
			same: {},
			squadId,
		})
		expect((await app.refused('squad.create', late(2))).problems?.[0]).toMatchObject({
			path: 'row 2, number',
			message: expect.stringContaining('on the board already'),
		})
		await app.ask('squad.create', late(3))
		expect((await app.ask('squad.open', { squadId })).rows).toHaveLength(3)
		app.close()
	},
)
test('the report of a student waits for the countersignature; what is written is told of an amendment', async () => {
	const app = open(folder())
	await app.ask('session.setUp', { clinic, passphrase })
	const words = 'student words'
	const student = { name: 'Invented student', registration: '', role: 'student' }
	await app.ask('people.save', { ...student, passphrase: words })
	const about = { text: roster(1), team: 'Rovers', day }
	const { squadId } = await app.ask('squad.create', { ...about, same: {} })
	const [{ playerId }] = (await app.ask('squad.open', { squadId })).rows
	const workAs = async (passphrase: string) => {
		await app.ask('session.lock')
		await app.ask('session.unlock', { passphrase })
	}
	await workAs(words)
	await enter(app.ask, playerId, values(0), true)
	const draftId = await decideAll(app.ask, playerId, day)
	const { visitId } = await app.ask('visits.sign', { draftId })
	await workAs(passphrase)
	const target = mkdtempSync(join(tmpdir(), 'lastwright-reports-'))
	const written = async () => {
		await app.ask('squad.reports', { squadId, folder: target })
		await until(async () => !(await app.ask('squad.progress', { squadId })).running)
		return app.ask('squad.progress', { squadId })
	}
	expect((await written()).failed).toEqual([expect.stringContaining('countersigned')])
	expect(readdirSync(target)).toEqual([])
	await app.ask('visits.countersign', { visitId, text: '' })
	expect(await written()).toMatchObject({ files: 2, failed: [] })
	expect(readdirSync(target).sort()).toEqual([
		`${day}-number-001-guardian.pdf`,
		`${day}-number-001-report.pdf`,
	])
	expect((await app.ask('visits.history', { visitId })).handedOver).toMatchObject([
		{ recipient: 'Reports of the screening day, 20 January 2027', version: 1 },
	])
	app.close()
})
