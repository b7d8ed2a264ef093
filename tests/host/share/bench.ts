/** What the tests of a shared server have in common: one server a file, and PCs that were admitted. */
import { createHash, createHmac, pbkdf2Sync, randomBytes, randomUUID } from 'node:crypto'
import type pg from 'pg'
import { afterAll, beforeAll, describe } from 'vitest'
import type { Wish } from '../../../electron/share/connect.ts'
import { prepare } from '../../../electron/share/server/prepare.ts'
import { Cluster, noServer } from './cluster.ts'

/** A block of tests with a server; where none can be had it is skipped, and its title says why. */
export function onServer(title: string, body: (cluster: () => Cluster) => void): void {
	const whole = noServer === undefined ? title : `${title} (skipped: ${noServer})`
	describe.skipIf(noServer !== undefined)(whole, () => {
		let cluster: Cluster | undefined
		beforeAll(async () => {
			cluster = await new Cluster().make()
		}, 60_000)
		afterAll(() => cluster?.stop('crash'))
		body(() => cluster!)
	})
}
/** RFC 5802 and 7677, with a password that is random enough for few rounds. */
export function verifierOf(password: string, salt = randomBytes(16), rounds = 4096): string {
	const salted = pbkdf2Sync(password, salt, rounds, 32, 'sha256')
	const keyed = (what: string) => createHmac('sha256', salted).update(what).digest()
	const stored = createHash('sha256').update(keyed('Client Key')).digest('base64')
	const server = keyed('Server Key').toString('base64')
	return `SCRAM-SHA-256$${rounds}:${salt.toString('base64')}$${stored}:${server}`
}
export const sqlState = async (asked: Promise<unknown>): Promise<string> => {
	try {
		await asked
		return 'done'
	} catch (error) {
		return (error as { code?: string }).code ?? String(error)
	}
}
export interface Pc {
	origin: string
	login: string
	password: string
	client: pg.Client
}
/** A database that is prepared, and who comes to it. */
export class Clinic {
	readonly word = randomBytes(32)
	readonly cluster: Cluster
	readonly database: string
	readonly #open: pg.Client[] = []
	private constructor(cluster: Cluster, database: string) {
		this.cluster = cluster
		this.database = database
	}
	static async of(cluster: Cluster): Promise<Clinic> {
		const database = await cluster.database()
		await cluster.asAdministrator(database, prepare)
		return new Clinic(cluster, database)
	}
	async client(user: string, password: string): Promise<pg.Client> {
		const client = await this.cluster.client(user, this.database, password)
		this.#open.push(client)
		return client
	}
	administrator(): Promise<pg.Client> {
		return this.client('administrator', this.cluster.password)
	}
	async end(): Promise<void> {
		for (const client of this.#open.splice(0)) await client.end().catch(() => {})
	}
	/** The way to the server for a PC that was admitted. */
	wish({ login, password }: Omit<Pc, 'client'>): Wish {
		const { port, certificates } = this.cluster
		const address = { host: '127.0.0.1', port, database: this.database, user: login, password }
		return { address, ca: certificates.ca }
	}
	/** @param by who invites; the administrator where nobody is named */
	async invite(by?: Pc, minutes = 60): Promise<{ login: string; password: string }> {
		const password = randomBytes(16).toString('hex')
		const client = by?.client ?? (await this.administrator())
		const { rows } = await client.query('SELECT lastwright.invite($1, $2, $3) AS login', [
			...[by ? this.word : null, verifierOf(password), minutes],
		])
		return { login: rows[0].login, password }
	}
	/** @returns how it stands, and with what the PC would log in */
	async knock(
		invited: { login: string; password: string },
		origin = randomBytes(6).toString('hex'),
	): Promise<Omit<Pc, 'client'> & { state: string; guest: string }> {
		const guest = await this.client(invited.login, invited.password)
		const password = randomBytes(24).toString('hex')
		const asked = [randomBytes(44), randomBytes(44), verifierOf(password), this.word]
		const { rows } = await guest.query('SELECT lastwright.knock($1, $2, $3, $4, $5) AS state', [
			...[origin, ...asked],
		])
		const { state } = rows[0]
		const tag = invited.login.split('_')[1]
		return { origin, password, state, guest: invited.login, login: `lastwright_${tag}_${origin}` }
	}
	/** A PC that was invited, has knocked and was admitted. */
	async pc(by?: Pc, origin?: string): Promise<Pc> {
		const asked = await this.knock(await this.invite(by), origin)
		if (asked.state === 'waiting')
			await by!.client.query('SELECT lastwright.admit($1, $2)', [this.word, asked.guest])
		const { login, password } = asked
		return { origin: asked.origin, login, password, client: await this.client(login, password) }
	}
}
/** @returns the id */
export async function write(
	{ origin, client }: Pick<Pc, 'origin' | 'client'>,
	number: number,
	bytes: Uint8Array = randomBytes(64),
): Promise<string> {
	const id = randomUUID()
	await client.query(
		'INSERT INTO lastwright.record (id, origin, number, sealed) VALUES ($1, $2, $3, $4)',
		[id, origin, number, bytes],
	)
	return id
}
