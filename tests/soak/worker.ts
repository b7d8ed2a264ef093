/**
 * Works on a store as fast as it can and prints what was acknowledged. Started and killed by
 * soak.ts.
 */
import { writeSync } from 'node:fs'
import { createApp } from '../../electron/app.ts'
import type { DraftContent } from '../../shared/contract.ts'

const [dataFolder = '', playerId = '', passphrase = '', from = '0'] = process.argv.slice(2)
const app = createApp({
	dataFolder,
	scryptCost: 1024,
	renderPdf: async () => Buffer.from('%PDF-1.7 soak'),
})
// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
async function call(name: string, input: unknown): Promise<any> {
	const answer = await app.call(name, input)
	if (!answer.ok) throw new Error(`${name}: ${answer.message} ${JSON.stringify(answer.problems)}`)
	return answer.value
}
/**
 * Written at once and not through a stream: what was printed has left this process before the next
 * step.
 */
const tell = (text: string) => writeSync(1, `${text}\n`)
const player = { givenName: 'Ines', familyName: 'Ashdown', birthDate: '2009-03-02', sex: 'female' }
await call('session.unlock', { passphrase })
tell('ready')
for (let number = Number(from) + 1; ; number++) {
	await call('players.save', { playerId, player: { ...player, club: String(number) } })
	tell(`saved ${number}`)
	const { draft } = (await call('drafts.open', { playerId, visitDate: '2027-01-20' })) as {
		draft: { draftId: string; content: DraftContent }
	}
	await call('drafts.save', {
		draftId: draft.draftId,
		content: {
			...draft.content,
			visit: { ...draft.content.visit, notes: String(number) },
			decisions: { ...draft.content.decisions, consentNoted: true },
		},
	})
	const { visitId } = await call('visits.sign', { draftId: draft.draftId })
	tell(`signed ${visitId}`)
	if (number % 4 === 0) tell(`backup ${(await call('backups.make', {})).file}`)
	if (number % 9 === 0) {
		const [newest] = (await call('backups.list', {})).backups
		tell(`restoring ${newest.file}`)
		await call('backups.restore', { file: newest.file })
		await call('session.unlock', { passphrase })
		tell(`restored ${newest.file}`)
	}
}
