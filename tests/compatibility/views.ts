/**
 * Everything that a person can read of a store, room by room, through the calls of the host. None
 * of them changes anything but the trail, which is read first.
 */
import { createHash } from 'node:crypto'

// biome-ignore lint/suspicious/noExplicitAny: answers of any version are looked at field by field
type Loose = any
type Call = (name: string, input?: unknown) => Promise<Loose>
/** Answers by what was asked. A refusal is kept in its own words. */
export type Views = Record<string, unknown>

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')
const canonical = (value: Loose): string =>
	JSON.stringify(value, (_, one) =>
		one !== null && typeof one === 'object' && !Array.isArray(one)
			? Object.fromEntries(Object.entries(one).sort(([a], [b]) => (a < b ? -1 : 1)))
			: one,
	)
/** Bytes and frozen results by their digest: they must be the same to the last byte, and are long. */
const byDigest: readonly string[] = ['base64', 'assessment', 'csv']
/** What is of the moment, and says nothing about what is kept. */
const madeAnew: readonly string[] = ['fileName', 'queue']
function brief(value: Loose): Loose {
	if (Array.isArray(value)) return value.map(brief)
	if (value === null || typeof value !== 'object') return value
	return Object.fromEntries(
		Object.entries(value)
			.filter(([key]) => !madeAnew.includes(key))
			.map(([key, one]) => [
				key,
				byDigest.includes(key) && one !== undefined
					? { sha256: sha256(canonical(one)) }
					: brief(one),
			]),
	)
}
class Reader {
	readonly views: Views = {}
	readonly #call: Call
	constructor(call: Call) {
		this.#call = call
	}
	/** @returns what was answered, or undefined where it was refused */
	async read(name: string, input: object = {}, as?: string): Promise<Loose> {
		const answer = await this.#call(name, input)
		const words = Object.values(input).map((one) => (typeof one === 'object' ? '' : ` ${one}`))
		this.views[as ?? `${name}${words.join('')}`] = answer.ok
			? brief(answer.value)
			: { refused: answer.message }
		return answer.ok ? answer.value : undefined
	}
}
const wholeRooms = [
	'clinic.get',
	'recordSettings.get',
	'people.list',
	'session.people',
	'protocol.get',
	'protocol.versions',
	'shelf.get',
	'shelf.exportCsv',
	'mail.get',
	'breaches.list',
	'retention.register',
	'outreach.list',
	'squad.list',
] as const
const purposes = [
	['email', 'Owain Trescott'],
	['email', 'Rae Ashdown'],
	['share-with-coach', 'Coach Hale'],
	['share-with-care', 'Dr Sol Vance'],
	['photos', ''],
] as const

async function visit(reader: Reader, visitId: string): Promise<void> {
	await reader.read('visits.open', { visitId })
	const history = await reader.read('visits.history', { visitId })
	for (const { version } of history?.versions ?? [])
		await reader.read('reports.open', { visitId, version })
	await reader.read('outbox.recipients', { visitId })
}
async function player(reader: Reader, playerId: string): Promise<void> {
	const opened = await reader.read('players.open', { playerId })
	await reader.read('consents.list', { playerId })
	for (const [purpose, recipient] of purposes)
		await reader.read('consents.check', { playerId, purpose, recipient })
	await reader.read('outbox.notes', { playerId })
	await reader.read('outbox.tell', { playerId })
	await reader.read('season.open', { playerId })
	for (const { visitId } of opened?.visits ?? []) await visit(reader, visitId)
	if ((opened?.drafts ?? []).length === 0) return
	const { visitDate } = opened.drafts[0]
	await reader.read('drafts.open', { playerId, visitDate }, `drafts.open ${playerId}`)
}
async function outbox(reader: Reader): Promise<void> {
	const listed = await reader.read('outbox.list')
	for (const { itemId, protection } of listed?.items ?? []) {
		await reader.read('outbox.look', { itemId })
		if (protection === 'password') await reader.read('outbox.password', { itemId })
	}
}
/** How far the trail is read: to a row, or to the last one that was written before a moment. */
export type UpTo = number | { before: string }
async function trail(reader: Reader, call: Call, upTo: UpTo): Promise<number> {
	const rows: { seq: number; utcTime: string }[] = []
	const leftOut: string[] = []
	for (let before: number | undefined; ; ) {
		const answer = await call('audit.page', { limit: 500, ...(before ? { before } : {}) })
		if (!answer.ok) {
			leftOut.push(answer.message)
			break
		}
		rows.push(...answer.value.rows)
		if (answer.value.leftOut) leftOut.push(answer.value.leftOut)
		before = answer.value.rows.at(-1)?.seq
		if (before === undefined || before <= 1) break
	}
	const last =
		typeof upTo === 'number' ? upTo : (rows.find((row) => row.utcTime < upTo.before)?.seq ?? 0)
	reader.views['audit.page'] = brief(rows.filter((row) => row.seq <= last))
	if (leftOut.length > 0) reader.views['audit.page, left out'] = leftOut
	const verified = await call('audit.verify')
	reader.views['audit.verify'] = verified.ok
		? { problems: verified.value.problems, awayRows: verified.value.awayRows }
		: { refused: verified.message }
	return last
}
/**
 * @param call of an unlocked host @param upTo the last row of the trail that counts
 * @returns the answers, and the last row of the trail that was read
 */
export async function viewsOf(call: Call, upTo: UpTo): Promise<{ views: Views; lastRow: number }> {
	const reader = new Reader(call)
	const lastRow = await trail(reader, call, upTo)
	for (const name of wholeRooms) await reader.read(name)
	await reader.read('retention.due', { on: '2060-01-01' })
	const found = await reader.read('players.search', { query: '', limit: 500 })
	for (const { playerId } of found?.cards ?? []) await player(reader, playerId)
	for (const { squadId } of reader.views['squad.list'] ? squads(reader) : [])
		await reader.read('squad.open', { squadId })
	await outbox(reader)
	await reader.read('recall.list', { limit: 500 })
	await reader.read('recall.referrals')
	return { views: reader.views, lastRow }
}
const squads = (reader: Reader): { squadId: string }[] =>
	(reader.views['squad.list'] as { days?: { squadId: string }[] }).days ?? []
