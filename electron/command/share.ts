/** `share`: the server through which several PCs share records, for whoever runs it. */
import { readFileSync } from 'node:fs'
import { BadAddress, readAddress, type ServerAddress, writtenAddress } from '../share/address.ts'
import { type Wish, withServer } from '../share/connect.ts'
import {
	type InstallationStanding,
	installations,
	revokeAsAdministrator,
} from '../share/server/administer.ts'
import { adviceFor } from '../share/server/advice.ts'
import { CannotPrepare, prepare } from '../share/server/prepare.ts'
import { BadInput, readArgs, say } from './args.ts'

const addressAllowed = 'postgres://ADMINISTRATOR@HOST:PORT/DATABASE'

/** What of an address may be shown again: a password never. */
const shown = (given: string): string => given.replace(/(:\/\/[^:@/]*):[^@]*@/, '$1:...@')

function addressOf(given: string | undefined): ServerAddress {
	if (given === undefined)
		throw new BadInput([`--url: missing, given nothing, allowed: ${addressAllowed}`])
	try {
		return readAddress(given)
	} catch (error) {
		if (!(error instanceof BadAddress)) throw error
		throw new BadInput([
			`--url: ${error.message}, given "${shown(given)}", allowed: ${addressAllowed}`,
		])
	}
}
const certificate = '-----BEGIN CERTIFICATE-----'
function caOf(given: string | undefined): string | undefined {
	if (given === undefined) return undefined
	const refuse = (why: string) =>
		new BadInput([`--ca: ${why}, given "${given}", allowed: a file with certificates in PEM form`])
	let text: string
	try {
		text = readFileSync(given, 'utf8')
	} catch (error) {
		throw refuse(`cannot be read (${(error as NodeJS.ErrnoException).code})`)
	}
	if (!text.includes(certificate)) throw refuse('no certificate')
	return text
}
async function prepareServer(wish: Wish): Promise<void> {
	try {
		const made = await withServer(wish, prepare)
		say(adviceFor(made, wish.address))
	} catch (error) {
		if (!(error instanceof CannotPrepare)) throw error
		throw new BadInput([
			`--url: cannot be set up: ${error.message}, given "${writtenAddress(wish.address)}", ` +
				'allowed: an empty database, or one of this or an earlier version',
		])
	}
}
const minute = (at: Date | null): string =>
	at === null ? 'never' : `${at.toISOString().slice(0, 16).replace('T', ' ')} UTC`
function lineOf(one: InstallationStanding): string {
	const state = one.revoked === null ? 'admitted' : `put out ${minute(one.revoked)}`
	const notes = [
		...(one.missing > 0 ? [`${one.missing} records missing: its own PC brings them`] : []),
		...(one.revoked !== null && one.canLogIn
			? ['CAN STILL LOG IN: put it out again (share revoke)']
			: []),
		...(one.revoked === null && !one.canLogIn ? ['cannot log in: invite it again'] : []),
	]
	const size = `${one.records} records, ${(one.bytes / 1e6).toFixed(1)} MB`
	return [
		...[one.origin, state, `seen ${minute(one.seen)}`, size],
		...[`admitted ${minute(one.admitted)} by ${one.admittedBy}`, ...notes],
	].join('; ')
}
async function sayStanding(wish: Wish): Promise<void> {
	const found = await withServer(wish, installations)
	if (found.length === 0) say('No installation was admitted yet.\n')
	else say(`${found.map(lineOf).join('\n')}\n`)
}
async function revoke(wish: Wish, origin: string | undefined): Promise<void> {
	if (origin === undefined || !/^[0-9a-f]{12}$/.test(origin))
		throw new BadInput([
			`--installation: not the name of one, given ${origin === undefined ? 'nothing' : `"${origin}"`}, ` +
				'allowed: twelve characters as "lastwright share status" shows them',
		])
	await withServer(wish, (client) => revokeAsAdministrator(client, origin))
	say(
		`${origin} is put out: its login and its sessions have ended. What it fetched before is still ` +
			'on it, sealed.\n',
	)
}
const tasks: Record<string, (wish: Wish, installation: string | undefined) => Promise<void>> = {
	prepare: prepareServer,
	status: sayStanding,
	revoke,
}
/** Sets up the server, says who is on it, puts one out. */
export async function shareCommand(args: string[]): Promise<void> {
	const text = { type: 'string' } as const
	const { place, option } = readArgs(args, { url: text, ca: text, installation: text }, ['TASK'])
	const name = place[0] ?? ''
	const task = Object.hasOwn(tasks, name) ? tasks[name] : undefined
	if (!task)
		throw new BadInput([
			`TASK: unknown, given "${name}", allowed: ${Object.keys(tasks).join(', ')}`,
		])
	if (option.installation !== undefined && name !== 'revoke')
		throw new BadInput([
			`--installation: only with revoke, given "${option.installation}", allowed: nothing`,
		])
	await task({ address: addressOf(option.url), ca: caOf(option.ca) }, option.installation)
}
