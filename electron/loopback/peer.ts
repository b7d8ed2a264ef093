/** Whose process stands at the other end of a connection on this PC, where the system tells. */
import { readFileSync } from 'node:fs'

const littleEndian = (address: string): string =>
	address
		.split('.')
		.map((part) => Number(part).toString(16).padStart(2, '0').toUpperCase())
		.reverse()
		.join('')
const spot = (address: string, port: number): string =>
	`${littleEndian(address)}:${port.toString(16).padStart(4, '0').toUpperCase()}`
export interface Ends {
	remoteAddress?: string | undefined
	remotePort?: number | undefined
	localAddress?: string | undefined
	localPort?: number | undefined
}

/**
 * The user id in a table of the form of Linux's /proc/net/tcp. @returns undefined where the
 * connection is not in it
 * @internal
 */
export function uidIn(table: string, ends: Ends): number | undefined {
	if (!ends.remoteAddress || !ends.localAddress || !ends.remotePort || !ends.localPort)
		return undefined
	// seen from the other process, its own end is the local one
	const [own, other] = [
		spot(ends.remoteAddress, ends.remotePort),
		spot(ends.localAddress, ends.localPort),
	]
	for (const line of table.split('\n')) {
		const [, local, remote, , , , , uid] = line.trim().split(/\s+/)
		if (local === own && remote === other && uid !== undefined) return Number(uid)
	}
	return undefined
}
/**
 * @returns the user id of the process at the other end; undefined where this system has no such
 * table, and then the cookie alone guards
 */
export function peerUid(ends: Ends): number | undefined {
	if (process.platform !== 'linux') return undefined
	try {
		return uidIn(readFileSync('/proc/net/tcp', 'latin1'), ends)
	} catch {
		return undefined
	}
}
