/** Records at full size: unlock to list, a keystroke's answer, opening a player, memory. Budgets of the record room; times depend on the PC. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createApp } from '../../electron/app.ts'
import { Store } from '../../electron/store/store.ts'

const [players, perPlayer] = [Number(process.argv[2] ?? 20_000), 3]
const passphrase = 'correct horse'
const here = mkdtempSync(join(tmpdir(), 'lastwright-bench-'))
const options = { dataFolder: here, scryptCost: 1024, renderPdf: async () => Buffer.from('%PDF-1.7') }
const syllables = ['ash', 'bel', 'cor', 'dún', 'ève', 'far', 'gol', 'hañ', 'ing', 'jor']
const name = (n: number) => [n % 10, Math.floor(n / 10) % 10, Math.floor(n / 100) % 10].map((at) => syllables[at]).join('')
try {
	const first = createApp(options)
	await first.call('session.setUp', { clinic: { format: 'lastwright-clinic', version: 1, name: 'Invented Clinic', address: [], colour: '#1f5f5b', clinician: { name: 'A. Example', registration: 'X1' } }, passphrase })
	first.close()
	const store = new Store(here, { cost: 1024 })
	await store.unlock(passphrase)
	// bodies as long as a real visit with its assessment; nothing at unlock may depend on them
	const body = 'x'.repeat(12_000)
	for (let from = 0; from < players; from += 500) store.together(() => {
		for (let n = from; n < Math.min(players, from + 500); n++) {
			const playerId = `p${n}`
			store.append({ kind: 'player', at: '2027-01-01T00:00:00.000Z', about: playerId, value: { playerId, player: { givenName: name(n), familyName: name(Math.floor(n / 7)), birthDate: `20${String(5 + (n % 10)).padStart(2, '0')}-03-0${1 + (n % 9)}`, sex: 'female' } } })
			const visits = n === 0 ? 10 : perPlayer
			for (let v = 0; v < visits; v++) store.append({ kind: 'visit', at: '2027-01-02T00:00:00.000Z', about: playerId, thing: `v${n}-${v}`, card: { visitId: `v${n}-${v}`, playerId, visitDate: `2027-01-0${1 + (v % 9)}`, signedAt: '2027-01-02T00:00:00.000Z', version: 1, student: false }, value: { body } })
		}
	})
	store.close()
	const app = createApp({ ...options, demo: true })
	const timed = async (call: string, input: unknown) => {
		const start = performance.now()
		const answer = await app.call(call, input)
		if (!answer.ok) throw new Error(`${call}: ${answer.message}`)
		return performance.now() - start
	}
	const unlockMs = (await timed('session.unlock', { passphrase })) + (await timed('players.search', { query: '', limit: 50 }))
	const keys: number[] = []
	for (let n = 0; n < 60; n++) { const word = `${name(n * 37)} ${name(n * 11)}`; for (let end = 1; end <= word.length; end++) keys.push(await timed('players.search', { query: word.slice(0, end), limit: 50 })) }
	keys.sort((a, b) => a - b)
	const openMs = await timed('players.open', { playerId: 'p0' })
	const memoryMb = process.memoryUsage().rss / 1_048_576
	const rows: [string, number, number, string][] = [['unlock to list, without stretching the passphrase', unlockMs, 2000, 'ms'], ['keystroke, 95th percentile', keys[Math.floor(keys.length * 0.95)] ?? 0, 30, 'ms'], ['opening a player with ten visits', openMs, 100, 'ms'], ['memory of the host, with what filled the store', memoryMb, 400, 'MB']]
	for (const [what, value, most, unit] of rows) process.stdout.write(`${value <= most ? 'within' : 'OVER  '}  ${what}: ${value.toFixed(0)} ${unit} (budget ${most})\n`)
	app.close()
	if (rows.some(([, value, most]) => value > most)) process.exitCode = 1
} finally { rmSync(here, { recursive: true, force: true }) }
