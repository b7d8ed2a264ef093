/** Whose process stands at the other end of a connection on this PC, where the system tells. */
import { readFileSync } from 'node:fs'
import { endianness } from 'node:os'

export interface Ends {
	remoteAddress?: string | undefined
	remotePort?: number | undefined
	localAddress?: string | undefined
	localPort?: number | undefined
}
/**
 * The user id of a process; 'gone' where the system knows the connection but nobody stands at its
 * other end any more; undefined where this system does not tell.
 */
export type Peer = number | 'gone' | undefined

/** The system prints each word of an address in the order of its processor. */
const isLittle = endianness() === 'LE'
/** An IPv4 address inside an IPv6 one, as people write it and as the system's table does. */
const mapped = '::ffff:'
const mappedWords = isLittle ? '0000000000000000FFFF0000' : '00000000000000000000FFFF'

function wordOf(address: string): string {
	const bytes = address
		.replace(mapped, '')
		.split('.')
		.map((part) => Number(part).toString(16).padStart(2, '0').toUpperCase())
	return (isLittle ? bytes.reverse() : bytes).join('')
}
const spot = (address: string, port: number): string =>
	`${wordOf(address)}:${port.toString(16).padStart(4, '0').toUpperCase()}`

/** What stands behind a pair of ends in the table; undefined where it is not there. */
function lineOf(table: string, local: string, remote: string): string[] | undefined {
	for (const pair of [`${local} ${remote}`, `${mappedWords}${local} ${mappedWords}${remote}`]) {
		const at = table.indexOf(pair)
		if (at < 0) continue
		const end = table.indexOf('\n', at)
		const rest = table.slice(at + pair.length, end < 0 ? undefined : end)
		return rest.trim().split(/\s+/)
	}
	return undefined
}
/**
 * The process at the other end in a table of the form of Linux's /proc/net/tcp or tcp6.
 * @returns undefined where neither end of the connection is in it
 * @internal
 */
export function peerIn(table: string, ends: Ends): Peer {
	if (!ends.remoteAddress || !ends.localAddress || !ends.remotePort || !ends.localPort)
		return undefined
	// seen from the other process, its own end is the local one
	const own = spot(ends.remoteAddress, ends.remotePort)
	const other = spot(ends.localAddress, ends.localPort)
	const line = lineOf(table, own, other)
	if (!line) return lineOf(table, other, own) && 'gone'
	const [, , , , uid, , inode] = line
	// a connection that its process has let go of is listed with user 0, whoever's it was
	return inode === '0' ? 'gone' : Number(uid)
}
/** A process may hold an IPv4 connection by a socket of IPv6: both tables are one. */
const tables = ['/proc/net/tcp', '/proc/net/tcp6'] as const
function systemTable(): string {
	if (process.platform !== 'linux') return ''
	return tables
		.map((table) => {
			try {
				return readFileSync(table, 'latin1')
			} catch {
				return ''
			}
		})
		.join('\n')
}
/** A table that is read while connections come and go may miss a line once. */
const mostLooks = 3
/**
 * Looks who is at the other end of connections that came together: reading the table is the costly
 * part, and is done once for all of them. Where the system does not tell, the cookie alone guards.
 */
export function lookAround(read: () => string = systemTable): (ends: Ends) => Peer {
	const looks: string[] = []
	return (ends) => {
		let found: Peer
		for (let look = 0; look < mostLooks; look++) {
			looks[look] ??= read()
			found = peerIn(looks[look] ?? '', ends)
			if (typeof found === 'number') break
		}
		return found
	}
}
