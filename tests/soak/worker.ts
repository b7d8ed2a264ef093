/**
 * Works on a store as fast as it can and prints what was acknowledged. Started and killed by
 * kills.ts.
 */
import { writeSync } from 'node:fs'
import { draftOf, openNow, player } from '../host/clock-app.ts'

const [dataFolder = '', playerId = '', passphrase = '', from = '0'] = process.argv.slice(2)
const app = openNow(dataFolder)
/**
 * Written at once and not through a stream: what was printed has left this process before the next
 * step.
 */
const tell = (text: string) => writeSync(1, `${text}\n`)
async function restoreNewest(): Promise<void> {
	const [newest] = (await app.ask('backups.list')).backups
	tell(`restoring ${newest.file}`)
	await app.ask('backups.restore', { file: newest.file })
	await app.ask('session.unlock', { passphrase })
	tell(`restored ${newest.file}`)
}
await app.ask('session.unlock', { passphrase })
tell('ready')
for (let number = Number(from) + 1; ; number++) {
	await app.ask('players.save', { playerId, player: { ...player, club: String(number) } })
	tell(`saved ${number}`)
	const { draftId, content } = await draftOf(app, playerId)
	await app.ask('drafts.save', {
		draftId,
		content: {
			...content,
			visit: { ...content.visit, notes: String(number) },
			decisions: { ...content.decisions, consentNoted: true },
		},
	})
	const { visitId } = await app.ask('visits.sign', { draftId })
	tell(`signed ${visitId}`)
	if (number % 4 === 0) tell(`backup ${(await app.ask('backups.make')).file}`)
	if (number % 9 === 0) await restoreNewest()
}
