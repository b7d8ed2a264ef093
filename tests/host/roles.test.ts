/**
 * Every call of the contract by every role, on records with something of everything: what is not
 * allowed is refused in words, and reception reads nothing that was measured, found or is private.
 */
import { describe, expect, test } from 'vitest'
import { textOfPdf } from '../../electron/pdf/kept.ts'
import { renderPdf } from '../../electron/pdf/render.ts'
import { type PowerName, powers } from '../../electron/services/people/rights.table.ts'
import { callsOf, listRights } from '../../electron/services/people/rights.ts'
import { type CallName, contract, type Role } from '../../shared/contract.ts'
import { privatePaths } from '../../shared/engine/visit/private.ts'
import { everyCall } from './every-call.table.ts'
import { secrets, wholeClinic, workAs } from './every-call.ts'

const names = Object.keys(contract) as CallName[]
/** In the order of the contract; what ends somebody's work or puts others in place comes last. */
const inTurn = [
	...names.filter((name) => !everyCall[name]?.last),
	...names.filter((name) => everyCall[name]?.last),
]
/** Whoever is not in the row of a call is told so, and what to do. */
const refusedWords = {
	nobody: /^The records are locked\. Unlock them first\.$/,
	others: /^This is for [a-z ]+\. You work as [a-z]+: ask them, or switch the person\.$/,
} as const

/** Keys that hold what was measured, found or decided, or what is private. */
const clinicalKeys = new Set([
	...['visit', 'earlier', 'assessment', 'findings', 'decisions', 'screening', 'prescription'],
	...['feet', 'ankles', 'posture', 'body', 'conditions', 'footwear', 'detail', 'signs', 'asked'],
	...privatePaths.map(({ path }) => path.slice(path.lastIndexOf('.') + 1)),
])
/** Thresholds of the clinic and the shelf: of no player. */
const ofNoPlayer: readonly CallName[] = ['protocol.get', 'protocol.versions', 'shelf.get']
/** The document itself, for the printer, the hand or the mail; and its first page to compare. */
const givesOut: readonly CallName[] = ['outbox.take', 'outbox.look']

function keysIn(value: unknown): string[] {
	if (Array.isArray(value)) return value.flatMap(keysIn)
	if (value === null || typeof value !== 'object') return []
	return Object.entries(value).flatMap(([key, inner]) => [key, ...keysIn(inner)])
}
async function wordsIn(name: CallName, value: unknown): Promise<string> {
	const { base64, ...words } = { ...(value as object) } as { base64?: string }
	const pages =
		base64 === undefined || givesOut.includes(name)
			? ''
			: await textOfPdf(Buffer.from(base64, 'base64'))
	return JSON.stringify([words, pages])
}
async function holdNothingClinical(name: CallName, value: unknown): Promise<void> {
	if (ofNoPlayer.includes(name)) return
	expect(
		keysIn(value).filter((key) => clinicalKeys.has(key)),
		name,
	).toEqual([])
	const words = (await wordsIn(name, value)).toLowerCase()
	for (const secret of Object.values(secrets))
		expect(words, name).not.toContain(String(secret).toLowerCase())
}

test('every call stands in the walk and in the table of roles', () => {
	expect(Object.keys(everyCall).sort()).toEqual(names.toSorted())
	expect((Object.keys(powers) as PowerName[]).flatMap(callsOf).sort()).toEqual(names.toSorted())
})
test('a line of the table of roles says of each role what every call of it allows', () => {
	const { rows } = listRights()
	for (const [at, power] of (Object.keys(powers) as PowerName[]).entries())
		for (const name of callsOf(power))
			expect(contract[name].who.filter((role) => role !== 'nobody').sort(), name).toEqual(
				rows[at]?.who.toSorted(),
			)
	expect(rows.filter(({ who }) => who.length === 0)).toEqual([])
})
type Walked = Awaited<ReturnType<Awaited<ReturnType<typeof wholeClinic>>['app']['call']>>
const isAllowed = (name: CallName, role: Role): boolean =>
	contract[name].who.includes(role) && !(role === 'nobody' && everyCall[name].whileNew)

function refusedInWords(name: CallName, role: Role, answer: Walked): void {
	const isNobody = role === 'nobody'
	expect(answer, name).toMatchObject({
		ok: false,
		code: isNobody ? 'people.locked' : 'call.not-for-this-role',
		message: expect.stringMatching(refusedWords[isNobody ? 'nobody' : 'others']),
	})
}
/** Where it is refused, then for what stands in the records, in a sentence. */
function answeredOrInTheWay(name: CallName, answer: Walked): void {
	if (answer.ok) return
	expect([name, everyCall[name].answered], answer.message).toEqual([name, false])
	expect(
		['call.not-for-this-role', 'people.locked', 'call.input-cannot-stand'],
		name,
	).not.toContain(answer.code)
	expect(answer.message, name).toMatch(/^[A-Z].*\.$/s)
}
async function walk(role: Role): Promise<{ name: CallName; value: unknown }[]> {
	const here = await wholeClinic(role === 'reception' ? renderPdf : undefined)
	const read: { name: CallName; value: unknown }[] = []
	for (const name of inTurn) {
		await workAs(here.app, role)
		const answer = await here.app.call(name, everyCall[name].input(here, role))
		if (isAllowed(name, role)) answeredOrInTheWay(name, answer)
		else refusedInWords(name, role, answer)
		if (answer.ok) read.push({ name, value: answer.value })
	}
	here.app.close()
	return read
}
describe('every call of the contract', { timeout: 120_000 }, () => {
	test.each(['nobody', 'clinician', 'student'] as const)('by %s', async (role) => {
		const read = await walk(role)
		const allowed = names.filter((name) => isAllowed(name, role))
		expect(read.length).toBeGreaterThan(allowed.length * 0.6)
	})
	test('by reception: nothing that was measured or found, and nothing private', async () => {
		const read = await walk('reception')
		expect(read.length).toBeGreaterThan(60)
		for (const { name, value } of read) await holdNothingClinical(name, value)
	})
	test('by the owner, who reads what reception does not', async () => {
		const read = await walk('owner')
		const words = await Promise.all(read.map(({ name, value }) => wordsIn(name, value)))
		for (const secret of Object.values(secrets)) expect(words.join('')).toContain(String(secret))
	})
})
