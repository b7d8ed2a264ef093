/** A connection to the shared server: encrypted, and only to the one that was meant. */
import { connect as connectSocket, isIP } from 'node:net'
import { checkServerIdentity } from 'node:tls'
import pg from 'pg'
import { type ServerAddress, staysHere } from './address.ts'
import { isCoded, isKnown, refusedBy, ShareRefused } from './faults.ts'

/** A server on the other side of the world answers sooner; a choice of this program. */
const connectMs = 10_000
/** No statement of ours takes as long; a choice of this program. */
const statementMs = 60_000

/** What a TLS connection is asked for before it begins, as PostgreSQL has it. */
const askForTls = Buffer.from([0, 0, 0, 8, 4, 210, 22, 47])
const [yes, no] = [...Buffer.from('SN')]

export interface Wish {
	address: ServerAddress
	/** certificates that vouch for the server, PEM; those of the system where it is not given */
	ca?: string | undefined
}
/** On this PC alone nobody listens: there it need not be encrypted, and is where a CA is given. */
const encryption = ({ address, ca }: Wish) =>
	!address.host.startsWith('/') && (ca !== undefined || !staysHere(address))
		? {
				...(ca === undefined ? {} : { ca }),
				minVersion: 'TLSv1.2' as const,
				// what is asked for is the host of the address, be it a name or a number
				checkServerIdentity: (_: string, certificate: Parameters<typeof checkServerIdentity>[1]) =>
					checkServerIdentity(address.host, certificate),
				...(isIP(address.host) === 0 ? { servername: address.host } : {}),
			}
		: false

/** How what answers there takes the wish for TLS: its own code of why nothing came about. */
function whyNot({ host, port }: ServerAddress): Promise<string> {
	return new Promise((resolve) => {
		const socket = connectSocket({ host, port, timeout: connectMs })
		const end = (code: string) => {
			socket.destroy()
			resolve(code)
		}
		socket.once('connect', () => socket.write(askForTls))
		socket.once('data', ([first]) => {
			if (first === no) end('LW_NO_TLS')
			else end(first === yes ? 'LW_SILENT' : 'LW_NOT_POSTGRES')
		})
		for (const event of ['timeout', 'end', 'error']) socket.once(event, () => end('LW_SILENT'))
	})
}
/** @throws ShareRefused in words where it does not come about */
export async function connect(wish: Wish): Promise<pg.Client> {
	const { host, port, database, user, password } = wish.address
	const ssl = encryption(wish)
	const client = new pg.Client({
		...{ host, port, database, user, ssl },
		...(password === undefined ? {} : { password }),
		application_name: 'lastwright',
		connectionTimeoutMillis: connectMs,
		statement_timeout: statementMs,
		keepAlive: true,
	})
	// a connection that breaks while nothing is asked: the next question tells
	client.on('error', () => {})
	try {
		await client.connect()
		return client
	} catch (error) {
		client.end().catch(() => {})
		if (isKnown(error)) throw refusedBy(error)
		if (ssl === false) throw new ShareRefused('LW_SILENT', { cause: error })
		throw new ShareRefused(await whyNot(wish.address), { cause: error })
	}
}
/** Does something with a connection of its own. @throws ShareRefused in words */
export async function withServer<T>(
	wish: Wish,
	work: (client: pg.Client) => Promise<T>,
): Promise<T> {
	const client = await connect(wish)
	const connection = { isLost: false }
	client.once('end', () => {
		connection.isLost = true
	})
	try {
		return await work(client)
	} catch (error) {
		if (connection.isLost && !isCoded(error)) throw new ShareRefused('LW_SILENT', { cause: error })
		throw isCoded(error) ? refusedBy(error) : error
	} finally {
		await client.end().catch(() => {})
	}
}
/** All of it or none of it. */
export async function inOne<T>(client: pg.Client, work: () => Promise<T>): Promise<T> {
	await client.query('BEGIN')
	try {
		const result = await work()
		await client.query('COMMIT')
		return result
	} catch (error) {
		await client.query('ROLLBACK').catch(() => {})
		throw error
	}
}
