/**
 * A real PostgreSQL server of our own, with TLS, on 127.0.0.1: made in a temporary folder, thrown away
 * afterwards. Where its programs are not installed, the tests that need it say that they are skipped.
 */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { once } from 'node:events'
import {
	appendFileSync,
	chmodSync,
	chownSync,
	existsSync,
	mkdtempSync,
	readdirSync,
	writeFileSync,
} from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { basename, delimiter, dirname, join } from 'node:path'
import pg from 'pg'
import { prepare } from '../../../electron/share/server/prepare.ts'
import { isInstalled } from '../other-programs.ts'
import { type Certificates, makeCertificates } from './certificates.ts'

/** Debian keeps them apart from the path, by version. */
const debianFolder = '/usr/lib/postgresql'
const versions = existsSync(debianFolder) ? readdirSync(debianFolder) : []
const folders = [
	...versions
		.toSorted((one, other) => Number(other) - Number(one))
		.map((version) => join(debianFolder, version, 'bin')),
	...(process.env.PATH ?? '').split(delimiter),
]
const programs = folders.find(
	(folder) => existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'postgres')),
)
const isRoot = process.getuid?.() === 0
const idOf = (flag: '-u' | '-g'): number | undefined => {
	try {
		return Number(execFileSync('id', [flag, 'postgres'], { stdio: ['ignore', 'pipe', 'ignore'] }))
	} catch {
		return undefined
	}
}
/** PostgreSQL does not run as root: it is given to its own user then. */
const runsAs = isRoot ? { uid: idOf('-u'), gid: idOf('-g') } : undefined
/** Why there can be no server here; undefined where there can. */
export const noServer: string | undefined =
	programs === undefined
		? 'PostgreSQL is not installed'
		: !isInstalled('openssl')
			? 'openssl is not installed'
			: isRoot && (runsAs?.uid === undefined || !isInstalled('setpriv'))
				? 'there is no user "postgres" to run it as'
				: undefined

