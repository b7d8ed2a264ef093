/** What whoever runs the server has to do besides, in words: what was found first, then what is to do. */
import { type ServerAddress, staysHere, writtenAddress } from '../address.ts'
import type { Prepared } from './prepare.ts'
import { rolesOf } from './steps.table.ts'

const encryptionSaid = ({ settings }: Prepared, address: ServerAddress): string[] => [
	'1. Encryption (TLS). No PC ever connects without it, or to another name than its certificate says.',
	settings.ssl === 'on'
		? `   ssl is on, from ${settings.ssl_min_protocol_version ?? 'a version that is not told'} upward.`
		: '   TO DO: ssl is off. In postgresql.conf: ssl = on, with ssl_cert_file and ssl_key_file.',
	`   The certificate must bear the name by which the PCs reach the server${
		staysHere(address) ? '' : ` (${address.host})`
	}.`,
	'   One of your own is enough: its CA certificate is given to each PC.',
]
const waysInSaid = ({ settings, tag }: Prepared, { database }: ServerAddress): string[] => {
	const { pc, guest } = rolesOf(tag)
	return [
		'2. Ways in. In pg_hba.conf, above every other line for all databases; then SELECT pg_reload_conf():',
		`   hostssl  "${database}"  +${pc}  all  scram-sha-256`,
		`   hostssl  "${database}"  +${guest}  all  scram-sha-256`,
		`   host     "${database}"  +${pc}  all  reject`,
		`   host     "${database}"  +${guest}  all  reject`,
		`   listen_addresses is '${settings.listen_addresses}': the PCs must be able to reach one of them, and`,
		'   nobody else: open the port in the firewall for the network of the clinic only.',
		"   With a hosted server these lines are the provider's: have TLS made compulsory there, and let in",
		'   only the addresses of the clinic.',
	]
}
const safetySaid = ({ settings }: Prepared): string[] => {
	const off = (['fsync', 'full_page_writes', 'synchronous_commit'] as const).filter(
		(name) => settings[name] === 'off',
	)
	return [
		'3. Safety of what is written.',
		...off.map((name) => `   TO DO: ${name} is off: a power cut can lose what a PC was promised.`),
		...(off.length === 0
			? ['   fsync, full_page_writes and synchronous_commit are as they should be.']
			: []),
	]
}
const backupSaid = ({ tag }: Prepared, address: ServerAddress): string[] => {
	const { owner } = rolesOf(tag)
	const from = `--host='${address.host}' --port=${address.port}`
	return [
		'4. Backup, each night, kept on another machine:',
		`   pg_dump ${from} --username='${address.user}' --role=${owner} --format=custom \\`,
		`     --file=lastwright.dump '${address.database}'`,
		`   pg_dumpall ${from} --username='${address.user}' --roles-only --file=lastwright-roles.sql`,
		'   The second one holds the logins of the PCs: without it each has to be invited again. Both',
		'   are sealed or useless without a PC, yet keep them as you keep records. Every PC holds all',
		'   records too: after an older dump was put back, the PCs bring what it lacks. An installation',
		'   that was put out after that dump must be put out again: lastwright share revoke. Put a dump',
		'   back under another name, run share prepare for it, and rename it once it is whole.',
	]
}
const seenSaid = [
	'5. What the server sees: a random name for each installation, when it was there, how long each',
	'   record is and when it came. Never a name, a kind, a date of a visit or a word of a record.',
]
/** The whole text, ready to print and keep. */
export function adviceFor(made: Prepared, address: ServerAddress): string {
	const done =
		made.taken === 0
			? `stands at this version already (step ${made.step}); nothing was changed.`
			: `is set up (step ${made.step}).`
	return `${[
		`The database at ${writtenAddress(address)} ${done}`,
		`PostgreSQL ${made.settings.server_version}; its roles are named lastwright_${made.tag}_...`,
		...['', 'What whoever runs the server sees to:'],
		...encryptionSaid(made, address),
		...waysInSaid(made, address),
		...safetySaid(made),
		...backupSaid(made, address),
		...seenSaid,
	].join('\n')}\n`
}
