/**
 * Why no connection to the mail server came about, by the code that Node gives, in words of a
 * practice. `settings`: it will not mend by itself, somebody has to look.
 */
interface ConnectionFault {
	kind: 'network' | 'settings'
	says: string
}
const notTrusted: ConnectionFault = {
	kind: 'settings',
	says: 'The mail server shows a certificate that nobody vouches for. Ask whoever runs it: either the ' + 'name in the mail settings is wrong, or its own certificate belongs into the mail settings. ' + 'Nothing was sent.',
}
const wrongPort: ConnectionFault = {
	kind: 'settings',
	says: 'The mail server does not speak the kind of security that the mail settings say. Try the other ' + 'one there, with its port: 465 for TLS, 587 for STARTTLS (RFC 8314). Nothing was sent.',
}
const noWay: ConnectionFault = {
	kind: 'network',
	says: 'There is no network, or the mail server is not reached through it.',
}
export const connectionFaults: Readonly<Record<string, ConnectionFault>> = {
	DEPTH_ZERO_SELF_SIGNED_CERT: notTrusted,
	SELF_SIGNED_CERT_IN_CHAIN: notTrusted,
	UNABLE_TO_VERIFY_LEAF_SIGNATURE: notTrusted,
	UNABLE_TO_GET_ISSUER_CERT: notTrusted,
	UNABLE_TO_GET_ISSUER_CERT_LOCALLY: notTrusted,
	CERT_UNTRUSTED: notTrusted,
	ERR_TLS_CERT_ALTNAME_INVALID: {
		kind: 'settings',
		says: 'The certificate of the mail server is for another name than the one in the mail settings. ' + 'Check the name there; if it is right, do not send: somebody else may be answering. ' + 'Nothing was sent.',
	},
	CERT_HAS_EXPIRED: {
		kind: 'settings',
		says: 'The certificate of the mail server has run out. Check the date of this PC; if it is right, ' + 'ask whoever runs the server. Nothing was sent.',
	},
	CERT_NOT_YET_VALID: {
		kind: 'settings',
		says: 'The certificate of the mail server is not valid yet. Check the date of this PC. Nothing was ' + 'sent.',
	},
	ERR_SSL_WRONG_VERSION_NUMBER: wrongPort,
	ERR_SSL_UNSUPPORTED_PROTOCOL: {
		kind: 'settings',
		says: 'The mail server offers only security that is too old to be safe (TLS 1.2 is the least). Ask ' + 'whoever runs it. Nothing was sent.',
	},
	ENOTFOUND: {
		kind: 'network',
		says: 'The name of the mail server was not found: there is no network, or a slip in the name.',
	},
	EAI_AGAIN: noWay,
	ENETUNREACH: noWay,
	EHOSTUNREACH: noWay,
	ENETDOWN: noWay,
	ECONNREFUSED: {
		kind: 'network',
		says: 'The mail server takes no connection at this port: it is down, or the port is wrong.',
	},
	ECONNRESET: { kind: 'network', says: 'The connection to the mail server broke off.' },
	EPIPE: { kind: 'network', says: 'The connection to the mail server broke off.' },
	ETIMEDOUT: { kind: 'network', says: 'The mail server did not answer in time.' },
}
