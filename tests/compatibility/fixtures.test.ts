/** This version opens what every earlier one wrote, and shows all of it. */
import { join } from 'node:path'
import { afterEach, describe, expect, test } from 'vitest'
import { lostSince } from './compare.ts'
import { fixtureNames, fixtures, type Opening, readManifest } from './manifest.ts'
import { answeredTo, openedFrom } from './scenario/look.ts'
import { type Opened, programAt, World } from './scenario/program.ts'
import { type Views, viewsOf } from './views.ts'

const program = await programAt(join(import.meta.dirname, '../..'))
const apps: Opened[] = []
afterEach(() => {
	for (const app of apps.splice(0)) app.close()
})

/** Answers that count what was just entered. */
const counting = /^(players\.search|retention\.due|outreach\.list)/
/** What was found about players, as it stands whatever a restore asks to be decided. */
const ofPlayers = /^(players\.open|visits\.|reports\.|consents\.list|drafts\.)/
/** What protects people: a restore leaves it as it stood before. */
const staysAsBefore = /^(consents\.list .* \/ consents|visits\.history .* \/ (handedOver|tell)):/
/** Decides what a move or a restore left to decide, all of it as it stands. */
async function leaveAll(app: Opened): Promise<void> {
	for (const { restoreId, lines } of (await app.ask('backups.cameBack')).lists) {
		const decisions = lines.map(
			({ lineId, choices }: { lineId: string; choices: { choice: string }[] }) => ({
				lineId,
				choice: choices[0]?.choice,
			}),
		)
		await app.ask('backups.decide', { restoreId, decisions })
	}
}

describe.each(fixtureNames())('written by %s', (name) => {
	const { version, lookedAt, openings, homecomings } = readManifest(name)
	const opened = async (opening: Opening): Promise<Opened> => {
		const app = await openedFrom(new World(program, lookedAt), join(fixtures, name), opening)
		apps.push(app)
		return app
	}
	describe.each(openings)('$name', (opening) => {
		test('shows everything that was seen, by the passphrase and by the recovery key', async () => {
			const app = await opened(opening)
			await app.ask('session.unlock', { passphrase: opening.passphrase })
			const { views } = await viewsOf(app.call, opening.lastRow)
			expect(lostSince({ version, opening: opening.name }, opening.views, views)).toEqual([])
			if (opening.recoveryKey === undefined) return
			const other = await opened(opening)
			const newPassphrase = 'a wholly other set of words'
			const { recoveryKey } = opening
			await other.ask('session.unlockWithRecoveryKey', { recoveryKey, newPassphrase })
			const again = await viewsOf(other.call, opening.lastRow)
			expect(lostSince({ version, opening: opening.name }, opening.views, again.views)).toEqual([])
		})
		test('lets in whoever it let in, and nobody else', async () => {
			const app = await opened(opening)
			for (const { passphrase, answered } of opening.people)
				expect(await answeredTo(app, passphrase)).toEqual(answered)
		})
		test('is worked with, closed and opened again, and verify finds nothing', async () => {
			const world = new World(program, lookedAt)
			const first = await openedFrom(world, join(fixtures, name), opening)
			await first.ask('session.unlock', { passphrase: opening.passphrase })
			// a backup was brought here, and so was a folder that knows where it lay
			if (opening.kind !== 'pack') await leaveAll(first)
			const player = { givenName: 'Ada', familyName: 'Newcome', birthDate: '2001-01-02' }
			const { playerId } = await first.ask('players.save', { player: { ...player, sex: 'female' } })
			await first.ask('drafts.open', { playerId, visitDate: lookedAt.slice(0, 10) })
			expect((await first.ask('audit.verify')).problems).toEqual([])
			first.close()
			const again = world.open(first.dataFolder)
			apps.push(again)
			await again.ask('session.unlock', { passphrase: opening.passphrase })
			expect((await again.ask('session.status')).warnings).toEqual([])
			expect((await again.ask('players.search', { query: 'newcome', limit: 5 })).total).toBe(1)
			const { views } = await viewsOf(again.call, opening.lastRow)
			const untouched = (all: Views) =>
				Object.fromEntries(Object.entries(all).filter(([view]) => !counting.test(view)))
			expect(
				lostSince({ version, opening: opening.name }, untouched(opening.views), untouched(views)),
			).toEqual([])
		})
	})
	const backups = openings.filter((one) => one.kind === 'backup')
	test.each(backups)(
		'$name is looked at and restored over the records it is of',
		async (backup) => {
			const home = openings.find((one) => one.passphrase === backup.passphrase && one !== backup)
			const app = await opened(home!)
			await app.ask('session.unlock', { passphrase: home!.passphrase })
			const file = join(fixtures, name, backup.from)
			expect(await app.ask('backups.preview', { file })).toMatchObject({ sameClinic: true })
			await app.ask('backups.restore', { file })
			await app.ask('session.unlock', { passphrase: backup.passphrase })
			const { views } = await viewsOf(app.call, backup.lastRow)
			const clinical = (all: Views) =>
				Object.fromEntries(Object.entries(all).filter(([view]) => ofPlayers.test(view)))
			expect(
				lostSince(
					{ version, opening: backup.name },
					clinical(backup.views),
					clinical(views),
				).filter((one) => !staysAsBefore.test(one)),
			).toEqual([])
			expect((await app.ask('audit.verify')).problems).toEqual([])
		},
	)
	test.each(homecomings)('what $from brings home is merged as it was previewed', async (coming) => {
		const home = openings.find((one) => one.name === coming.into)
		const written = { version, opening: coming.from }
		const app = await opened(home!)
		await app.ask('session.unlock', { passphrase: home!.passphrase })
		const given = { file: join(fixtures, name, coming.from), passphrase: coming.passphrase }
		const preview = await app.ask('outreach.previewMerge', given)
		expect(lostSince(written, { preview: coming.result }, { preview })).toEqual([])
		const merged = await app.ask('outreach.merge', given)
		expect(lostSince(written, { preview: coming.result }, { preview: merged })).toEqual([])
		expect((await app.ask('audit.verify')).problems).toEqual([])
	})
})
