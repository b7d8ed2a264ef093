/**
 * The whole host through its calls: real SQLite files, a clock of our own, and a page drawer that
 * only counts.
 */
import { createHash } from 'node:crypto'
import {
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { createApp } from '../../electron/app.ts'
import { acceptedLines } from '../../electron/command/demo.ts'
import {
	answerPage,
	isOwnBlob,
	isOwnUrl,
	isTrustedSender,
	mayNavigate,
	mayRequest,
	webPreferences,
} from '../../electron/window/security.ts'
import {
	type Answer,
	contract,
	type DraftContent,
	type SignedVisit,
} from '../../shared/contract.ts'
import { assess } from '../../shared/engine/assess.ts'
import { digestOf } from '../../shared/engine/plain/canonical.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

const passphrase = 'correct horse'
const player = {
	givenName: 'Zoë',
	familyName: 'Marlowe-Nguyễn',
	birthDate: '2011-04-17',
	sex: 'female' as const,
	club: 'Invented Rovers',
}
const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Invented Clinic',
	address: ['1 Example Street'],
	colour: '#1f5f5b',
	clinician: { name: 'A. Example', registration: 'X1' },
}
const visitDate = '2027-01-20'
const pdf = Buffer.from('%PDF-1.7 fixed bytes')
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
const folder = () => mkdtempSync(join(tmpdir(), 'lastwright-app-'))

function open(dataFolder: string, options: { whileDrawing?: () => Promise<unknown> } = {}) {
	const clock = { ms: Date.parse('2027-01-20T09:00:00.000Z') }
	const drawn = { count: 0 }
	const app = createApp({
		dataFolder,
		scryptCost: 1024,
		now: () => new Date(clock.ms),
		renderPdf: async () => {
			drawn.count++
			await options.whileDrawing?.()
			return pdf
		},
	})
	const ask = async <T = Record<string, unknown>>(name: string, input: unknown): Promise<T> => {
		const answer = await app.call(name, input)
		if (!answer.ok) throw new Error(`${name}: ${answer.message} ${JSON.stringify(answer.problems)}`)
		return answer.value as T
	}
	const refused = async (name: string, input: unknown) => {
		const answer: Answer<unknown> = await app.call(name, input)
		if (answer.ok) throw new Error(`${name} was not refused`)
		return answer
	}
	return { ...app, ask, refused, clock, drawn }
}
type Opened = ReturnType<typeof open>
async function withPlayer(here = folder(), options: Parameters<typeof open>[1] = {}) {
	const app = open(here, options)
	const { recoveryKey } = await app.ask<{ recoveryKey: string }>('session.setUp', {
		clinic,
		passphrase,
	})
	const { playerId } = await app.ask<{ playerId: string }>('players.save', { player })
	return { app, here, playerId, recoveryKey }
}
interface Draft {
	draft: { draftId: string; content: DraftContent }
	earlier: Visit[]
}
const draftOf = (app: Opened, playerId: string, date = visitDate) =>
	app.ask<Draft>('drafts.open', { playerId, visitDate: date })
async function saved(
	app: Opened,
	playerId: string,
	change: {
		visit?: Partial<Visit>
		raw?: Record<string, string>
		decisions?: Partial<DraftContent['decisions']>
	} = {},
) {
	const { draft } = await draftOf(app, playerId)
	const content = {
		...draft.content,
		visit: { ...draft.content.visit, ...change.visit },
		raw: change.raw ?? {},
		decisions: { ...draft.content.decisions, consentNoted: true, ...change.decisions },
	}
	await app.ask('drafts.save', { draftId: draft.draftId, content })
	return { draftId: draft.draftId, content }
}
const measured: Partial<Visit> = {
	feet: { left: { heelToToeMm: [246, 247] }, right: { heelToToeMm: 249 } },
	ankles: { left: { lungeCm: 9.5 }, right: { lungeCm: 11 } },
}

