/**
 * Who gets a connection at all, and how long one may stand idle. Another user of this PC is turned
 * away before anything is read, and takes no place among ours.
 */
import type { Server } from 'node:http'
import type { Socket } from 'node:net'
import type { Ends, Peer } from './peer.ts'

interface Bounds {
	/** connections at a time */
	connections: number
	/** how long one may say nothing and take nothing, in ms */
	quietMs: number
}
const words = JSON.stringify({
	ok: false,
	code: 'call.another-user',
	message: 'This connection comes from another user of this PC.',
})
const turnedAway =
	'HTTP/1.1 403 Forbidden\r\nConnection: close\r\nContent-Type: application/json\r\n' +
	`Content-Length: ${Buffer.byteLength(words)}\r\n\r\n${words}`

/** So many are told why at a time, each for so long; more are cut without a word. Our choice. */
const mostTold = 16
const toldMs = 200

/** Tells another user's process why and cuts it. What it sends is thrown away unread. */
function turnAway(socket: Socket, told: Set<Socket>): void {
	if (told.size >= mostTold) {
		socket.destroy()
		return
	}
	told.add(socket)
	// one that is cut while it still sends would not hear the answer
	const cut = setTimeout(() => socket.destroy(), toldMs)
	cut.unref()
	socket.on('error', () => {})
	socket.once('close', () => {
		clearTimeout(cut)
		told.delete(socket)
	})
	socket.once('end', () => socket.destroy())
	socket.end(turnedAway)
	socket.resume()
}
/** A look takes some ms: under a flood of connections one is enough for all of so long a time. */
const betweenLooksMs = 25
/** So many wait for a look at most; what comes beyond them is cut. */
const mostWaiting = 1024
const ignore = (): void => {}

/** Connections that come together are looked at together; nobody reads from one that waits. */
function together(
	look: () => (ends: Ends) => Peer,
	admit: (socket: Socket, uid: Peer) => void,
): (socket: Socket) => void {
	let waiting: Socket[] = []
	let lookedAt = Number.NEGATIVE_INFINITY
	const lookAtAll = (): void => {
		const sockets = waiting
		waiting = []
		const peerOf = look()
		for (const socket of sockets) {
			socket.off('error', ignore)
			if (!socket.destroyed) admit(socket, peerOf(socket))
		}
		lookedAt = performance.now()
	}
	return (socket) => {
		if (waiting.length >= mostWaiting) {
			socket.destroy()
			return
		}
		socket.on('error', ignore)
		if (waiting.push(socket) > 1) return
		const restMs = lookedAt + betweenLooksMs - performance.now()
		if (restMs > 0) setTimeout(lookAtAll, restMs)
		else lookAtAll()
	}
}
/**
 * Stands before the server: only connections of this user reach it.
 * @param look looks at connections that came together; what it gives tells whose each is
 * @returns marks a connection on which an answer is being worked out: silence is no fault then
 */
export function guardConnections(
	server: Server,
	bounds: Bounds,
	look: () => (ends: Ends) => Peer,
): { working: <T>(socket: Socket, work: () => Promise<T>) => Promise<T> } {
	const me = process.getuid?.()
	const ours = new Set<Socket>()
	const told = new Set<Socket>()
	const answering = new WeakSet<Socket>()
	const readers = server.listeners('connection')
	const admit = (socket: Socket, uid: Peer): void => {
		if (uid !== undefined && uid !== 'gone' && me !== undefined && uid !== me)
			turnAway(socket, told)
		else if (uid === 'gone' || ours.size >= bounds.connections) socket.destroy()
		else {
			ours.add(socket)
			socket.once('close', () => ours.delete(socket))
			for (const read of readers) read.call(server, socket)
		}
	}
	server.removeAllListeners('connection')
	server.on('connection', together(look, admit))
	server.setTimeout(bounds.quietMs, (socket: Socket) => {
		if (!answering.has(socket)) socket.destroy()
	})
	return {
		working: async (socket, work) => {
			answering.add(socket)
			try {
				return await work()
			} finally {
				answering.delete(socket)
			}
		},
	}
}
