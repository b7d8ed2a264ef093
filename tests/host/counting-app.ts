/**
 * The whole host with real SQLite files, a clock of our own, and a page drawer that only counts.
 */
import { createHash } from 'node:crypto'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createApp } from '../../electron/app.ts'
import type { Answer, DraftContent } from '../../shared/contract.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { agreed } from '../agreed.ts'
import { settledBy } from '../decide.ts'

export const passphrase = 'correct horse'
export const player = {
	givenName: 'Zoë',
	familyName: 'Marlowe-Nguyễn',
	birthDate: '2011-04-17',
	sex: 'female' as const,
	club: 'Invented Rovers',
}
export const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Invented Clinic',
	address: ['1 Example Street'],
	colour: '#1f5f5b',
	clinician: { name: 'A. Example', registration: 'X1' },
}
export const visitDate = '2027-01-20'
export const pdf = Buffer.from('%PDF-1.7 fixed bytes')
export const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
export const folder = () => mkdtempSync(join(tmpdir(), 'lastwright-app-'))

export function open(dataFolder: string, options: { whileDrawing?: () => Promise<unknown> } = {}) {
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
export async function withPlayer(here = folder(), options: Parameters<typeof open>[1] = {}) {
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
export const draftOf = (app: Opened, playerId: string, date = visitDate) =>
	app.ask<Draft>('drafts.open', { playerId, visitDate: date })
/** A draft as saved: every question settled as proposed, unless `open` leaves them. */
export async function saved(
	app: Opened,
	playerId: string,
	change: {
		visit?: Partial<Visit>
		raw?: Record<string, string>
		decisions?: Partial<DraftContent['decisions']>
		open?: true
	} = {},
) {
	const { draft, earlier } = await draftOf(app, playerId)
	const entered = {
		...draft.content,
		visit: { ...draft.content.visit, ...change.visit },
		raw: change.raw ?? {},
		decisions: { ...draft.content.decisions, ...agreed, ...change.decisions },
	}
	const content = change.open
		? entered
		: { ...entered, decisions: await settledBy(app.ask, entered, earlier) }
	await app.ask('drafts.save', { draftId: draft.draftId, content })
	return { draftId: draft.draftId, content }
}
export const measured: Partial<Visit> = {
	feet: { left: { heelToToeMm: [246, 247] }, right: { heelToToeMm: 249 } },
	ankles: { left: { lungeCm: 9.5 }, right: { lungeCm: 11 } },
}
