/**
 * What a shared server or the way to it refuses, by the code that Node, PostgreSQL or its own functions give, in words of a
 * practice. `kind`: `away` mends by itself and is tried again; `settings` somebody has to look into; `ended` concerns this login
 * or invitation; `server` whoever runs the server has to look into; `ours` is a fault of this program.
 */
export interface ShareFault {
	kind: 'away' | 'settings' | 'ended' | 'server' | 'ours'
	says: string
}
const notTrusted: ShareFault = {
	kind: 'settings',
	says: 'The server shows a certificate that nobody vouches for. Nothing was sent. Give the certificate of whoever vouches for it (--ca FILE), or ask whoever runs the server.',
}
const noWay: ShareFault = { kind: 'away', says: 'There is no network, or the server is not reached through it.' }
const brokeOff: ShareFault = { kind: 'away', says: 'The connection to the server broke off.' }
const comesUp: ShareFault = { kind: 'away', says: 'The server is being stopped or started.' }
const noLogin: ShareFault = {
	kind: 'ended',
	says: 'The server does not take this login: the password is another one, the login has ended, or its pg_hba.conf has no line for it.',
}
const full: ShareFault = { kind: 'server', says: 'The disk or the memory of the server is full. Whoever runs it has to make room; nothing that was written is lost.' }
const notOurs: ShareFault = {
	kind: 'settings',
	says: 'This database has not been set up for shared records, or by another version. Run "lastwright share prepare" for it.',
}
const ofThisProgram: ShareFault = { kind: 'ours', says: 'The server refused what this program sent: a fault of the program. Nothing was changed.' }

export const shareFaults: Readonly<Record<string, ShareFault>> = {
	// the way there
	ENOTFOUND: { kind: 'away', says: 'The name of the server was not found: there is no network, or a slip in the name.' },
	EAI_AGAIN: noWay,
	ENETUNREACH: noWay,
	EHOSTUNREACH: noWay,
	ENETDOWN: noWay,
	ECONNREFUSED: { kind: 'away', says: 'The server takes no connection at this port: it is down, or the port is wrong.' },
	ENOENT: { kind: 'away', says: 'There is no socket of a server in this folder: it is down, or the folder is another one.' },
	EACCES: { kind: 'settings', says: 'This account of the PC may not use the socket of the server.' },
	ECONNRESET: brokeOff,
	EPIPE: brokeOff,
	ETIMEDOUT: { kind: 'away', says: 'The server did not answer in time.' },
	LW_SILENT: { kind: 'away', says: 'The server did not answer in time, or the connection broke off.' },
	// who answers there
	LW_NO_TLS: {
		kind: 'settings',
		says: 'The server offers no encrypted connection (TLS), and none without is made. Nothing was sent. Whoever runs it has to set ssl = on.',
	},
	LW_NOT_POSTGRES: { kind: 'settings', says: 'What answers at this address is no PostgreSQL server. Check the name and the port.' },
	DEPTH_ZERO_SELF_SIGNED_CERT: notTrusted,
	SELF_SIGNED_CERT_IN_CHAIN: notTrusted,
	UNABLE_TO_VERIFY_LEAF_SIGNATURE: notTrusted,
	UNABLE_TO_GET_ISSUER_CERT: notTrusted,
	UNABLE_TO_GET_ISSUER_CERT_LOCALLY: notTrusted,
	CERT_UNTRUSTED: notTrusted,
	CERT_SIGNATURE_FAILURE: notTrusted,
	ERR_TLS_CERT_ALTNAME_INVALID: {
		kind: 'settings',
		says: 'The certificate of the server is for another name than the one in the address. Nothing was sent. Check the address; if it is right, do not go on: somebody else may be answering.',
	},
	CERT_HAS_EXPIRED: { kind: 'settings', says: 'The certificate of the server has run out. Nothing was sent. Check the date of this PC; if it is right, ask whoever runs the server.' },
	CERT_NOT_YET_VALID: { kind: 'settings', says: 'The certificate of the server is not valid yet. Nothing was sent. Check the date of this PC.' },
	ERR_SSL_WRONG_VERSION_NUMBER: { kind: 'settings', says: 'What answers at this address speaks no TLS that is understood. Check the name and the port.' },
	ERR_SSL_UNSUPPORTED_PROTOCOL: { kind: 'settings', says: 'The server offers only security that is too old to be safe (TLS 1.2 is the least). Nothing was sent. Ask whoever runs it.' },
	ERR_SSL_TLSV1_ALERT_PROTOCOL_VERSION: { kind: 'settings', says: 'Server and PC have no version of TLS in common (TLS 1.2 is the least). Nothing was sent. Ask whoever runs the server.' },
	// the login (PostgreSQL: class 28, 3D, 42)
	'28P01': noLogin,
	'28000': noLogin,
	'3D000': { kind: 'settings', says: 'There is no database of this name on the server.' },
	'42501': { kind: 'settings', says: 'This login may not do that.' },
	'3F000': notOurs,
	'42P01': notOurs,
	'42883': notOurs,
	// the server itself (classes 53, 57, 58, XX)
	'53100': full,
	'53200': full,
	'53300': { kind: 'away', says: 'The server has as many connections as it takes. It is tried again.' },
	'57P01': comesUp,
	'57P02': comesUp,
	'57P03': comesUp,
	'55P03': { kind: 'away', says: 'Another PC keeps the others waiting. It is tried again.' },
	'57014': { kind: 'away', says: 'The server took too long and was stopped.' },
	'25006': { kind: 'server', says: 'The server takes nothing new (it is read-only, or a copy of another one). Whoever runs it has to look into it.' },
	'58030': { kind: 'server', says: 'A disk of the server fails. Whoever runs it has to look into it now.' },
	XX001: { kind: 'server', says: 'The data of the server are damaged. Whoever runs it has to restore it; the PCs bring what is missing.' },
	// what its functions refuse
	LW001: { kind: 'ended', says: 'This PC is not admitted to the shared records, or no longer.' },
	LW002: { kind: 'ended', says: 'The word of the clinic has been changed meanwhile. Fetch what is new from the server, then try again.' },
	LW003: { kind: 'ended', says: 'This invitation was used or has ended. Ask for another one.' },
	LW004: { kind: 'ended', says: 'An installation of this name is or was on the server. These records are a copy: they have to take a name of their own.' },
	LW005: { kind: 'settings', says: 'There is no such installation on this server.' },
	LW006: ofThisProgram,
	LW007: { kind: 'settings', says: 'Twenty invitations are open. Wait until some have ended, or refuse them.' },
	LW008: ofThisProgram,
	// what store and server find of each other
	LW_TOO_OLD: { kind: 'settings', says: 'The shared records ask for a newer Lastwright. Install it; what is written here meanwhile stays here and goes then.' },
	LW_OTHER_NAME: { kind: 'ended', says: 'These records have taken another name since this PC was admitted: they were copied, moved or restored. It has to be invited again.' },
	LW_FORKED: {
		kind: 'ended',
		says: 'The server holds records of this PC that are not here: these records were put back to an earlier state past the program, or copied. Nothing was sent. Restore a backup in the program, which gives them a name of their own, and have this PC invited again.',
	},
}
