/**
 * kill -9 at random moments over saves, signatures, backups, restores and upgrades. `npm run soak
 * [rounds]`; a short form runs in npm test.
 */
import { execFileSync, spawn } from 'node:child_process'
import { copyFileSync, existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { createApp } from '../../electron/app.ts'
import { openChecked } from '../../electron/store/backup-file.ts'
import type { DraftContent } from '../../shared/contract.ts'
import { runUntilKilled } from '../host/killed.ts'
import { ownTemporary } from '../temporary.ts'

const worker = fileURLToPath(new URL('./worker.ts', import.meta.url))
const oldStore = fileURLToPath(new URL('../host/fixtures/stores/schema-1.db', import.meta.url))
const passphrase = 'correct horse'
const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Invented Clinic',
	address: [],
	colour: '#1f5f5b',
	clinician: { name: 'A. Example', registration: 'X1' },
}
const player = { givenName: 'Ines', familyName: 'Ashdown', birthDate: '2009-03-02', sex: 'female' }

function open(dataFolder: string) {
	const app = createApp({
		dataFolder,
		scryptCost: 1024,
		renderPdf: async () => Buffer.from('%PDF-1.7 soak'),
	})
	// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
	const ask = async (name: string, input: unknown = {}): Promise<any> => {
		const answer = await app.call(name, input)
		if (!answer.ok) throw new Error(`${name}: ${answer.message}`)
		return answer.value
	}
	return { ...app, ask }
}
export interface SoakResult {
	rounds: number
	saves: number
	signatures: number
	backups: number
	restores: number
	upgrades: number
	lost: string[]
}
/** @param rounds kills; @param longestMs the latest moment of a kill after the first step */
export async function soak(
	rounds: number,
	longestMs: number,
	tell: (text: string) => void = () => {},
): Promise<SoakResult> {
	const result: SoakResult = {
		rounds,
		saves: 0,
		signatures: 0,
		backups: 0,
		restores: 0,
		upgrades: 0,
		lost: [],
	}
	const here = mkdtempSync(join(tmpdir(), 'lastwright-soak-'))
	const first = open(here)
	await first.ask('session.setUp', { clinic, passphrase })
	const { playerId } = await first.ask('players.save', { player })
	first.close()
	let number = 0
	try {
		for (let round = 1; round <= rounds; round++) {
			const delayMs = Math.floor(Math.random() * longestMs)
			const { lines } = await runUntilKilled(
				worker,
				[here, playerId, passphrase, String(number)],
				delayMs,
			)
			const where = `round ${round}, killed ${delayMs} ms after unlocking`
			const fail = (text: string) => {
				result.lost.push(`${where}: ${text}`)
			}
			result.saves += lines.filter((line) => line.startsWith('saved')).length
			result.signatures += lines.filter((line) => line.startsWith('signed')).length
			result.backups += lines.filter((line) => line.startsWith('backup')).length
			result.restores += lines.filter((line) => line.startsWith('restored')).length
			// what was acknowledged after the last restore must stand; a restore that was under way may
			// have happened or not
			const lastRestore = lines.findLastIndex((line) => line.startsWith('restored'))
			const underWay = lines.findLastIndex((line) => line.startsWith('restoring')) > lastRestore
			const app = open(here)
			await app.ask('session.unlock', { passphrase })
			const { warnings } = await app.ask('session.status')
			if (warnings.length) fail(warnings.join(' '))
			const { problems } = await app.ask('audit.verify')
			if (problems.length) fail(problems.join(' '))
			const opened = await app.ask('players.open', { playerId })
			const have = new Set(opened.visits.map((visit: { visitId: string }) => visit.visitId))
			if (!underWay) {
				for (const line of lines.slice(lastRestore + 1)) {
					const [what, id] = line.split(' ')
					if (what === 'signed' && !have.has(id)) fail(`the signed visit ${id} is gone`)
				}
				const saved = lines
					.slice(lastRestore + 1)
					.findLast((line) => line.startsWith('saved'))
					?.split(' ')[1]
				if (saved !== undefined && ![saved, String(Number(saved) + 1)].includes(opened.player.club))
					fail(`saved ${saved}, found ${opened.player.club}`)
			}
			for (const { visitId } of opened.visits.slice(0, 3))
				await app.ask('reports.open', { visitId })
			number = Math.max(
				number,
				...lines
					.filter((line) => line.startsWith('saved'))
					.map((line) => Number(line.split(' ')[1])),
			)
			app.close()
			// every file that has the name of a backup is a whole one
			for (const file of readdirSync(here))
				if (/^lastwright-backup-.*\.db$/.test(file))
					try {
						openChecked(join(here, file)).db.close()
					} catch (error) {
						fail((error as Error).message)
					}
			tell(`${where}: ${lines.length - 1} steps, ${result.lost.length} faults so far`)
		}
		for (let round = 1; round <= Math.ceil(rounds / 3); round++)
			result.lost.push(
				...(await upgradeUntilKilled(Math.floor(Math.random() * 40), () => {
					result.upgrades++
				})),
			)
	} finally {
		rmSync(here, { recursive: true, force: true })
	}
	return result
}
interface Full {
	rounds: number
	saves: number
	refused: number
	lost: string[]
}
/**
 * Saves on a disk of one or two megabytes until it is full, frees a little and goes on; whatever
 * was acknowledged is there afterwards. Needs root.
 */
