/** One call from a screen: who may, whether its input can stand, its service, its audit row. */
import {
	type Answer,
	type CallName,
	contract,
	type InputOf,
	type Role,
} from '../../shared/contract.ts'
import { seesRestricted, withoutRestricted } from '../../shared/desk/visits/restricted.ts'
import type { RefusalCode } from '../../shared/desk/workplace/refusal.ts'
import { problemsOf } from '../../shared/engine/visit/problems.ts'
import type { Session } from '../services/people/session.ts'
import { acting } from '../services/records/acting.ts'
import type { Memory } from '../services/records/memory.ts'
import { heldWords } from '../store/restore.ts'
import type { Store } from '../store/store.ts'
import { refusalOf } from './faults.ts'
import type { Handlers } from './handlers.ts'
import { readRow } from './reads.ts'

export interface DispatchNeeds {
	memory: Pick<Memory, 'people'>
	store: Store
	session: Session
	handlers: Handlers
	/** why a call must wait though the person may make it; undefined where it need not */
	inTheWay: (name: CallName) => { code: RefusalCode; says: string } | undefined
	/** where faults of ours are noted, without personal data */
	note: (text: string) => void
}
/** Calls the screens make by themselves: they are no sign of a person at the keyboard. */
const unattended: readonly CallName[] = [
	'session.status',
	'drafts.save',
	'drafts.look',
	'season.progress',
	'squad.progress',
	'squad.open',
	'outreach.progress',
	'outbox.list',
]
const isCall = (name: string): name is CallName => Object.hasOwn(contract, name)

/** Answers calls by name. Never throws: what goes wrong is said in the answer. */
export function dispatcher(needs: DispatchNeeds) {
	const { memory, store, session } = needs
	return async (name: string, input: unknown): Promise<Answer<unknown>> => {
		if (!isCall(name))
			return {
				ok: false,
				code: 'call.unknown',
				message: `There is no call named ${JSON.stringify(name).slice(0, 60)}.`,
			}
		session.lockIfIdle()
		const person = memory.people.atWork
		const role: Role = store.isOpen && person ? person.role : 'nobody'
		const actor = { personId: person?.personId ?? null, role, purpose: name }
		return acting.run(actor, () => answer(needs, name, role, input))
	}
}
async function answer(
	needs: DispatchNeeds,
	name: CallName,
	role: Role,
	input: unknown,
): Promise<Answer<unknown>> {
	const { store, session, inTheWay, note } = needs
	const row = contract[name]
	// what a call would read or write is being replaced
	if (store.isHeld && name !== 'session.status')
		return { ok: false, code: 'call.held', message: heldWords }
	if (!row.who.includes(role)) {
		if (role !== 'nobody')
			store.audit({ function: 'refused', objectRef: `call:${name}`, outcome: 'refused' })
		const code = role === 'nobody' ? 'people.locked' : 'call.not-for-this-role'
		return { ok: false, code, message: refusedFor(role, name) }
	}
	if (!unattended.includes(name)) session.alive()
	const wait = inTheWay(name)
	if (wait) return { ok: false, code: wait.code, message: wait.says }
	const parsed = row.input.safeParse(input)
	if (!parsed.success)
		return {
			ok: false,
			code: 'call.input-cannot-stand',
			message: 'Some entries cannot stand. Nothing was changed.',
			problems: problemsOf(parsed.error, input),
		}
	try {
		const value = await serve(needs, name, parsed.data as InputOf<CallName>)
		return { ok: true, value: seesRestricted(role) ? value : withoutRestricted(value) }
	} catch (error) {
		return refusalOf(error, (fault) => note(`${name}: ${fault}`))
	}
}
/** The service's answer; that it was read stands in the audit trail. */
async function serve<Name extends CallName>(
	{ handlers, store }: DispatchNeeds,
	name: Name,
	input: InputOf<Name>,
): Promise<unknown> {
	const value = await handlers[name](input)
	const read = readRow(name, input)
	if (read && store.isOpen) store.audit(read)
	return value
}
function refusedFor(role: Role, name: CallName): string {
	if (role === 'nobody') return 'The records are locked. Unlock them first.'
	const allowed = contract[name].who.filter((other) => other !== 'nobody')
	return (
		`This is for ${allowed.join(' or ')}. ` + `You work as ${role}: ask them, or switch the person.`
	)
}
