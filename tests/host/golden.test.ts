/**
 * The golden set: signed visits are printed again, mailed and read aloud as they were signed, after
 * every sentence of the program has changed and nothing can be composed or drawn any more.
 */
import { createHash } from 'node:crypto'
import { afterEach, describe, expect, test } from 'vitest'
import type { SignedVisit } from '../../shared/contract.ts'
import type { FurtherPage, ReportValue } from '../../shared/desk/visits/kept-pages.ts'
import type { Block } from '../../shared/engine/report/document.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { type Opened, open, passphrase } from './bench-app.ts'
import {
	asFirstVersion,
	type GoldenPlayer,
	goldenFolder,
	goldenPlayers,
	pagesIn,
} from './golden/golden.ts'
import { laterVersion } from './golden/later.ts'
import { pagesOf, tight, wordsOf } from './read-pages.ts'

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
const plain = (html: string) =>
	tight(
		html
			.replace(/<style>[\s\S]*?<\/style>/g, '')
			.replace(/<[^>]+>/g, '')
			.replaceAll('&lt;', '<')
			.replaceAll('&gt;', '>')
			.replaceAll('&quot;', '"')
			.replaceAll('&#39;', "'")
			.replaceAll('&amp;', '&'),
	)
/** The visits of a player's set, each with the values of its pages. */
const visitsOf = ({ records }: GoldenPlayer) =>
	records
		.filter(({ kind }) => kind === 'visit')
		.map((record) => ({
			signed: record.value as SignedVisit,
			pages: records
				.filter(({ kind, follows }) => kind === 'report' && follows === record.id)
				.flatMap(({ value }) => pagesIn(value as ReportValue)),
		}))
const latestOf = (player: GoldenPlayer) => visitsOf(player).at(-1)!
const page = (pages: FurtherPage[], kind: string) => pages.find((one) => one.kind === kind)!

const closing: (() => Promise<void> | void)[] = []
afterEach(async () => {
	for (const close of closing.splice(0).reverse()) await close()
})
const at = '2027-03-01T09:00:00.000Z'
type Asked = Pick<Opened, 'ask'>

/** The program as it is, in which nothing can be drawn. */
async function opened(here: string): Promise<Asked> {
	const app = open(here, at, async () => {
		throw new Error('nothing may be drawn')
	})
	closing.push(() => app.close())
	await app.ask('session.unlock', { passphrase })
	return app
}
/** A later program: every sentence says something else, no report is composed, nothing is drawn. */
async function openedLater(here: string): Promise<Asked> {
	const later = await laterVersion(here, at)
	closing.push(later.close)
	await later.ask('session.unlock', { passphrase })
	return later
}
async function itemFor(app: Asked, player: GoldenPlayer, change: object): Promise<string> {
	const { visitId } = latestOf(player).signed
	const { itemId } = await app.ask('outbox.add', {
		visitId,
		kind: 'player',
		channel: 'hand-over',
		due: '2027-03-02',
		again: 'asked for once more',
		...(await recipientFor(app, player)),
		...change,
	})
	const { sha256: looked } = await app.ask('outbox.look', { itemId })
	await app.ask('outbox.release', { itemId, sha256: looked, compared: true, warningsRead: true })
	return itemId
}
/** Who may be given it: the guardian of a minor, with a consent to mail. */
async function recipientFor(app: Asked, player: GoldenPlayer) {
	const { visitId, visit } = latestOf(player).signed
	const { recipients } = await app.ask('outbox.recipients', { visitId })
	const role = visit.player.guardian ? 'guardian' : 'player'
	const { recipient } = recipients.find(
		(one: { recipient: { role: string } }) => one.recipient.role === role,
	)
	await app.ask('consents.record', {
		playerId: player.playerId,
		consent: {
			purpose: 'email',
			recipient: recipient.name,
			decision: 'permit',
			grantor: { name: recipient.name, relation: role },
			method: 'written',
			given: '2027-03-01',
		},
	})
	return { recipientId: recipient.recipientId as string }
}
/** The attachment of a draft for the mail program. */
function attachmentOf(base64: string): Buffer {
	const text = Buffer.from(base64, 'base64').toString('latin1')
	const found =
		/Content-Transfer-Encoding: base64\r\n(?:[^\r\n]+\r\n)*\r\n([A-Za-z0-9+/=\r\n]+)/.exec(
			text.slice(text.indexOf('application/pdf')),
		)
	return Buffer.from(found?.[1] ?? '', 'base64')
}
/** The words of a mailed copy, opened with its password. */
async function mailed(app: Asked, player: GoldenPlayer): Promise<string> {
	const itemId = await itemFor(app, player, { channel: 'eml' })
	const { password } = await app.ask('outbox.password', { itemId })
	const copy = attachmentOf((await app.ask('outbox.take', { itemId })).base64)
	await expect(pagesOf(copy)).rejects.toThrow(/password/i)
	return wordsOf(await pagesOf(copy, password))
}
/** Words of blocks that a page for a screen reader shows. */
const wordsOfBlocks = (blocks: Block[]) =>
	blocks.flatMap((block) =>
		block.kind === 'figure' || block.kind === 'true-size'
			? [block.caption, block.alternative]
			: textsIn({ ...block, kind: undefined, tone: undefined, widths: undefined }),
	)