describe('who may', () => {
	const openToAll = [
		'session.status',
		'session.setUp',
		'session.unlock',
		'session.unlockWithRecoveryKey',
		'session.moveHere',
		'look.get',
	]
	const guarded = Object.entries(contract)
		.filter(([, row]) => !row.who.includes('nobody'))
		.map(([name]) => name)
	test('only the session calls are open to nobody', () => {
		expect(Object.keys(contract).filter((name) => !guarded.includes(name))).toEqual(openToAll)
	})
	test('every other call is refused before set-up, while locked and after closing', async () => {
		const app = open(folder())
		const allRefused = async (when: string) => {
			for (const name of guarded)
				expect((await app.refused(name, {})).message, `${name} ${when}`).toMatch(/locked/)
		}
		await allRefused('before set-up')
		await app.ask('session.setUp', { clinic, passphrase })
		await app.ask('session.lock', {})
		await allRefused('while locked')
		await app.ask('session.unlock', { passphrase })
		for (const name of guarded) {
			if (name === 'session.lock') continue
			const answer = await app.call(name, {})
			expect(answer.ok ? '' : answer.message, name).not.toMatch(/locked/)
		}
		app.close()
		await allRefused('after closing')
	})
	test.each(['constructor', '__proto__', 'toString', 'session.statu', ''])(
		'there is no call named %j',
		async (name) => {
			const app = open(folder())
			expect((await app.refused(name, {})).message).toMatch(/no call named/)
			app.close()
		},
	)
})

describe('a visit from set-up to reopening', () => {
	test('is found, drafted, signed and unchanged after closing', async () => {
		const { app, here, playerId } = await withPlayer()
		for (const query of ['nguyen zoe', 'ZOE marl', 'Nguyễn', 'rovers', '2011-04-17'])
			expect(
				(
					await app.ask<{ cards: { playerId: string }[] }>('players.search', { query, limit: 10 })
				).cards.map((card) => card.playerId),
				query,
			).toEqual([playerId])
		expect((await app.ask('players.search', { query: 'nguyen ines', limit: 10 })).total).toBe(0)

		const { draftId, content } = await saved(app, playerId, { visit: measured })
		expect((await draftOf(app, playerId)).draft).toMatchObject({ draftId, content })
		const { visitId } = await app.ask<{ visitId: string }>('visits.sign', { draftId })
		expect(app.drawn.count).toBe(1)
		expect((await app.refused('drafts.save', { draftId, content })).message).toMatch(
			/not open any more/,
		)
		expect((await app.refused('visits.sign', { draftId })).message).toMatch(/not open any more/)

		const report = await app.ask<{ base64: string; sha256: string; fileName: string }>(
			'reports.open',
			{ visitId },
		)
		expect(Buffer.from(report.base64, 'base64').equals(pdf)).toBe(true)
		expect(report.sha256).toBe(sha256(pdf))
		expect(report.fileName).not.toMatch(/marlowe|zo/i)
		const signed = await app.ask<SignedVisit>('visits.open', { visitId })
		app.close()

		const again = open(here)
		await again.ask('session.unlock', { passphrase })
		expect(await again.ask('session.status', {})).toMatchObject({
			state: 'open',
			clinicName: clinic.name,
			warnings: [],
		})
		expect(await again.ask('clinic.get', {})).toEqual(clinic)
		expect(await again.ask('players.open', { playerId })).toEqual({
			player,
			visits: [{ visitId, visitDate, signedAt: signed.signedAt }],
			drafts: [],
		})
		expect(
			(await again.ask<{ cards: unknown[] }>('players.search', { query: 'nguyen zoe', limit: 1 }))
				.cards,
		).toEqual([expect.objectContaining({ playerId, lastVisit: visitDate, openDraft: false })])
		expect(await again.ask('reports.open', { visitId })).toEqual(report)
		expect(await again.ask('visits.open', { visitId })).toEqual(signed)
		expect((await draftOf(again, playerId, '2027-02-20')).earlier).toEqual([signed.visit])
		expect(again.drawn.count, 'a stored report is never drawn again').toBe(0)
		again.close()
	})
	test('the digest is that of the frozen content, and one changed value breaks it', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId } = await saved(app, playerId, { visit: measured })
		const { visitId } = await app.ask<{ visitId: string }>('visits.sign', { draftId })
		const { digest, ...frozen } = await app.ask<SignedVisit>('visits.open', { visitId })
		expect(frozen).toMatchObject({
			playerId,
			visit: { player, ...measured },
			clinic,
			signedBy: clinic.clinician,
			reportSha256: sha256(pdf),
		})
		expect(frozen.assessment).toEqual(JSON.parse(JSON.stringify(assess(frozen.visit))))
		expect(digestOf(frozen)).toBe(digest)
		expect(digestOf({ ...frozen, visit: { ...frozen.visit, notes: 'changed' } })).not.toBe(digest)
		app.close()
	})
	test('a birth date corrected while a draft is open counts in it at once, and no entry is lost', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId, content } = await saved(app, playerId, { visit: measured })
		await app.ask('players.save', { playerId, player: { ...player, birthDate: '2011-05-06' } })
		const { draft } = await draftOf(app, playerId)
		expect(draft).toMatchObject({
			draftId,
			content: {
				...content,
				visit: { ...content.visit, player: { ...player, birthDate: '2011-05-06' } },
			},
		})
		app.close()
	})
	test('a corrected player is a new record, and the signed visit keeps the old words', async () => {
		const { app, here, playerId } = await withPlayer()
		const { draftId } = await saved(app, playerId)
		const { visitId } = await app.ask<{ visitId: string }>('visits.sign', { draftId })
		await app.ask('players.save', { playerId, player: { ...player, club: 'Invented United' } })
		app.close()
		const again = open(here)
		await again.ask('session.unlock', { passphrase })
		expect(
			(await again.ask<{ player: { club: string } }>('players.open', { playerId })).player.club,
		).toBe('Invented United')
		expect((await again.ask<SignedVisit>('visits.open', { visitId })).visit.player.club).toBe(
			'Invented Rovers',
		)
		again.close()
	})
})

