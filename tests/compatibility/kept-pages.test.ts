/** What was signed under any version is printed again, read aloud and mailed; nothing is drawn. */
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { afterEach, describe, expect, test } from 'vitest'
import { type Page, pagesOf, tight, wordsOf } from '../host/read-pages.ts'
import { fixtureNames, fixtures, readManifest } from './manifest.ts'
import { openedFrom } from './scenario/look.ts'
import { type Ask, type Opened, programAt, World } from './scenario/program.ts'

const program = {
	...(await programAt(join(import.meta.dirname, '../..'))),
	renderPdf: async (): Promise<Uint8Array> => {
		throw new Error('nothing may be drawn')
	},
}
const apps: Opened[] = []
afterEach(() => {
	for (const app of apps.splice(0)) app.close()
})
interface Line {
	visitId: string
	inError?: boolean
	awaitsCountersign?: boolean
}
/** Every signed visit of the records. */
async function visitsIn(ask: Ask): Promise<(Line & { playerId: string })[]> {
	const { cards } = await ask('players.search', { query: '', limit: 50 })
	const lines: (Line & { playerId: string })[] = []
	for (const { playerId } of cards)
		for (const line of (await ask('players.open', { playerId })).visits)
			lines.push({ ...line, playerId })
	return lines
}
/** The oldest fixture was made with bytes that only begin like a PDF. */
const isPdf = (bytes: Buffer) => bytes.toString('latin1').trimEnd().endsWith('%%EOF')
const attachmentOf = (base64: string): Buffer => {
	const text = Buffer.from(base64, 'base64').toString('latin1')
	const found =
		/Content-Transfer-Encoding: base64\r\n(?:[^\r\n]+\r\n)*\r\n([A-Za-z0-9+/=\r\n]+)/.exec(
			text.slice(text.indexOf('application/pdf')),
		)
	return Buffer.from(found?.[1] ?? '', 'base64')
}
/** The bytes of the report, which are those that were signed. */
async function printed(ask: Ask, { visitId }: Line): Promise<Buffer> {
	const { reportSha256 } = await ask('visits.open', { visitId })
	const bytes = Buffer.from((await ask('reports.open', { visitId })).base64, 'base64')
	expect(createHash('sha256').update(bytes).digest('hex')).toBe(reportSha256)
	return bytes
}
/** The page for a screen reader says what the first printed page says. */
async function isReadAloud(ask: Ask, { visitId }: Line, [first]: Page[]): Promise<void> {
	const { html } = await ask('reports.page', { visitId })
	const words = tight(
		html
			.replace(/<[^>]+>/g, '')
			.replaceAll('&lt;', '<')
			.replaceAll('&gt;', '>')
			.replaceAll('&quot;', '"')
			.replaceAll('&#39;', "'")
			.replaceAll('&amp;', '&'),
	)
	for (const { str } of first!.items.slice(0, 20)) expect(words).toContain(tight(str))
}
/** Gives the player's report to whoever may have it as a draft for the mail program. */
async function mailed(
	{ ask }: Opened,
	{ visitId, playerId }: { visitId: string; playerId: string },
) {
	const { recipients, minor } = await ask('outbox.recipients', { visitId })
	const able = recipients.find(
		({ recipient }: { recipient: { role: string; email?: string } }) =>
			recipient.role === (minor ? 'guardian' : 'player') && recipient.email,
	)
	if (!able) return undefined
	const { recipientId, name, role } = able.recipient
	await ask('consents.record', {
		playerId,
		consent: {
			purpose: 'email',
			recipient: name,
			decision: 'permit',
			grantor: { name, relation: role === 'player' ? 'player' : 'guardian' },
			method: 'written',
			given: '2026-01-01',
		},
	})
	const { itemId } = await ask('outbox.add', {
		visitId,
		kind: 'player',
		recipientId,
		channel: 'eml',
		due: '2060-01-01',
		again: 'asked for once more',
	})
	const { sha256 } = await ask('outbox.look', { itemId })
	await ask('outbox.release', { itemId, sha256, compared: true, warningsRead: true })
	const { password } = await ask('outbox.password', { itemId })
	return { password, copy: attachmentOf((await ask('outbox.take', { itemId })).base64) }
}

describe.each(fixtureNames())('signed under %s', (name) => {
	const { lookedAt, openings } = readManifest(name)
	const home = openings.find((one) => one.kind === 'folder')!

	test('is printed, read aloud and mailed as it was signed', async () => {
		const app = await openedFrom(new World(program, lookedAt), join(fixtures, name), home)
		apps.push(app)
		const { ask } = app
		await ask('session.unlock', { passphrase: home.passphrase })
		const lines = await visitsIn(ask)
		expect(lines.length).toBeGreaterThan(0)
		let sent = 0
		for (const line of lines) {
			const bytes = await printed(ask, line)
			if (!isPdf(bytes)) continue
			const pages = await pagesOf(bytes)
			await isReadAloud(ask, line, pages)
			const mail = line.inError || line.awaitsCountersign ? undefined : await mailed(app, line)
			if (!mail) continue
			sent++
			expect(wordsOf(await pagesOf(mail.copy, mail.password))).toBe(wordsOf(pages))
		}
		expect(name.startsWith('before') || sent > 0).toBe(true)
		expect((await ask('audit.verify')).problems).toEqual([])
	})
})