async function fillUntilFull(rounds: number, tell: (text: string) => void): Promise<Full> {
	const result: Full = { rounds: 0, saves: 0, refused: 0, lost: [] }
	for (let round = 1; round <= rounds; round++) {
		const here = mkdtempSync(join(tmpdir(), 'lastwright-full-'))
		try {
			execFileSync(
				'mount',
				['-t', 'tmpfs', '-o', `size=${1000 + Math.floor(Math.random() * 1000)}k`, 'tmpfs', here],
				{ stdio: 'ignore' },
			)
		} catch {
			rmSync(here, { recursive: true, force: true })
			return result
		}
		try {
			const app = open(here)
			await app.ask('session.setUp', { clinic, passphrase })
			const { playerId } = await app.ask('players.save', { player })
			const filler = join(here, 'filler')
			writeFileSync(filler, Buffer.alloc(60_000 + Math.floor(Math.random() * 200_000)))
			let [kept, refused] = [0, 0]
			const signed: string[] = []
			for (let number = 1; refused < 6 && number < 3000; number++) {
				const saved = await app.call('players.save', {
					playerId,
					player: { ...player, club: String(number) },
				})
				if (saved.ok) {
					kept = number
					result.saves++
				} else {
					refused++
					if (!/full/.test(saved.message))
						result.lost.push(`full disk, round ${round}: said "${saved.message}"`)
				}
				if (number % 3 === 0) {
					const opened = await app.call('drafts.open', { playerId, visitDate: '2027-01-20' })
					const draft = opened.ok
						? (opened.value as { draft: { draftId: string; content: DraftContent } }).draft
						: undefined
					const put =
						draft &&
						(await app.call('drafts.save', {
							draftId: draft.draftId,
							content: {
								...draft.content,
								decisions: { ...draft.content.decisions, consentNoted: true },
							},
						}))
					const visit =
						draft && put?.ok ? await app.call('visits.sign', { draftId: draft.draftId }) : undefined
					if (visit?.ok) signed.push((visit.value as { visitId: string }).visitId)
				}
				// room again, half way: work goes on
				if (refused === 3) rmSync(filler, { force: true })
			}
			app.close()
			rmSync(filler, { force: true })
			const again = open(here)
			await again.ask('session.unlock', { passphrase })
			const opened = await again.ask('players.open', { playerId })
			if (Number(opened.player.club ?? 0) < kept)
				result.lost.push(`full disk, round ${round}: saved ${kept}, found ${opened.player.club}`)
			const have = new Set(opened.visits.map((visit: { visitId: string }) => visit.visitId))
			for (const id of signed)
				if (!have.has(id))
					result.lost.push(`full disk, round ${round}: the signed visit ${id} is gone`)
			const { problems } = await again.ask('audit.verify')
			result.lost.push(...problems.map((one: string) => `full disk, round ${round}: ${one}`))
			again.close()
			result.refused += refused
			result.rounds = round
			tell(
				`full disk, round ${round}: ${kept} saved, ${signed.length} signed, ${refused} refused, ` +
					`${result.lost.length} faults so far`,
			)
		} finally {
			execFileSync('umount', ['-l', here])
			rmSync(here, { recursive: true, force: true })
		}
	}
	return result
}
/** A store of the first schema, killed while it is brought up to date, opens whole afterwards. */
async function upgradeUntilKilled(delayMs: number, done: () => void): Promise<string[]> {
	const here = mkdtempSync(join(tmpdir(), 'lastwright-upgrade-'))
	copyFileSync(oldStore, join(here, 'lastwright.db'))
	const script =
		`import(${JSON.stringify(pathToFileURL(fileURLToPath(new URL('../../electron/store/store.ts', import.meta.url))).href)}).then(({ ` +
		`Store }) => { process.stdout.write('go'); new Store(${JSON.stringify(here)}, ` +
		'{ cost: 1024 }); setInterval(() => {}, 1000) })'
	await new Promise<void>((resolve) => {
		const child = spawn(
			process.execPath,
			['--disable-warning=ExperimentalWarning', '--input-type=module', '-e', script],
			{ stdio: ['ignore', 'pipe', 'ignore'] },
		)
		child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), delayMs))
		child.once('close', () => resolve())
	})
	const app = open(here)
	try {
		await app.ask('session.unlock', { passphrase })
		const { total } = await app.ask('players.search', { query: '', limit: 5 })
		const { problems } = await app.ask('audit.verify')
		done()
		return [
			...(total === 2 ? [] : [`upgrade killed after ${delayMs} ms: ${total} players of 2`]),
			...problems,
		]
	} finally {
		app.close()
		rmSync(here, { recursive: true, force: true })
	}
}
if (
	process.argv[1] &&
	existsSync(process.argv[1]) &&
	import.meta.url === pathToFileURL(process.argv[1]).href
) {
	const clearUp = ownTemporary()
	const rounds = Number(process.argv[2] ?? 300)
	const tell = (text: string) => process.stdout.write(`${text}\n`)
	const result = await soak(rounds, 3000, tell)
	const full = await fillUntilFull(Math.ceil(rounds / 10), tell)
	result.lost.push(...full.lost)
	process.stdout.write(
		`${JSON.stringify({ ...result, fullDisk: full.rounds === 0 ? 'not tried: this PC lets no small file system be mounted' : { rounds: full.rounds, saves: full.saves, refused: full.refused } }, null, '\t')}\n`,
	)
	clearUp()
	process.exitCode = result.lost.length ? 1 : 0
}
