/**
 * Writes the golden set of this version: `node tests/host/golden/write.ts FOLDER`. An invented
 * adolescent with a guardian and a season, and an adult whose visit was amended.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { renderPdf } from '../../../electron/pdf/render.ts'
import { Store } from '../../../electron/store/store.ts'
import { decideAll } from '../../decide.ts'
import { clinic, json } from '../../demo.ts'
import { folder, type Opened, open, passphrase } from '../bench-app.ts'
import { goldenKinds } from './golden.ts'

const signedOn = '2027-02-01T09:00:00.000Z'

/** Saves entries into the open draft of a player and signs it. */
async function sign(app: Opened, playerId: string, visit: { visitDate: string }): Promise<void> {
	const { visitDate } = visit
	const { draft } = await app.ask('drafts.open', { playerId, visitDate })
	const content = {
		...draft.content,
		visit: { ...draft.content.visit, ...visit },
	}
	await app.ask('drafts.save', { draftId: draft.draftId, content })
	await decideAll(app.ask, playerId, visitDate)
	const again = await app.ask('drafts.open', { playerId, visitDate })
	await app.ask('drafts.save', {
		draftId: draft.draftId,
		content: {
			...again.draft.content,
			decisions: {
				...again.draft.content.decisions,
				heelRaiseMm: { left: 4, right: 4 },
				referralDone: 'Told the general practitioner by telephone',
			},
		},
	})
	await app.ask('visits.sign', { draftId: draft.draftId })
}
async function signDemo(app: Opened, name: string): Promise<string> {
	const { player, ...visit } = json(name)
	const { playerId } = await app.ask('players.save', { player })
	await sign(app, playerId, visit)
	return playerId
}
/** What of a player's records belongs to the set, in order of writing. */
function recordsOf(store: Store, playerId: string) {
	return goldenKinds
		.flatMap((kind) => store.cardsAbout(kind, playerId).map(({ record }) => store.read(record)))
		.map(({ id, kind, version, at, follows, value }) => ({ id, kind, version, at, follows, value }))
}
const [target] = process.argv.slice(2)
if (!target) throw new Error('Name the folder to write to.')
const here = folder()
const app = open(here, signedOn, renderPdf)
await app.ask('session.setUp', { clinic, passphrase })
const young = await signDemo(app, 'visit-adolescent.json')
const adult = await signDemo(app, 'visit-adult.json')
const [first] = (await app.ask('players.open', { playerId: adult })).visits
await app.ask('visits.amend', { visitId: first.visitId, reason: 'The sides were swapped' })
const { player: _, ...visit } = json('visit-adult.json')
app.clock.ms += 60_000
await sign(app, adult, { ...visit, ankles: { left: visit.ankles.right, right: visit.ankles.left } })
app.close()
const store = new Store(here, { cost: 1024 })
await store.unlock(passphrase)
mkdirSync(target, { recursive: true })
for (const [name, playerId] of [
	['adolescent', young],
	['adult-amended', adult],
] as const)
	writeFileSync(
		join(target, `${name}.json`),
		`${JSON.stringify({ playerId, records: recordsOf(store, playerId) }, null, '\t')}\n`,
	)
store.close()
