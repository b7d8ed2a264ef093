/** Certificates of a test's own: one who vouches for servers, and servers good and bad. */
import { execFileSync } from 'node:child_process'
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

type ServerKind = 'good' | 'other-name' | 'expired' | 'stranger'
export interface Certificates {
	folder: string
	/** PEM of who vouches, and its file */
	ca: string
	caFile: string
	server(kind: ServerKind): { file: string; key: string }
}
const names: Readonly<Record<ServerKind, string>> = {
	good: 'DNS:localhost,IP:127.0.0.1',
	'other-name': 'DNS:records.elsewhere.example',
	expired: 'DNS:localhost,IP:127.0.0.1',
	stranger: 'DNS:localhost,IP:127.0.0.1',
}
export function makeCertificates(parent: string): Certificates {
	const folder = join(parent, 'certificates')
	mkdirSync(folder)
	chmodSync(folder, 0o711)
	const at = (name: string) => join(folder, name)
	const openssl = (...args: string[]) =>
		execFileSync('openssl', args, { cwd: folder, stdio: ['ignore', 'ignore', 'pipe'] })
	const newKey = (file: string) =>
		openssl('genpkey', '-algorithm', 'EC', '-pkeyopt', 'ec_paramgen_curve:P-256', '-out', file)
	const makeCa = (name: string) => {
		newKey(`${name}.key`)
		openssl(
			...['req', '-x509', '-new', '-key', `${name}.key`, '-subj', `/CN=${name} of a test`],
			...['-days', '2', '-out', `${name}.pem`],
		)
	}
	makeCa('ca')
	writeFileSync(at('index.txt'), '')
	const config = (kind: ServerKind): string =>
		[
			...['[ca]', 'default_ca = here', '[here]', 'database = index.txt', 'serial = serial'],
			...['new_certs_dir = .', 'default_md = sha256', 'policy = any', 'unique_subject = no'],
			...['[any]', 'commonName = supplied', '[server]', `subjectAltName = ${names[kind]}`],
		].join('\n')
	const server: Certificates['server'] = (kind) => {
		const by = kind === 'stranger' ? 'other' : 'ca'
		if (by === 'other') makeCa(by)
		newKey(`${kind}.key`)
		writeFileSync(at(`${kind}.cnf`), `${config(kind)}\n`)
		openssl(
			...['req', '-new', '-key', `${kind}.key`, '-subj', '/CN=server of a test'],
			...['-out', `${kind}.csr`],
		)
		const days =
			kind === 'expired'
				? ['-startdate', '20200101000000Z', '-enddate', '20200201000000Z']
				: ['-days', '2']
		openssl(
			...['ca', '-batch', '-notext', '-create_serial', '-config', `${kind}.cnf`],
			...['-extensions', 'server', '-cert', `${by}.pem`, '-keyfile', `${by}.key`],
			...[...days, '-in', `${kind}.csr`, '-out', `${kind}.pem`],
		)
		chmodSync(at(`${kind}.key`), 0o600)
		return { file: at(`${kind}.pem`), key: at(`${kind}.key`) }
	}
	return { folder, ca: readFileSync(at('ca.pem'), 'utf8'), caFile: at('ca.pem'), server }
}
