/** A season through the host's calls: real files, real solver, a clock that stands. */
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createApp } from '../../electron/app.ts'
import type { Answer, DraftContent, OutputOf } from '../../shared/contract.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { type Season, type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { agreed } from '../agreed.ts'

/** The visit of the pictured season. */
export const pictured = visitSchema.parse(
	JSON.parse(readFileSync(new URL('../../assets/demo/season-visit.json', import.meta.url), 'utf8')),
)
/** As far as the end of May: long enough for every case here, short to solve. */
export const season: Season = {
	...(pictured.season as Season),
	to: '2027-05-30',
	sessions: pictured.season!.sessions!.filter(({ date }) => date <= '2027-05-30'),
}
const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Invented Clinic',
	address: ['1 Example Street'],
	colour: '#1f5f5b',
	clinician: { name: 'A. Example', registration: 'X1' },
}
export const passphrase = 'correct horse'

/**
 * A new folder with the player, an open draft of the pictured visit, and the calls of its season.
 */
export async function opened(
	visit: Partial<Visit> = {},
	decisions: Partial<DraftContent['decisions']> = {},
) {
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-season-'))
	const clock = { ms: Date.parse('2027-01-25T09:00:00.000Z') }
	const drawn: LwDocument[] = []
	const make = () =>
		createApp({
			dataFolder: folder,
			scryptCost: 1024,
			now: () => new Date(clock.ms),
			renderPdf: async (document) => {
				drawn.push(document)
				return Buffer.from(`%PDF ${document.title}`)
			},
		})
	const app = make()
	const asking =
		(host: typeof app) =>
		async <T>(name: string, input: unknown): Promise<T> => {
			const answer: Answer<unknown> = await host.call(name, input)
			if (!answer.ok)
				throw new Error(`${name}: ${answer.message} ${JSON.stringify(answer.problems)}`)
			return answer.value as T
		}
	const refused = async (name: string, input: unknown) => {
		const answer: Answer<unknown> = await app.call(name, input)
		if (answer.ok) throw new Error(`${name} was not refused`)
		return answer
	}
	const ask = asking(app)
	await ask('session.setUp', { clinic, passphrase })
	const { playerId } = await ask<{ playerId: string }>('players.save', { player: pictured.player })
	const { draft } = await ask<OutputOf<'drafts.open'>>('drafts.open', {
		playerId,
		visitDate: pictured.visitDate,
	})
	const { season: _, ...measured } = pictured
	const content = {
		visit: { ...measured, ...visit },
		raw: {},
		decisions: { ...noDecisions, ...agreed, ...decisions },
	}
	const put = (change: Partial<Visit>) =>
		ask('drafts.save', {
			draftId: draft.draftId,
			content: { ...content, visit: { ...content.visit, ...change } },
		})
	await put({})
	const open = () => ask<OutputOf<'season.open'>>('season.open', { playerId })
	const save = async (next: Season) =>
		ask<OutputOf<'season.save'>>('season.save', {
			playerId,
			season: next,
			...((await open()).savedAs === undefined ? {} : { follows: (await open()).savedAs }),
		})
	const plan = (from?: string) =>
		ask<OutputOf<'season.plan'>>('season.plan', {
			playerId,
			...(from === undefined ? {} : { from }),
		})
	return {
		app,
		ask,
		asking,
		make,
		refused,
		playerId,
		draftId: draft.draftId,
		put,
		open,
		save,
		plan,
		clock,
		drawn,
	}
}
