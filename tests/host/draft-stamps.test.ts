/** Drafts keep when and where each entry was typed, and what a newer version wrote into them. */
import { describe, expect, test } from 'vitest'
import { Store } from '../../electron/store/store.ts'
import type { Stamp } from '../../shared/desk/outreach/stamps.ts'
import { type Opened, open, passphrase, withPlayer } from './bench-app.ts'
import { apart, back, bring } from './bench-pack.ts'

const visitDate = '2027-01-20'
// biome-ignore lint/suspicious/noExplicitAny: drafts are looked at field by field
type Any = any
const draftOf = async (app: Opened, playerId: string): Promise<Any> =>
	(await app.ask('drafts.open', { playerId, visitDate })).draft
async function type(app: Opened, playerId: string, visit: object): Promise<string> {
	const { draftId, content } = await draftOf(app, playerId)
	await app.ask('drafts.save', {
		draftId,
		content: { ...content, visit: { ...content.visit, ...visit } },
	})
	return draftId
}
/** The draft as it lies in the store, changed by `change` where given. */
async function sealed(here: string, draftId: string, change?: (value: Any) => Any): Promise<Any> {
	const store = new Store(here, { cost: 1024 })
	try {
		await store.unlock(passphrase)
		const draft = store.draft(draftId)
		if (draft && change) store.saveDraft(draftId, draft.at, change(draft.value))
		return draft?.value
	} finally {
		store.close()
	}
}
async function reopened(here: string): Promise<Opened> {
	const app = open(here)
	await app.ask('session.unlock', { passphrase })
	return app
}

test('each entry has the stamp of its last change, by this installation', async () => {
	const { app, here, playerId } = await withPlayer()
	const draftId = await type(app, playerId, { notes: 'one', body: { massKg: 50 } })
	app.clock.ms += 5000
	await type(app, playerId, { notes: 'two' })
	app.close()
	const { stamps, seen } = (await sealed(here, draftId)) as {
		stamps: Record<string, Stamp>
		seen: Record<string, number>
	}
	const { 'visit.notes': notes, 'visit.body.massKg': mass } = stamps
	expect([mass?.at, notes?.at]).toEqual(['2027-01-20T09:00:00.000Z', '2027-01-20T09:00:05.000Z'])
	expect(notes!.tick).toBeGreaterThan(mass!.tick)
	expect(seen).toEqual({ [notes!.origin]: notes!.tick })
})
test('a question tells when and on which PC each was typed; what only one typed is not asked', async () => {
	const { app, playerId, away } = await apart(1)
	const laptop = away[0]!
	laptop.clock.ms += 60_000
	await type(laptop, playerId, { notes: 'by the laptop', body: { massKg: 50 } })
	app.clock.ms += 120_000
	await type(app, playerId, { notes: 'at home', body: { statureCm: 160 } })
	const {
		draftsBoth: [both],
	} = await bring(app, await back(laptop))
	const { asked, differences } = await app.ask('outreach.compareDrafts', { drafts: both.drafts })
	expect(differences).toHaveLength(3)
	expect(asked).toHaveLength(1)
	const { path, first, second } = asked[0]
	expect(path).toBe('notes')
	expect([first, second].sort((one, other) => one.at.localeCompare(other.at))).toEqual([
		{ at: '2027-01-20T09:01:00.000Z', here: false },
		{ at: '2027-01-20T09:02:00.000Z', here: true },
	])
	for (const opened of [app, laptop]) opened.close()
})

describe('a draft that a newer version wrote into', () => {
	const newer = (value: Any): Any => ({
		...value,
		mood: 'of a later version',
		content: {
			...value.content,
			panel: { open: true },
			visit: { ...value.content.visit, gait: { cadence: 170 } },
		},
	})
	test('is saved whole, and not signed without what would be missing', async () => {
		const { app, here, playerId } = await withPlayer()
		const draftId = await type(app, playerId, { notes: 'one' })
		app.close()
		await sealed(here, draftId, newer)
		const again = await reopened(here)
		await type(again, playerId, { notes: 'two' })
		await type(again, playerId, { notes: 'three' })
		const { code } = await again.refused('visits.sign', { draftId })
		expect(code).toBe('visits.newer-entries')
		again.close()
		const value = await sealed(here, draftId)
		expect(value).toMatchObject({
			mood: 'of a later version',
			content: { panel: { open: true }, visit: { notes: 'three', gait: { cadence: 170 } } },
		})
	})
	test('where it cannot be read is named, is not saved over, and stops nothing else', async () => {
		const { app, here, playerId } = await withPlayer()
		const draftId = await type(app, playerId, { notes: 'one' })
		const { content } = await draftOf(app, playerId)
		app.close()
		await sealed(here, draftId, (value) => ({
			...value,
			content: {
				...value.content,
				visit: { ...value.content.visit, body: { massKg: 'fifty' } },
			},
		}))
		const again = await reopened(here)
		for (const call of ['drafts.open', 'drafts.save', 'drafts.preview'] as const) {
			const input = {
				'drafts.open': { playerId, visitDate },
				'drafts.save': { draftId, content },
				'drafts.preview': { draftId },
			}[call]
			const { code, problems } = await again.refused(call, input)
			expect(code, call).toBe('visits.newer-draft')
			expect(problems?.[0]?.path, call).toBe('visit.body.massKg')
		}
		expect((await again.ask('players.open', { playerId })).drafts).toHaveLength(1)
		again.close()
		expect((await sealed(here, draftId)).content.visit.body).toEqual({ massKg: 'fifty' })
	})
})
test('a draft of version 0.1.0 opens and gets stamps for what is typed from now on', async () => {
	const { app, here, playerId } = await withPlayer()
	const draftId = await type(app, playerId, { notes: 'one', body: { massKg: 50 } })
	app.close()
	await sealed(here, draftId, ({ stamps: _, seen: __, ...value }) => value)
	const again = await reopened(here)
	await type(again, playerId, { notes: 'two' })
	again.close()
	expect(Object.keys((await sealed(here, draftId)).stamps)).toEqual(['visit.notes'])
})