describe('signing is refused', () => {
	test('while a field holds text that is not a value', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId } = await saved(app, playerId, { raw: { 'feet.left.heelToToeMm': '24x' } })
		const { message, problems } = await app.refused('visits.sign', { draftId })
		expect(message).toMatch(/not a value yet/)
		expect(problems).toEqual([
			{ path: 'feet.left.heelToToeMm', message: expect.stringContaining('24x') },
		])
		expect(app.drawn.count).toBe(0)
		expect((await draftOf(app, playerId)).draft.draftId).toBe(draftId)
		app.close()
	})
	test('on a same-day action until Decide says what was done', async () => {
		const { app, playerId } = await withPlayer()
		const screening: Visit['screening'] = {
			lisfrancSuspected: true,
			injury: { side: 'left', unableToBearWeightNow: true },
		}
		const { draftId, content: plain } = await saved(app, playerId, { visit: { screening } })
		const assessment = assess(plain.visit)
		expect(assessment.screening.action).toBe('same-day')
		const content = {
			...plain,
			decisions: { ...plain.decisions, lines: acceptedLines(assessment) },
		}
		for (const referralDone of [undefined, '   ']) {
			await app.ask('drafts.save', {
				draftId,
				content: { ...content, decisions: { ...content.decisions, referralDone } },
			})
			expect((await app.refused('visits.sign', { draftId })).problems).toEqual([
				expect.objectContaining({ path: 'decisions.referralDone' }),
			])
		}
		expect(app.drawn.count).toBe(0)
		await app.ask('drafts.save', {
			draftId,
			content: {
				...content,
				decisions: {
					...content.decisions,
					referralDone: 'Sent to the emergency department at 09:10.',
				},
			},
		})
		await app.ask('visits.sign', { draftId })
		app.close()
	})
	test('while a caution, a raise or words of the clinician stand undecided', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId, content } = await saved(app, playerId, {
			visit: {
				feet: { stance: 'seated', left: { heelToToeMm: 246 }, right: { heelToToeMm: 248 } },
				ankles: { left: { endFeel: 'front-pinch' } },
			},
		})
		const cautions = acceptedLines(assess(content.visit))
		expect(cautions.length).toBeGreaterThan(1)
		const put = (decisions: Partial<DraftContent['decisions']>) =>
			app.ask('drafts.save', {
				draftId,
				content: { ...content, decisions: { ...content.decisions, ...decisions } },
			})
		const blocks = async () => (await app.refused('visits.sign', { draftId })).problems
		expect(await blocks()).toEqual([
			{
				path: 'decisions.lines',
				message:
					`Caution and stop findings without a decision: ${cautions.length}. Decide each ` +
					'one in Decide.',
			},
		])
		await put({ lines: cautions.slice(1) })
		expect(await blocks()).toEqual([
			{
				path: 'decisions.lines',
				message: 'Caution and stop findings without a decision: 1. Decide each one in Decide.',
			},
		])
		// a change says something else than the engine, and own lines say something
		const [first, ...others] = cautions
		await put({
			lines: [
				{ findingId: first!.findingId, choice: 'change', says: ' ' },
				...others,
				{ findingId: 'own.1', choice: 'add' },
			],
		})
		expect((await blocks())?.map((one) => one.message.split('.')[0])).toEqual([
			'Caution and stop findings without a decision: 1',
			expect.stringContaining('A changed line has no words'),
			'Your own line 1 is empty',
		])
		await put({ lines: cautions, heelRaiseMm: { left: 11, right: 11 } })
		expect(await blocks()).toEqual([
			{ path: 'decisions.heelRaiseWhy', message: expect.stringContaining('above 10 mm') },
		])
		expect(app.drawn.count).toBe(0)
		await put({
			lines: cautions,
			heelRaiseMm: { left: 11, right: 11 },
			heelRaiseWhy: 'long tried, no complaint',
		})
		await app.ask('visits.sign', { draftId })
		app.close()
	})
	test('while a finding reads otherwise than when it was decided', async () => {
		const { app, playerId } = await withPlayer()
		// a seated stance is a caution; feet of different length are advice that names the difference
		const { draftId, content } = await saved(app, playerId, {
			visit: {
				feet: { stance: 'seated', left: { heelToToeMm: 246 }, right: { heelToToeMm: 256 } },
			},
		})
		const put = (left: number, lines: DraftContent['decisions']['lines']) =>
			app.ask('drafts.save', {
				draftId,
				content: {
					...content,
					visit: {
						...content.visit,
						feet: { stance: 'seated', left: { heelToToeMm: left }, right: { heelToToeMm: 256 } },
					},
					decisions: { ...content.decisions, lines },
				},
			})
		const at = (id: string) => assess(content.visit).findings.find((one) => one.id === id)!
		const seated = acceptedLines(assess(content.visit)),
			difference = at('sizing.side-difference.both')
		expect(difference.says).toContain('10 mm longer')
		const about = difference.says,
			findingId = difference.id
		for (const line of [
			{ findingId, choice: 'drop', about } as const,
			{
				findingId,
				choice: 'change',
				says: 'Right 10 mm longer: two pairs of one model.',
				about,
			} as const,
		]) {
			await put(247, [...seated, line])
			expect((await app.refused('visits.sign', { draftId })).problems).toEqual([
				{
					path: 'decisions.lines',
					message:
						'Notes or advice that read otherwise than when you changed or dropped them: 1. Look ' +
						'at them again in Decide.',
				},
			])
		}
		// a caution accepted in other words counts as undecided
		await put(
			247,
			seated.map((one) => ({ ...one, about: 'The feet were measured lying down.' })),
		)
		expect((await app.refused('visits.sign', { draftId })).problems?.[0]?.message).toBe(
			`Caution and stop findings without a decision: ${seated.length}. Decide each one in Decide.`,
		)
		// advice that was accepted is printed as it reads now; decided again, it stands
		await put(247, [...seated, { findingId, choice: 'accept', about }])
		await app.ask('visits.sign', { draftId })
		app.close()
	})
	test('twice at once: one visit, not two', async () => {
		const { app, playerId } = await withPlayer(folder(), {
			whileDrawing: () => new Promise((resolve) => setTimeout(resolve, 20)),
		})
		const { draftId } = await saved(app, playerId)
		const answers = await Promise.all([
			app.call('visits.sign', { draftId }),
			app.call('visits.sign', { draftId }),
		])
		expect(answers.map((answer) => answer.ok).sort()).toEqual([false, true])
		expect(
			(await app.ask<{ visits: unknown[] }>('players.open', { playerId })).visits,
		).toHaveLength(1)
		app.close()
	})
	test('where an entry was saved while the report was being drawn, and the entry is kept', async () => {
		let once: (() => Promise<unknown>) | undefined
		const { app, playerId } = await withPlayer(folder(), {
			whileDrawing: async () => {
				const now = once
				once = undefined
				await now?.()
			},
		})
		const { draftId, content } = await saved(app, playerId)
		once = () =>
			app.ask('drafts.save', {
				draftId,
				content: { ...content, visit: { ...content.visit, notes: 'written late' } },
			})
		expect((await app.refused('visits.sign', { draftId })).message).toMatch(/changed while/)
		const { visitId } = await app.ask<{ visitId: string }>('visits.sign', { draftId })
		expect((await app.ask<SignedVisit>('visits.open', { visitId })).visit.notes).toBe(
			'written late',
		)
		app.close()
	})
})

