/**
 * Makes the fixture of one version: `node tests/compatibility/make.ts [CHECKOUT]`. Without a
 * checkout this version's own; with one, by the program that stands there. See the README.
 */
import { execFileSync } from 'node:child_process'
import { copyFileSync, existsSync, mkdirSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import ownTemporary from '../temporary.ts'
import { kindVersions } from './kind-versions.ts'
import { fixtures, type Manifest } from './manifest.ts'
import { makeFiles } from './scenario/files.ts'
import { makeHome } from './scenario/home.ts'
import { copyStore, previewed, seenBy, type Unseen } from './scenario/look.ts'
import { fillOutbox } from './scenario/outbox.ts'
import { stillAway, wentAndCame } from './scenario/outreach.ts'
import { secrets } from './scenario/people.ts'
import { programAt, World } from './scenario/program.ts'
import { readme } from './scenario/readme.ts'
import { answerDue } from './scenario/recall.ts'
import { planSeason, screenSquad } from './scenario/season.ts'

const own = fileURLToPath(new URL('../..', import.meta.url))
const lookedAt = '2027-01-21T10:00:00.000Z'
const clearUp = ownTemporary()
const program = await programAt(resolve(process.argv[2] ?? own))
const out = join(fixtures, program.version)
if (existsSync(out)) {
	process.stderr.write(`${out} is there already: the fixture of a version is made once.\n`)
	process.exit(2)
}

/** Plays the scenario and keeps its files. @returns the recovery keys of home and laptop */
async function play(): Promise<{ home: string; laptop: string }> {
	const world = new World(program, '2025-03-03T09:00:00.000Z')
	const folder = world.folder('home')
	const app = world.open(folder)
	const home = await makeHome(world, app)
	const backup = await app.ask('backups.make', { folder: world.folder('backups') })
	await fillOutbox(app.ask, home)
	await planSeason(world, app.ask, home)
	await screenSquad(world, app.ask)
	await answerDue(world, app)
	await wentAndCame(world, app.ask, home)
	const away = await stillAway(world, app.ask, home)
	await app.ask('session.lock')
	app.close()
	mkdirSync(out, { recursive: true })
	copyFileSync(join(backup.folder, backup.file), join(out, 'backup.db'))
	copyStore(folder, join(out, 'home'))
	copyStore(away.laptopFolder, join(out, 'laptop'))
	copyFileSync(away.pack, join(out, 'out.lwpack'))
	copyFileSync(away.back, join(out, 'return.lwpack'))
	makeFiles(program, join(out, 'files'))
	return { home: home.recoveryKey, laptop: away.recoveryKey }
}
async function lookAt(keys: { home: string; laptop: string }): Promise<Manifest> {
	const { owner: passphrase, laterPack } = secrets
	const home: Unseen = {
		name: 'the clinic',
		from: 'home',
		kind: 'folder',
		passphrase,
		recoveryKey: keys.home,
	}
	const packed = { passphrase: laterPack, kind: 'folder' as const }
	const unseen: Unseen[] = [
		home,
		{ ...packed, name: 'the laptop', from: 'laptop', recoveryKey: keys.laptop },
		{ name: 'the backup', from: 'backup.db', kind: 'backup', passphrase, recoveryKey: keys.home },
		{ ...packed, name: 'the pack', from: 'out.lwpack', kind: 'pack' },
	]
	const openings = []
	for (const one of unseen) {
		const everybody = one === home ? Object.values(secrets) : [one.passphrase]
		openings.push(await seenBy(program, out, lookedAt, one, everybody))
	}
	const coming = { into: home.name, from: 'return.lwpack', passphrase: laterPack }
	const kinds = await kindVersions(program.root)
	const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: program.root })
	return {
		version: program.version,
		commit: commit.toString().trim(),
		lookedAt,
		...(kinds === undefined ? {} : { kinds }),
		openings,
		homecomings: [await previewed(program, out, lookedAt, home, coming)],
	}
}
const keys = await play()
const manifest = await lookAt(keys)
writeFileSync(join(out, 'manifest.json'), `${JSON.stringify(manifest)}\n`)
writeFileSync(join(out, 'README.md'), readme(manifest, keys))
clearUp()
process.exit(0)
