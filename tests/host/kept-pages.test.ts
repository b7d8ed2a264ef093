/** What is kept when a visit is signed, and when a page is given out. */
import { describe, expect, test } from 'vitest'
import { Store } from '../../electron/store/store.ts'
import { contract } from '../../shared/contract.ts'
import type { ReportValue } from '../../shared/desk/visits/kept-pages.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { decideAll } from '../decide.ts'
import { open, passphrase, player, signed, withPlayer } from './bench-app.ts'
import { pagesIn } from './golden/golden.ts'
import { adult, consent, minor, put, release, toRefer } from './outbox-bench.ts'
import { opened as openedSeason, pictured, season } from './season-bench.ts'

/** A host that notes what it draws; the bytes tell the pages apart. */
function drawing() {
	const drawn: LwDocument[] = []
	const renderPdf = async (document: LwDocument) => {
		drawn.push(document)
		return Buffer.from(`%PDF ${drawn.length} ${document.kind}`)
	}
	return { drawn, renderPdf, kinds: () => drawn.map(({ kind }) => kind) }
}
async function playerOf(who: object) {
	const pages = drawing()
	const { app, here } = await withPlayer(undefined, undefined, pages.renderPdf)
	const { playerId } = await app.ask('players.save', { player: who })
	return { ...pages, app, here, playerId: playerId as string }
}
const recordsOf = async (here: string, kind: string, playerId: string) => {
	const store = new Store(here, { cost: 1024 })
	await store.unlock(passphrase)
	const records = store.cardsAbout(kind, playerId).map(({ record }) => store.read(record))
	store.close()
	return records
}

