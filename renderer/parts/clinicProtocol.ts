/** The protocol in force on the screens: the same thresholds that the host signs with. */
import {
	openProtocol,
	type Protocol,
	type ProtocolFile,
	shippedProtocol,
} from '../../shared/engine/protocol/protocol.ts'
import { call } from '../host.ts'

let now: Protocol = openProtocol(shippedProtocol)
/** Follows the clinic's protocol; a screen loads it before it assesses. */
export const clinicProtocol: Protocol = {
	get file() {
		return now.file
	},
	value: (key) => now.value(key),
	basis: (rule, key) => now.basis(rule, key),
	identity: () => now.identity(),
	row: (key) => now.row(key),
}
/**
 * Asks the host for the protocol and puts it in force here. @throws HostRefusal where it cannot be
 * read
 */
export async function loadProtocol(): Promise<ProtocolFile> {
	const { file } = await call('protocol.get', {})
	now = openProtocol(file)
	return file
}