describe('entries that cannot stand', () => {
	test.each([
		[
			'players.save',
			{ player: { ...player, birthDate: '2011-02-30' } },
			'player.birthDate',
			'2011-02-30',
		],
		['players.save', { player: { ...player, sex: 'x' } }, 'player.sex', 'male, female'],
		['players.save', { player: { ...player, shoe: 1 } }, 'player.shoe', 'unknown key'],
		['session.setUp', { clinic, passphrase: 'short' }, 'passphrase', 'at least 8'],
		['players.search', { query: 'a', limit: 0 }, 'limit', 'given 0'],
		['drafts.open', { playerId: 'x', visitDate: 'soon' }, 'visitDate', 'soon'],
	])('%s names the path and what was given', async (name, input, path, words) => {
		const { app } = await withPlayer()
		const { problems } = await app.refused(name, input)
		expect(problems).toEqual([{ path, message: expect.stringContaining(words) }])
		app.close()
	})
	test('a measure outside its limits is refused and the stored draft stays', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId, content } = await saved(app, playerId, { visit: measured })
		const { problems } = await app.refused('drafts.save', {
			draftId,
			content: { ...content, visit: { ...content.visit, ankles: { left: { lungeCm: 95 } } } },
		})
		expect(problems?.[0]).toEqual({
			path: 'content.visit.ankles.left.lungeCm',
			message: expect.stringContaining('given 95'),
		})
		expect((await draftOf(app, playerId)).draft.content.visit.ankles).toEqual(measured.ankles)
		app.close()
	})
	test('similar players are pointed out, saved all the same, never merged', async () => {
		const { app, playerId } = await withPlayer()
		const similar = async (changed: Partial<typeof player>) =>
			await app.ask<{ playerId: string; similar: { playerId: string }[] }>('players.save', {
				player: { ...player, ...changed },
			})
		const twin = await similar({ givenName: 'Zoe', familyName: 'Marlowe-Nguyen' })
		expect(twin.playerId).not.toBe(playerId)
		expect(twin.similar.map((card) => card.playerId)).toEqual([playerId])
		expect(
			(await similar({ givenName: 'Ines', familyName: 'Ashdown', birthDate: '2009-03-02' }))
				.similar,
		).toEqual([])
		expect((await app.ask('players.search', { query: '', limit: 10 })).total).toBe(3)
		app.close()
	})
})

