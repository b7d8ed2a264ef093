/**
 * Saves on a disk of one or two megabytes until it is full, frees a little and goes on; whatever
 * was acknowledged is there afterwards. Needs root.
 */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { settledAsProposed } from '../../electron/command/demo/visits.ts'
import type { DraftContent } from '../../shared/contract.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { agreed } from '../agreed.ts'
import { type AppNow, clinic, openNow, passphrase, player } from '../host/clock-app.ts'

interface Full {
	rounds: number
	saves: number
	refused: number
	lost: string[]
}
/** What one round was told, and what it found wrong. */
interface Round {
	kept: number
	saves: number
	refused: number
	signed: string[]
	lost: string[]
}
const mostRefused = 6
const freedAfter = 3
const mostSaves = 3000

/** @returns 0 rounds where this PC lets no small file system be mounted */
export async function fillUntilFull(rounds: number, tell: (text: string) => void): Promise<Full> {
	const result: Full = { rounds: 0, saves: 0, refused: 0, lost: [] }
	for (let round = 1; round <= rounds; round++) {
		const disk = mountSmall()
		if (disk === undefined) return result
		try {
			const { kept, saves, refused, signed, lost } = await fillOnce(disk)
			result.rounds = round
			result.saves += saves
			result.refused += refused
			result.lost.push(...lost.map((fault) => `full disk, round ${round}: ${fault}`))
			tell(
				`full disk, round ${round}: ${kept} saved, ${signed.length} signed, ${refused} refused, ` +
					`${result.lost.length} faults so far`,
			)
		} finally {
			execFileSync('umount', ['-l', disk])
			rmSync(disk, { recursive: true, force: true })
		}
	}
	return result
}
function mountSmall(): string | undefined {
	const disk = mkdtempSync(join(tmpdir(), 'lastwright-full-'))
	const size = `size=${1000 + Math.floor(Math.random() * 1000)}k`
	try {
		execFileSync('mount', ['-t', 'tmpfs', '-o', size, 'tmpfs', disk], { stdio: 'ignore' })
		return disk
	} catch {
		rmSync(disk, { recursive: true, force: true })
		return undefined
	}
}
async function fillOnce(disk: string): Promise<Round> {
	const app = openNow(disk)
	await app.ask('session.setUp', { clinic, passphrase })
	const { playerId } = await app.ask('players.save', { player })
	const filler = join(disk, 'filler')
	writeFileSync(filler, Buffer.alloc(60_000 + Math.floor(Math.random() * 200_000)))
	const round: Round = { kept: 0, saves: 0, refused: 0, signed: [], lost: [] }
	for (let number = 1; round.refused < mostRefused && number < mostSaves; number++) {
		await saveOnce(app, playerId, number, round)
		if (number % 3 === 0) round.signed.push(...(await signOnce(app, playerId)))
		// room again, half way: work goes on
		if (round.refused === freedAfter) rmSync(filler, { force: true })
	}
	app.close()
	rmSync(filler, { force: true })
	round.lost.push(...(await missing(disk, playerId, round)))
	return round
}
async function saveOnce(
	app: AppNow,
	playerId: string,
	number: number,
	round: Round,
): Promise<void> {
	const saved = await app.call('players.save', {
		playerId,
		player: { ...player, club: String(number) },
	})
	if (saved.ok) {
		round.kept = number
		round.saves++
		return
	}
	round.refused++
	if (!/full/.test(saved.message)) round.lost.push(`said "${saved.message}"`)
}
/** @returns the visit where there was room to sign it */
async function signOnce(app: AppNow, playerId: string): Promise<string[]> {
	const opened = await app.call('drafts.open', { playerId, visitDate: '2027-01-20' })
	if (!opened.ok) return []
	const { draft, earlier } = opened.value as {
		draft: { draftId: string; content: DraftContent }
		earlier: Visit[]
	}
	const { draftId, content } = draft
	const settled = settledAsProposed(assess(content.visit, earlier), content.decisions)
	const put = await app.call('drafts.save', {
		draftId,
		content: { ...content, decisions: { ...settled, ...agreed } },
	})
	if (!put.ok) return []
	const visit = await app.call('visits.sign', { draftId })
	return visit.ok ? [(visit.value as { visitId: string }).visitId] : []
}
async function missing(disk: string, playerId: string, { kept, signed }: Round): Promise<string[]> {
	const app = openNow(disk)
	await app.ask('session.unlock', { passphrase })
	const opened = await app.ask('players.open', { playerId })
	const { problems } = await app.ask('audit.verify')
	app.close()
	const have = new Set(opened.visits.map((visit: { visitId: string }) => visit.visitId))
	return [
		...(Number(opened.player.club ?? 0) < kept
			? [`saved ${kept}, found ${opened.player.club}`]
			: []),
		...signed.filter((id) => !have.has(id)).map((id) => `the signed visit ${id} is gone`),
		...problems,
	]
}