/** Runs a program as the user who may run a server; what it starts ends with us where it can. */
function asUser(program: string, args: string[]): [string, string[]] {
	const file = join(programs ?? '', program)
	return runsAs
		? [
				'setpriv',
				[
					`--reuid=${runsAs.uid}`,
					`--regid=${runsAs.gid}`,
					...['--clear-groups', '--pdeathsig=QUIT', file],
					...args,
				],
			]
		: [file, args]
}
/** A folder that the server's user reaches. */
function reachableFolder(): string {
	// the folder of the run lies in that of the run around it, both of them for us alone
	for (let at = tmpdir(); isRoot && /^lastwright-run-/.test(basename(at)); at = dirname(at))
		chmodSync(at, 0o711)
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-server-'))
	chmodSync(folder, 0o711)
	return folder
}
async function freePort(): Promise<number> {
	const server = createServer().listen(0, '127.0.0.1')
	await once(server, 'listening')
	const { port } = server.address() as { port: number }
	server.close()
	await once(server, 'close')
	return port
}
export class Cluster {
	readonly folder = reachableFolder()
	readonly certificates: Certificates = makeCertificates(this.folder)
	readonly password = 'administrator of the tests'
	#port = 0
	#process: ChildProcess | undefined
	#databases = 0
	get #data(): string {
		return join(this.folder, 'data')
	}
	get port(): number {
		return this.#port
	}
	/** Makes and starts it. */
	async make(): Promise<this> {
		const passwordFile = join(this.folder, 'password')
		writeFileSync(passwordFile, this.password)
		this.#give(passwordFile, this.folder, this.certificates.folder)
		const [program, args] = asUser('initdb', [
			...['--pgdata', this.#data, '--username', 'administrator', '--pwfile', passwordFile],
			...['--auth', 'scram-sha-256', '--encoding', 'UTF8', '--locale', 'C', '--no-sync'],
		])
		execFileSync(program, args, { stdio: ['ignore', 'ignore', 'pipe'], cwd: '/' })
		this.#port = await freePort()
		this.setting(`port = ${this.#port}`, "listen_addresses = '127.0.0.1'")
		this.setting("unix_socket_directories = ''")
		this.presents('good')
		await this.start()
		return this
	}
	#give(...paths: string[]): void {
		if (runsAs) for (const path of paths) chownSync(path, runsAs.uid ?? 0, runsAs.gid ?? 0)
	}
	/** Lines of its settings; they hold from the next start on. */
	setting(...lines: string[]): void {
		appendFileSync(join(this.#data, 'postgresql.conf'), `${lines.join('\n')}\n`)
	}
	/** Which certificate it shows from the next start on; none: no TLS at all. */
	presents(which: 'good' | 'other-name' | 'expired' | 'stranger' | 'none'): void {
		if (which === 'none') {
			this.setting('ssl = off')
			return
		}
		const { file, key } = this.certificates.server(which)
		this.#give(file, key)
		this.setting(`ssl = on`, `ssl_cert_file = '${file}'`, `ssl_key_file = '${key}'`)
	}
	async start(): Promise<void> {
		const [program, args] = asUser('postgres', ['-D', this.#data])
		const child = spawn(program, args, { stdio: ['ignore', 'ignore', 'pipe'], cwd: '/' })
		this.#process = child
		process.once('exit', () => child.kill('SIGQUIT'))
		let said = ''
		await new Promise<void>((resolve, reject) => {
			child.stderr.on('data', (part) => {
				said += String(part)
				if (said.includes('ready to accept connections')) resolve()
			})
			child.once('exit', () => reject(new Error(`The server did not start: ${said}`)))
		})
	}
	/** @param how fast: sessions are ended; crash: as if the power went */
	async stop(how: 'fast' | 'crash' = 'fast'): Promise<void> {
		const child = this.#process
		this.#process = undefined
		if (!child || child.exitCode !== null) return
		const ended = once(child, 'exit')
		child.kill(how === 'fast' ? 'SIGINT' : 'SIGQUIT')
		await ended
	}
	async restart(how?: 'fast' | 'crash'): Promise<void> {
		await this.stop(how)
		await this.start()
	}
	/** A new empty database. @returns its name */
	async database(encoding = 'UTF8'): Promise<string> {
		const name = `clinic ${++this.#databases}`
		await this.as('administrator', 'postgres', this.password, (client) =>
			client.query(`CREATE DATABASE "${name}" TEMPLATE template0 ENCODING '${encoding}'`),
		)
		return name
	}
	/** A connection as somebody, by TLS. */
	async client(user: string, database: string, password: string): Promise<pg.Client> {
		const client = new pg.Client({
			...{ host: '127.0.0.1', port: this.#port, user, database, password },
			ssl: { ca: this.certificates.ca, checkServerIdentity: () => undefined },
		})
		client.on('error', () => {})
		await client.connect()
		return client
	}
	async as<T>(
		user: string,
		database: string,
		password: string,
		work: (client: pg.Client) => Promise<T>,
	): Promise<T> {
		const client = await this.client(user, database, password)
		try {
			return await work(client)
		} finally {
			await client.end()
		}
	}
	#tool(program: string, args: string[], input?: Uint8Array): Buffer {
		const way = ['--host=127.0.0.1', `--port=${this.#port}`, '--username=administrator']
		return execFileSync(join(programs ?? '', program), [...way, ...args], {
			env: { ...process.env, PGPASSWORD: this.password },
			stdio: ['pipe', 'pipe', 'pipe'],
			maxBuffer: 2 ** 30,
			...(input ? { input } : {}),
		})
	}
	/** A dump as whoever runs the server makes it. */
	dump(database: string): Uint8Array {
		return this.#tool('pg_dump', ['--format=custom', `--dbname=${database}`])
	}
	/** The database anew from a dump, as whoever runs the server is told to. */
	async putBack(database: string, dump: Uint8Array): Promise<void> {
		const beside = `${database} beside`
		await this.asAdministrator('postgres', (client) => client.query(`CREATE DATABASE "${beside}"`))
		this.#tool('pg_restore', [`--dbname=${beside}`], dump)
		await this.asAdministrator(beside, prepare)
		await this.asAdministrator('postgres', async (client) => {
			await client.query(`DROP DATABASE "${database}" WITH (FORCE)`)
			await client.query(`ALTER DATABASE "${beside}" RENAME TO "${database}"`)
		})
	}
	asAdministrator<T>(database: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
		return this.as('administrator', database, this.password, work)
	}
	/** Its address as whoever administers it writes it. */
	url(database: string, host = 'localhost'): string {
		const password = encodeURIComponent(this.password)
		return `postgres://administrator:${password}@${host}:${this.#port}/${encodeURIComponent(database)}`
	}
}