describe('the passphrase', () => {
	test('wrong three times slows the next try down, longer each time, and a right one ends it', async () => {
		const { app } = await withPlayer()
		await app.ask('session.lock', {})
		const wrong = async () =>
			(await app.refused('session.unlock', { passphrase: 'wrong horse' })).message
		for (let tried = 0; tried < 3; tried++) expect(await wrong()).toMatch(/not right/)
		expect((await app.refused('session.unlock', { passphrase })).message).toBe(
			'Wait 1 seconds before the next try.',
		)
		app.clock.ms += 1000
		expect(await wrong()).toMatch(/not right/)
		app.clock.ms += 1000
		expect(await wrong()).toMatch(/Wait 1 /)
		app.clock.ms += 1000
		await app.ask('session.unlock', { passphrase })
		await app.ask('session.lock', {})
		expect(await wrong()).toMatch(/not right/)
		await app.ask('session.unlock', { passphrase })
		app.close()
	})
	test('tries at the same time do not get round the wait', async () => {
		const { app } = await withPlayer()
		await app.ask('session.lock', {})
		const answers = await Promise.all(
			Array.from({ length: 20 }, () =>
				app.refused('session.unlock', { passphrase: 'wrong horse' }),
			),
		)
		expect(answers.filter((answer) => /not right/.test(answer.message))).toHaveLength(1)
		app.close()
	})
	test('set up twice at once: the one recovery key that was handed out opens the records', async () => {
		const app = open(folder())
		const answers = await Promise.all([
			app.call('session.setUp', { clinic, passphrase }),
			app.call('session.setUp', { clinic, passphrase: 'other passphrase' }),
		])
		const keys = answers.flatMap((answer) =>
			answer.ok ? [(answer.value as { recoveryKey: string }).recoveryKey] : [],
		)
		expect(keys).toHaveLength(1)
		await app.ask('session.lock', {})
		await app.ask('session.unlockWithRecoveryKey', {
			recoveryKey: keys[0],
			newPassphrase: 'a new passphrase',
		})
		expect(await app.ask('clinic.get', {})).toEqual(clinic)
		expect((await app.ask('session.status', {})).warnings).toEqual([])
		app.close()
	})
	test('unlocking before set-up says what to do', async () => {
		const app = open(folder())
		expect((await app.refused('session.unlock', { passphrase })).message).toMatch(/not been set up/)
		app.close()
	})
})

