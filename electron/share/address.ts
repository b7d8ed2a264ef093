/** Where the server is, as somebody writes it: `postgres://user@host:port/database`. */
import { isIP } from 'node:net'

export interface ServerAddress {
	/** a name, a number, or the folder of a local socket */
	host: string
	port: number
	database: string
	user: string
	/** undefined where it was not written: `PGPASSWORD` and the password file are looked into */
	password: string | undefined
}
const usualPort = 5432
/** An address that cannot be used; the message says why, without the password. */
export class BadAddress extends Error {}

/** Whether what is sent there never leaves this PC. */
export const staysHere = ({ host }: Pick<ServerAddress, 'host'>): boolean =>
	host.startsWith('/') ||
	host === 'localhost' ||
	host === '::1' ||
	(isIP(host) === 4 && host.startsWith('127.'))

const partOf = (text: string, what: string): string => {
	try {
		return decodeURIComponent(text)
	} catch {
		throw new BadAddress(`${what} is not written as in an address (% stands alone)`)
	}
}
/** The host: before the path, or by `?host=` where it is the folder of a socket. */
function hostOf(url: URL): string {
	const others = [...url.searchParams.keys()].filter((key) => key !== 'host')
	if (others.length > 0) throw new BadAddress(`"${others.join(', ')}" is not known here`)
	const named = url.searchParams.get('host') ?? ''
	if (named !== '' && !named.startsWith('/'))
		throw new BadAddress('"host" after the question mark is for the folder of a socket only')
	const host = named || partOf(url.hostname.replace(/^\[|\]$/g, ''), 'the host')
	if (host === '') throw new BadAddress('the host is missing')
	return host
}
/** @throws BadAddress in words, without the password */
export function readAddress(text: string): ServerAddress {
	let url: URL
	try {
		url = new URL(text)
	} catch {
		throw new BadAddress('it is not an address')
	}
	if (!/^postgres(ql)?:\/\//.test(text)) throw new BadAddress('it does not begin with postgres://')
	const database = partOf(url.pathname.slice(1), 'the database')
	if (database === '') throw new BadAddress('the database is missing')
	if (database.includes('/')) throw new BadAddress('the database has a "/" in its name')
	const user = partOf(url.username, 'the user')
	if (user === '') throw new BadAddress('the user is missing')
	return {
		...{ host: hostOf(url), database, user },
		port: url.port === '' ? usualPort : Number(url.port),
		password: url.password === '' ? undefined : partOf(url.password, 'the password'),
	}
}
/** The same for a person to read: never with a password. */
export const writtenAddress = ({ host, port, database, user }: ServerAddress): string => {
	const name = encodeURIComponent(user)
	const path = encodeURIComponent(database)
	if (host.startsWith('/')) return `postgres://${name}@localhost:${port}/${path}?host=${host}`
	return `postgres://${name}@${isIP(host) === 6 ? `[${host}]` : host}:${port}/${path}`
}
