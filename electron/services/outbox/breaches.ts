/** What follows a document that was sent in error: the steps, their clock, and who had access. */
import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { type Breach, countdown } from '../../../shared/desk/outbox/breach.ts'
import { numberOf, type OutboxItem } from '../../../shared/desk/outbox/item.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { itemOf, noted, putItem } from './items.ts'

type Needs = Pick<Memory, 'outbox' | 'people' | 'players'>

/** Rows of the audit trail that are looked at for who had access: a choice of this program. */
const mostAccess = 200
/** What gives access to a document, as the audit trail names it. */
const givesAccess: readonly string[] = ['read', 'send', 'print', 'export']

function putBreach({ outbox }: Pick<Memory, 'outbox'>, { keep }: Deps, breach: Breach): void {
	keep({
		kind: 'breach',
		follows: outbox.breaches.recordOf(breach.breachId),
		value: breach,
		about: breach.playerId,
		thing: breach.breachId,
	})
}
/** @throws Refusal where the item did not leave, or its steps are open */
function refuseNotSent(item: OutboxItem, noticedAt: string, at: string): void {
	if (item.breachId)
		throw new Refusal('outbox.steps-open-already', 'The steps for this one are open already.')
	if (item.sentAt === undefined && item.state !== 'uncertain' && item.taken === undefined)
		throw new Refusal(
			'outbox.not-left-yet',
			'This did not leave yet. Call it back or close it instead.',
		)
	if (noticedAt > at)
		throw new Refusal('outbox.noticed-in-future', 'The time it was noticed lies in the future.', [
			{ path: 'noticedAt', message: `given ${noticedAt}, allowed: ${at} or earlier` },
		])
}
export function sentInError(
	memory: Needs,
	deps: Deps,
	{ itemId, what, noticedAt }: InputOf<'outbox.sentInError'>,
): OutputOf<'outbox.sentInError'> {
	const item = itemOf(memory, itemId)
	const at = deps.now().toISOString()
	refuseNotSent(item, noticedAt, at)
	const by = memory.people.acts().name
	const { name, email } = item.recipient
	const breach: Breach = {
		breachId: randomUUID(),
		itemId,
		playerId: item.playerId,
		what,
		recipient: email ? `${name}, ${email}` : name,
		noticedAt,
		recordedAt: at,
		by,
		done: {},
	}
	const { breachId } = breach
	deps.store.together(() => {
		putBreach(memory, deps, breach)
		putItem(memory, deps, { ...noted(item, at, by, `Sent in error: ${what}`), breachId })
	})
	return { breachId }
}
/** Who had access to a player's documents, each with what they did, newest first. */
function accessTo({ players, people }: Needs, { store }: Deps, playerId: string): string[] {
	const ids = players.idsOf(playerId)
	const rows = store.auditPage(Number.MAX_SAFE_INTEGER, mostAccess, {
		wanted: ({ playerId: of, function: does }) =>
			of !== null && ids.includes(of) && givesAccess.includes(does),
	})
	const did = new Map<string, Set<string>>()
	for (const { personId, function: does } of rows) {
		const name = people.nameOf(personId) || 'Lastwright'
		did.set(name, (did.get(name) ?? new Set()).add(does))
	}
	return [...did].map(([name, acts]) => `${name}: ${[...acts].join(', ')}`)
}
export function listBreaches(memory: Needs, deps: Deps): OutputOf<'breaches.list'> {
	const { outbox, players } = memory
	deps.store.audit({ function: 'read', objectRef: 'breaches' })
	return {
		breaches: outbox.breaches
			.all()
			.filter((breach) => players.byId.has(breach.playerId))
			.map((breach) => ({
				...breach,
				playerName: players.nameOf(breach.playerId),
				number: numberOf(breach.itemId),
				...countdown(breach, outbox.mail.clock, deps.now().toISOString()),
				access: accessTo(memory, deps, breach.playerId),
			})),
	}
}
export function takeStep(
	memory: Needs,
	deps: Deps,
	{ breachId, step, note }: InputOf<'breaches.step'>,
): OutputOf<'breaches.step'> {
	const breach = memory.outbox.breaches.get(breachId)
	if (!breach) throw new Refusal('outbox.steps-unknown', 'These steps are not in the records.')
	const done = { at: deps.now().toISOString(), by: memory.people.acts().name, note }
	putBreach(memory, deps, { ...breach, done: { ...breach.done, [step]: done } })
	return {}
}