test('no name, club, note or birth date stands in clear in any file, open or closed', async () => {
	const { app, here, playerId } = await withPlayer()
	const first = await saved(app, playerId, {
		visit: { ...measured, notes: 'limps after training' },
	})
	await app.ask('visits.sign', { draftId: first.draftId })
	const second = await saved(app, playerId, { visit: { notes: 'limps less' } })
	const secrets = [
		'Marlowe',
		'Nguyễn',
		'Zoë',
		'Rovers',
		'2011-04-17',
		'limps',
		'Invented Clinic',
		passphrase,
	]
	const forms = secrets.flatMap((text) => [
		Buffer.from(text, 'utf8'),
		Buffer.from(text, 'utf16le'),
		Buffer.from(
			JSON.stringify(text)
				.slice(1, -1)
				.replace(/[^\x20-\x7e]/g, (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, '0')}`),
		),
	])
	const look = () => {
		const files = readdirSync(here, { recursive: true, withFileTypes: true })
			.filter((entry) => entry.isFile())
			.map((entry) => ({
				name: entry.name,
				bytes: readFileSync(join(entry.parentPath, entry.name)),
			}))
		// the random id of the draft does stand in clear: the search sees the bytes that were written
		expect(files.some(({ bytes }) => bytes.includes(second.draftId))).toBe(true)
		for (const { name, bytes } of files)
			for (const [index, form] of forms.entries())
				expect(bytes.includes(form), `${secrets[Math.floor(index / 3)]} in ${name}`).toBe(false)
		return files.map(({ name }) => name)
	}
	expect(look()).toContain('lastwright.db-wal')
	await app.ask('session.lock', {})
	look()
	app.close()
	expect(look().sort()).toEqual(['lastwright.db', 'lastwright.head'])
})

describe('the window allows', () => {
	test.each(['app://lastwright/', 'app://lastwright/assets/a.js'])('its own %s', (url) =>
		expect([
			isOwnUrl(url),
			mayRequest(url),
			isOwnBlob(`blob:${url}`),
			mayNavigate(`blob:${url}`, false),
		]).toEqual([true, true, true, true]),
	)
	test.each([
		'app://lastwright.example/',
		'app://user@lastwright/',
		'app://lastwright:80/',
		'https://lastwright/',
		'file:///etc/passwd',
		'javascript:alert(1)',
		'appx://lastwright/',
		'not an address',
	])('nothing from %s', (url) => {
		expect([
			isOwnUrl(url),
			mayRequest(url),
			isOwnBlob(`blob:${url}`),
			mayNavigate(url, true),
			mayNavigate(url, false),
			isTrustedSender({ url, parent: null }),
		]).toEqual([false, false, false, false, false, false])
	})
	test('no navigation of the window, and calls from its top frame only', () => {
		expect([
			mayNavigate('app://lastwright/', true),
			mayNavigate('blob:app://lastwright/x', true),
			isTrustedSender(null),
			isTrustedSender({ url: 'app://lastwright/', parent: {} }),
			isTrustedSender({ url: 'app://lastwright/', parent: null }),
		]).toEqual([false, false, false, false, true])
		expect(webPreferences('p')).toMatchObject({
			contextIsolation: true,
			sandbox: true,
			nodeIntegration: false,
			webSecurity: true,
		})
	})
	test('the built screens under a fresh nonce, and no file beside them', () => {
		const above = folder()
		const pages = join(above, 'renderer')
		mkdirSync(pages)
		mkdirSync(join(above, 'renderer-old'))
		writeFileSync(join(pages, 'index.html'), '<meta content="__NONCE__">')
		writeFileSync(join(pages, 'a.js'), 'const text = "__NONCE__"')
		for (const name of ['secret.txt', 'renderer-old/secret.txt'])
			writeFileSync(join(above, name), 'secret')
		symlinkSync(join(above, 'secret.txt'), join(pages, 'link.txt'))
		const get = (path: string, method = 'GET') =>
			answerPage(pages, { method, url: `app://lastwright${path}` })
		const nonces = [get('/'), get('/')].map(({ status, headers, body }) => {
			const nonce = /content="([^"]+)"/.exec(String(Buffer.from(body ?? [])))?.[1] ?? ''
			expect([
				status,
				headers['content-security-policy']?.includes(`'nonce-${nonce}'`),
				headers['x-content-type-options'],
				headers['content-type'],
			]).toEqual([200, true, 'nosniff', 'text/html; charset=utf-8'])
			expect(headers['content-security-policy']).not.toMatch(/unsafe|https?:|\*/)
			return nonce
		})
		expect(nonces[0]).toMatch(/^[\w+/]{24}$/)
		expect(nonces[0]).not.toBe(nonces[1])
		expect(String(Buffer.from(get('/a.js').body ?? []))).toContain('__NONCE__')
		for (const path of [
			'/../secret.txt',
			'/%2e%2e/secret.txt',
			'/..%2fsecret.txt',
			'/%2e%2e%2frenderer-old/secret.txt',
			'/..%5csecret.txt',
			'/link.txt',
			'/%00',
			'/%',
			'/none.js',
		])
			expect(get(path).status, path).toBe(404)
		expect([
			get('/', 'POST').status,
			get('/', 'HEAD').body,
			answerPage(pages, { method: 'GET', url: 'app://other/' }).status,
		]).toEqual([405, null, 403])
	})
})
