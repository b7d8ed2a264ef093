/**
 * Every byte that a working day leaves on disk is looked at: no name, date, measure, password or
 * address stands in clear.
 */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync, inflateRawSync, inflateSync } from 'node:zlib'
import { afterAll, expect, test } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { plainWords } from '../../shared/desk/outbox/mail-settings.ts'
import { clinic, open, passphrase, player, signed } from './bench-app.ts'
import { packPassphrase } from './bench-pack.ts'

const variables = ['TMPDIR', 'TEMP', 'TMP'] as const
const outer = variables.map((variable) => process.env[variable])
afterAll(() => {
	for (const [index, variable] of variables.entries()) {
		const old = outer[index]
		if (old === undefined) delete process.env[variable]
		else process.env[variable] = old
	}
})

const recipient = {
	...player,
	birthDate: '1999-04-17',
	email: 'zoe.marlowe@player.example',
	club: 'Rovers',
}
const secrets = [
	'Marlowe',
	'Nguyễn',
	'Zoë',
	'Rovers',
	'1999-04-17',
	'zoe.marlowe@',
	'limps',
	'263.5',
	'264.5',
	'Invented Clinic',
	'crash words',
	'right words',
	passphrase,
	packPassphrase,
]
const forms = secrets.flatMap((text) => [
	Buffer.from(text, 'utf8'),
	Buffer.from(text, 'utf16le'),
	Buffer.from(
		Buffer.from(text)
			.toString('base64')
			.replace(/.{0,2}=*$/, ''),
	),
	Buffer.from(
		JSON.stringify(text)
			.slice(1, -1)
			.replace(
				/[^\x20-\x7e]/g,
				(letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
			),
	),
])
/** What packing alone would hide. */
const unpacked = (bytes: Buffer): Buffer[] =>
	[inflateSync, inflateRawSync, gunzipSync].flatMap((unpack) => {
		try {
			return [unpack(bytes)]
		} catch {
			return []
		}
	})

test('store, side files, drafts, outbox with a message for the mail program, backups, packs, ' +
	'settings, audit and temporary files', async () => {
	const all = mkdtempSync(join(tmpdir(), 'lastwright-at-rest-'))
	const [data, stick, temporary] = ['data', 'stick', 'temporary'].map((name) => {
		const folder = join(all, name)
		mkdirSync(folder)
		return folder
	}) as [string, string, string]
	for (const variable of variables) process.env[variable] = temporary
	const look = (when: string): string[] => {
		const files = readdirSync(all, { recursive: true, withFileTypes: true })
			.filter((entry) => entry.isFile())
			.map((entry) => ({
				name: entry.name,
				bytes: readFileSync(join(entry.parentPath, entry.name)),
			}))
		for (const { name, bytes } of files)
			for (const every of [bytes, ...unpacked(bytes)])
				for (const [index, form] of forms.entries())
					expect(
						every.includes(form),
						`${when}: ${secrets[Math.floor(index / 4)]} in ${name}`,
					).toBe(false)
		return files.map(({ name }) => name).sort()
	}
	const app = open(data)
	await app.ask('session.setUp', {
		clinic: { ...clinic, email: 'desk@clinic.example' },
		passphrase,
	})
	await app.ask('mail.save', {
		smtp: {
			host: '127.0.0.1',
			port: 9,
			security: 'none',
			inSoManyWords: plainWords,
			user: 'desk',
			password: 'right words',
			from: { name: 'Invented Clinic', email: 'desk@clinic.example' },
		},
		clock: { assessWithinDays: 30, authorityWithinHours: 72 },
	})
	const { playerId } = await app.ask('players.save', { player: recipient })
	const feet = (mm: number) => ({
		stance: 'standing',
		left: { heelToToeMm: [mm] },
		right: { heelToToeMm: [mm] },
	})
	const visitId = await signed(app, playerId, {
		notes: 'limps after training',
		feet: feet(263.5),
	} as never)
	await app.ask('consents.record', {
		playerId,
		consent: {
			purpose: 'email',
			recipient: 'Zoë Marlowe-Nguyễn',
			decision: 'permit',
			grantor: { name: 'Zoë Marlowe-Nguyễn', relation: 'player' },
			method: 'written',
			given: '2027-01-20',
		},
	})
	// a message for the mail program: made, handed over, and kept sealed only
	const { itemId } = await app.ask('outbox.add', {
		visitId,
		kind: 'player',
		recipientId: 'player',
		channel: 'eml',
		due: '2027-01-22',
	})
	const { sha256 } = await app.ask('outbox.look', { itemId })
	await app.ask('outbox.release', { itemId, sha256, compared: true, warningsRead: false })
	const taken = await app.ask('outbox.take', { itemId })
	expect(Buffer.from(taken.base64, 'base64').toString()).toContain('zoe.marlowe@player.example')
	// a draft under way, a fault in a call, a search
	const { draft } = await app.ask('drafts.open', { playerId, visitDate: '2027-02-20' })
	await app.ask('drafts.save', {
		draftId: draft.draftId,
		content: {
			...draft.content,
			visit: { ...draft.content.visit, notes: 'limps less', feet: feet(264.5) },
		},
	})
	await app.call('players.open', { playerId: 'crash words' })
	await app.call('session.unlock', { passphrase: 'crash words' })
	await app.ask('session.unlock', { passphrase })
	await app.ask('players.search', { query: 'marlowe', limit: 5 })
	await app.ask('backups.setFolder', { folder: stick })
	await app.ask('backups.make')
	await app.ask('outreach.makePack', {
		playerIds: [playerId],
		history: 'all',
		folder: stick,
		passphrase: packPassphrase,
		expires: '2027-02-10',
	})
	const opened = look('open')
	expect(opened).toEqual(
		expect.arrayContaining([
			'lastwright.db',
			'lastwright.db-wal',
			expect.stringMatching(/^lastwright-backup-.*\.db$/),
			expect.stringMatching(/\.lwpack$/),
		]),
	)
	// a real page is drawn in its worker meanwhile: nothing of it touches the disk
	const drawn = await renderPdf({
		title: 'Zoë Marlowe',
		kind: 'x',
		language: 'en',
		draft: false,
		letterhead: { clinicName: 'Invented Clinic', address: [], colour: '#1f5f5b' },
		subject: [],
		blocks: [{ kind: 'text', text: 'limps' }],
		notes: [],
		footer: 'x',
		createdAt: '2027-01-20T12:00:00.000Z',
	} as never)
	expect(drawn.length).toBeGreaterThan(1000)
	look('after drawing')
	await app.ask('session.lock')
	look('locked')
	app.close()
	look('closed')
	expect(readdirSync(temporary)).toEqual([])
}, 60_000)
