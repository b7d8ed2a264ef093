/** A host by the PC's own clock, for programs that are killed while they work. */
import { createApp } from '../../electron/app.ts'
import type { DraftContent } from '../../shared/contract.ts'

export { clinic, passphrase } from './bench-app.ts'

export const player = {
	givenName: 'Ines',
	familyName: 'Ashdown',
	birthDate: '2009-03-02',
	sex: 'female',
}
const fixedPage = async (): Promise<Uint8Array> => Buffer.from('%PDF-1.7 fixed')

/** @param renderPdf draws a page; the usual one is always the same bytes */
export function openNow(dataFolder: string, renderPdf = fixedPage) {
	const app = createApp({ dataFolder, scryptCost: 1024, renderPdf })
	// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
	const ask = async (name: string, input: unknown = {}): Promise<any> => {
		const answer = await app.call(name, input)
		if (!answer.ok) throw new Error(`${name}: ${answer.message} ${JSON.stringify(answer.problems)}`)
		return answer.value
	}
	return { ...app, ask }
}
export type AppNow = ReturnType<typeof openNow>
/** For a host in whose tests no page may be drawn. */
export const noPage = async (): Promise<Uint8Array> => {
	throw new Error('no report is drawn here')
}
/** The draft of one visit, begun or found. */
export async function draftOf(
	{ ask }: Pick<AppNow, 'ask'>,
	playerId: string,
): Promise<{ draftId: string; content: DraftContent }> {
	return (await ask('drafts.open', { playerId, visitDate: '2027-01-20' })).draft
}
