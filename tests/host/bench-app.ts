/** A host on a folder of its own, with a clock of its own and a page drawer that only counts. */
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createApp } from '../../electron/app.ts'
import type { DraftContent } from '../../shared/contract.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { decideAll } from '../decide.ts'

export const passphrase = 'correct horse'
export const player = {
	givenName: 'Zoë',
	familyName: 'Marlowe-Nguyễn',
	birthDate: '2011-04-17',
	sex: 'female' as const,
}
export const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Invented Clinic',
	address: [],
	colour: '#1f5f5b',
	clinician: { name: 'A. Example', registration: 'X1' },
}
export const folder = () => mkdtempSync(join(tmpdir(), 'lastwright-records-'))
/** The finished backups of a folder, by their names. */
export const backupsIn = (where: string): string[] =>
	readdirSync(where).filter((name) => name.startsWith('lastwright-backup-') && name.endsWith('.db'))
/** A whole PDF of one empty page, always the same. */
export const pdf = readFileSync(new URL('./fixtures/one-page.pdf', import.meta.url))

export function open(
	dataFolder: string,
	start = '2027-01-20T09:00:00.000Z',
	renderPdf: (document: LwDocument) => Promise<Uint8Array> = async () => pdf,
) {
	const clock = { ms: Date.parse(start) }
	const app = createApp({ dataFolder, scryptCost: 1024, now: () => new Date(clock.ms), renderPdf })
	// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
	const ask = async (name: string, input: unknown = {}): Promise<any> => {
		const answer = await app.call(name, input)
		if (!answer.ok) throw new Error(`${name}: ${answer.message} ${JSON.stringify(answer.problems)}`)
		return answer.value
	}
	const refused = async (name: string, input: unknown = {}) => {
		const answer = await app.call(name, input)
		if (answer.ok) throw new Error(`${name} was not refused`)
		return answer
	}
	return { ...app, ask, refused, clock }
}
export type Opened = ReturnType<typeof open>
export async function withPlayer(
	here = folder(),
	start?: string,
	renderPdf?: (document: LwDocument) => Promise<Uint8Array>,
) {
	const app = open(here, start, renderPdf)
	const { recoveryKey } = await app.ask('session.setUp', { clinic, passphrase })
	const { playerId } = await app.ask('players.save', { player })
	return { app, here, playerId: playerId as string, recoveryKey: recoveryKey as string }
}
export async function signed(
	app: Opened,
	playerId: string,
	visit: Partial<Visit> = {},
	visitDate = '2027-01-20',
): Promise<string> {
	const { draft } = (await app.ask('drafts.open', { playerId, visitDate })) as {
		draft: { draftId: string; content: DraftContent }
	}
	await app.ask('drafts.save', {
		draftId: draft.draftId,
		content: {
			...draft.content,
			visit: { ...draft.content.visit, ...visit },
		},
	})
	await decideAll(app.ask, playerId, visitDate)
	return (await app.ask('visits.sign', { draftId: draft.draftId })).visitId
}