describe('signing', () => {
	test.each([
		['a minor', minor, {}, ['player', 'appointment', 'guardian']],
		['a minor to be referred', minor, toRefer, ['player', 'appointment', 'guardian', 'referral']],
		['a player of age', adult, {}, ['player', 'appointment']],
		['a player of age to be referred', adult, toRefer, ['player', 'appointment', 'referral']],
	])('keeps each page that applies to %s, the report first', async (_, who, screening, kinds) => {
		const { app, here, playerId, kinds: drawn } = await playerOf(who)
		const visitId = await signed(app, playerId, { screening })
		expect(drawn()).toEqual(kinds)
		const { pages, reportSha256 } = await app.ask('visits.open', { visitId })
		expect(pages.map((page: { kind: string }) => page.kind)).toEqual(kinds)
		expect(pages[0].sha256).toBe(reportSha256)
		app.close()
		const [record] = await recordsOf(here, 'report', playerId)
		const kept = pagesIn(record!.value as ReportValue)
		expect([record!.version, kept.map(({ kind }) => kind)]).toEqual([2, kinds])
		for (const { document } of kept) expect(document?.content).toMatchObject({ language: 'en' })
	})
	test('keeps the sheet for the appointment, shown in short to who treats alone', async () => {
		const { app, here, playerId } = await playerOf(minor)
		const visitId = await signed(app, playerId)
		const { sheet } = await app.ask('reports.sheet', { visitId })
		expect(Buffer.from(sheet.pdf.base64, 'base64').toString()).toMatch(/^%PDF \d+ appointment$/)
		expect(sheet.facts.map(({ label }: { label: string }) => label)).toContain('Review')
		app.close()
		expect(contract['reports.sheet'].who).not.toContain('reception')
		const [record] = await recordsOf(here, 'report', playerId)
		expect(pagesIn(record!.value as ReportValue).map(({ kind }) => kind)).toContain('appointment')
	})
	test('keeps no logo with its pages: they name the one of the letterhead', async () => {
		const { app, here, playerId } = await playerOf(minor)
		const base64 = Buffer.from(
			'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64"><circle r="9"/></svg>',
		).toString('base64')
		await app.ask('clinic.save', {
			...(await app.ask('clinic.get')),
			logo: { mediaType: 'image/svg+xml', base64 },
		})
		const visitId = await signed(app, playerId)
		expect((await app.ask('reports.page', { visitId })).html).toContain('<img src="data:image/svg')
		app.close()
		for (const { value } of await recordsOf(here, 'report', playerId))
			expect(JSON.stringify(value)).not.toContain(base64)
	})
	test('keeps the chart of the plan that stands, and gives that one out', async () => {
		const bench = await openedSeason()
		await bench.save(season)
		// a plan rests on what was settled: it is made after that
		const draftId = await decideAll(bench.ask, bench.playerId, pictured.visitDate)
		await bench.plan()
		await bench.ask('visits.sign', { draftId })
		expect(bench.drawn.map(({ kind }) => kind)).toContain('season-chart')
		const before = bench.drawn.length
		const chart = await bench.ask<{ base64: string }>('season.chart', {
			playerId: bench.playerId,
			paper: 'A4',
		})
		expect(bench.drawn).toHaveLength(before)
		expect(Buffer.from(chart.base64, 'base64').toString()).toMatch(/^%PDF/)
		bench.app.close()
	})
	test('tells the coach what to wear by the plan that stands', async () => {
		const bench = await openedSeason()
		await bench.save(season)
		const draftId = await decideAll(bench.ask, bench.playerId, pictured.visitDate)
		await bench.plan()
		const { visitId } = await bench.ask<{ visitId: string }>('visits.sign', { draftId })
		await bench.ask('outbox.addContact', {
			playerId: bench.playerId,
			name: 'Coach Invented',
			role: 'coach',
			email: 'coach@club.example',
			emailAgain: 'coach@club.example',
			warningsRead: true,
		})
		await bench.ask('consents.record', {
			playerId: bench.playerId,
			consent: consent('share-with-coach', 'Coach Invented', 'Rae Ashdown', 'guardian'),
		})
		const { recipients } = await bench.ask<{
			recipients: { recipient: { role: string; recipientId: string } }[]
		}>('outbox.recipients', { visitId })
		const coach = recipients.find(({ recipient }) => recipient.role === 'coach')!
		await bench.ask('outbox.add', {
			visitId,
			kind: 'coach',
			recipientId: coach.recipient.recipientId,
			channel: 'print',
			due: pictured.visitDate,
		})
		const { itemId } = (
			await bench.ask<{ items: { itemId: string }[] }>('outbox.list', {})
		).items.at(-1)!
		await bench.ask('outbox.look', { itemId })
		const letter = bench.drawn.at(-1)!
		expect(letter.kind).toBe('coach')
		expect(JSON.stringify(letter.blocks)).toContain(sentences['coach.wear'])
		bench.app.close()
	})
})
describe('a page that was made for somebody', () => {
	test('is composed once for each recipient and version, and kept', async () => {
		const { app, playerId, drawn } = await playerOf(adult)
		const visitId = await signed(app, playerId, { screening: toRefer })
		await app.ask('outbox.addContact', {
			playerId,
			name: 'Dr Ines Okafor',
			role: 'doctor',
			email: 'ines@practice.example',
			emailAgain: 'ines@practice.example',
			warningsRead: true,
		})
		const { recipients } = await app.ask('outbox.recipients', { visitId })
		const { recipientId } = recipients.find(
			(one: { recipient: { role: string } }) => one.recipient.role === 'doctor',
		).recipient
		await app.ask('consents.record', {
			playerId,
			consent: consent('share-with-care', 'Dr Ines Okafor', 'Owain Trescott'),
		})
		const before = drawn.length
		const letter = () =>
			put(app, visitId, { kind: 'referral', recipientId, channel: 'print', protection: 'open' })
		const first = await letter()
		const shas = [
			(await app.ask('outbox.look', { itemId: first })).sha256,
			(await app.ask('outbox.look', { itemId: await letter() })).sha256,
		]
		expect(drawn.length - before).toBe(1)
		expect(JSON.stringify(drawn.at(-1))).toContain('Dr Ines Okafor')
		expect(shas[0]).toBe(shas[1])
		await release(app, first)
		const taken = await app.ask('outbox.take', { itemId: first })
		expect(Buffer.from(taken.base64, 'base64').toString()).toBe(`%PDF ${before + 1} referral`)
		expect(drawn.length - before).toBe(1)
		app.close()
	})
	test('is the very one that was signed where it says nothing more', async () => {
		const { app, playerId, drawn } = await playerOf(minor)
		const visitId = await signed(app, playerId)
		const before = drawn.length
		for (const kind of ['player', 'guardian']) {
			const itemId = await put(app, visitId, {
				kind,
				recipientId: 'guardian',
				channel: 'hand-over',
				protection: 'open',
			})
			await release(app, itemId)
			const { base64 } = await app.ask('outbox.take', { itemId })
			const { pages } = await app.ask('visits.open', { visitId })
			const { sha256 } = pages.find((page: { kind: string }) => page.kind === kind)
			expect((await app.ask('outbox.look', { itemId })).sha256).toBe(sha256)
			expect(Buffer.from(base64, 'base64').toString()).toMatch(new RegExp(`${kind}$`))
		}
		expect(drawn).toHaveLength(before)
		app.close()
	})
})
describe('a page that is given out', () => {
	test('of a plan is drawn once, and once more after the plan was made anew', async () => {
		const bench = await openedSeason()
		await bench.save(season)
		await bench.plan()
		const give = (paper: string) =>
			bench.ask<{ base64: string; fileName: string }>('season.chart', {
				playerId: bench.playerId,
				paper,
			})
		const first = await give('A3')
		bench.clock.ms += 86_400_000
		await bench.ask('session.unlock', { passphrase: 'correct horse' })
		expect(await give('A3')).toEqual(first)
		expect(bench.drawn).toHaveLength(1)
		await give('pocket')
		await bench.plan()
		await give('A3')
		expect(bench.drawn.map(({ kind }) => kind)).toEqual([
			'season-chart',
			'season-pocket',
			'season-chart',
		])
		bench.app.close()
	})
	test('of a squad is kept, and ends with a player that it names', async () => {
		const { app, here, drawn } = await playerOf(player)
		const text = [
			'number,given name,family name,birth date,sex',
			'1,Given1,Family1,2013-05-02,male',
			'2,Given2,Family2,2013-06-02,male',
		].join('\n')
		const { squadId } = await app.ask('squad.create', {
			text,
			team: 'U14',
			day: '2027-01-20',
			same: {},
		})
		const summary = () => app.ask('squad.summary', { squadId, version: 'clinician' })
		const first = await summary()
		expect((await summary()).pdf).toEqual(first.pdf)
		expect(drawn).toHaveLength(1)
		const [one] = (await app.ask('squad.open', { squadId })).rows
		await signed(app, one.playerId)
		const before = drawn.length
		await summary()
		expect(drawn).toHaveLength(before + 1)
		app.close()
		const store = new Store(here, { cost: 1024 })
		await store.unlock(passphrase)
		expect(store.cardsOf('document', squadId)).toHaveLength(2)
		store.close()
		const later = open(here, '2060-01-01T09:00:00.000Z')
		await later.ask('session.unlock', { passphrase })
		await later.ask('retention.destroy', {
			playerId: one.playerId,
			reason: 'kept long enough',
			name: one.name,
			alsoBackups: false,
		})
		expect((await later.ask('audit.verify')).problems).toEqual([])
		later.close()
		await expectNoPageOf(here, squadId)
	})
})
async function expectNoPageOf(here: string, squadId: string): Promise<void> {
	const store = new Store(here, { cost: 1024 })
	await store.unlock(passphrase)
	expect(store.cardsOf('document', squadId)).toEqual([])
	store.close()
}