describe.each(goldenPlayers)('$name', (player) => {
	test('is bound to its pages by digest', () => {
		for (const { signed, pages } of visitsOf(player)) {
			expect(signed.pages?.map(({ kind }) => kind)).toEqual(pages.map(({ kind }) => kind))
			expect(signed.pages?.map((one) => one.sha256)).toEqual(
				pages.map(({ base64 }) => sha256(Buffer.from(base64, 'base64'))),
			)
		}
	})
	test('is printed again byte for byte, each version, after every word has changed', async () => {
		const app = await openedLater(await goldenFolder())
		for (const { signed, pages } of visitsOf(player)) {
			const { visitId, version = 1, reportSha256 } = signed
			const again = await app.ask('reports.open', { visitId, version })
			expect(again.sha256).toBe(reportSha256)
			expect(again.base64).toBe(page(pages, 'player').base64)
		}
	})
	test('is shown to a screen reader as it was signed, after every word has changed', async () => {
		const here = await goldenFolder()
		const { signed, pages } = latestOf(player)
		const now = await opened(here)
		const { html } = await now.ask('reports.page', { visitId: signed.visitId })
		for (const close of closing.splice(0)) await close()
		const later = await openedLater(here)
		expect((await later.ask('reports.page', { visitId: signed.visitId })).html).toBe(html)
		const { content } = page(pages, 'player').document!
		const words = plain(html)
		for (const text of wordsOfBlocks(content.blocks as Block[]))
			expect(words).toContain(tight(text))
		expect(html).not.toContain('Reworded')
		const { logo } = signed.clinic
		expect(logo).toBeDefined()
		expect(html).toContain('<img src="data:image/')
		expect((await later.ask('audit.verify')).problems).toEqual([])
	})
	test('is given out and mailed as it was signed, after every word has changed', async () => {
		const app = await openedLater(await goldenFolder())
		const { pages } = latestOf(player)
		const itemId = await itemFor(app, player, {})
		expect((await app.ask('outbox.take', { itemId })).base64).toBe(page(pages, 'player').base64)
		const signed = Buffer.from(page(pages, 'player').base64, 'base64')
		expect(await mailed(app, player)).toBe(wordsOf(await pagesOf(signed)))
		const guardian = page(pages, 'guardian')
		if (!guardian) return
		const told = await itemFor(app, player, { kind: 'guardian' })
		expect((await app.ask('outbox.take', { itemId: told })).base64).toBe(guardian.base64)
	})
	test('of version 0.1.0 is printed, mailed and read aloud: nothing is refused', async () => {
		const app = await opened(await goldenFolder(asFirstVersion))
		const { signed, pages } = latestOf(player)
		const { visitId, reportSha256 } = signed
		const bytes = Buffer.from(page(pages, 'player').base64, 'base64')
		expect((await app.ask('reports.open', { visitId })).sha256).toBe(reportSha256)
		expect(await mailed(app, player)).toBe(wordsOf(await pagesOf(bytes)))
		const { html } = await app.ask('reports.page', { visitId })
		expect(html).toContain('kept its printed pages only')
		const read = await pagesOf(bytes)
		expect(html.match(/<h2>Page \d+<\/h2>/g)).toHaveLength(read.length)
		const body = plain(html)
		for (const { items } of read) for (const { str } of items) expect(body).toContain(tight(str))
	})
})
