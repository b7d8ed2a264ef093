import type { Handlers } from '../../calls/handlers.ts'
import { moveHere } from '../backups/restoring.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { checkConsent, listConsents, recordConsent, withdrawConsent } from './consents.ts'
import { changeDataKey } from './data-key.ts'
import { handOver, whoTakesOver } from './hand-over.ts'
import { type LeavingNeeds, whatLeaves } from './leaving.ts'
import { changePassphrase, ownPassphrase, setPin, stillAtWork } from './own-secrets.ts'
import { listPeople, retirePerson, savePerson } from './people.ts'
import { listRights } from './rights.ts'
import type { Session } from './session.ts'

/**
 * The calls about who works here, and about unlocking.
 * @param opened what is done behind the person's work once the records were unlocked
 */
export const peopleCalls = (
	memory: LeavingNeeds,
	deps: Deps,
	session: Session,
	opened: () => void,
) =>
	({
		'session.status': () => session.status(),
		'session.setUp': (input) => session.setUp(input),
		'session.unlock': async (input) => {
			const unlocked = await session.unlock(input)
			opened()
			return unlocked
		},
		'session.unlockWithRecoveryKey': async (input) => {
			const unlocked = await session.unlockWithRecoveryKey(input)
			opened()
			return unlocked
		},
		'session.lock': () => session.lock(),
		'session.alive': () => session.alive(),
		'session.people': () => whoTakesOver(memory),
		'session.switch': (input) => handOver(memory, deps, session, input),
		'session.changePassphrase': (input) => changePassphrase(memory, deps, session, input),
		'session.setPin': (input) => setPin(memory, deps, session, input),
		'session.newRecoveryKey': async ({ passphrase }) => {
			const { personId } = await ownPassphrase(memory, deps, session, passphrase)
			return { recoveryKey: await session.paper.issue(() => stillAtWork(memory, personId)) }
		},
		'session.confirmRecoveryKey': ({ groups }) => {
			session.paper.confirm(groups)
			return {}
		},
		'session.moveHere': (input) => moveHere(memory, deps, input),
		'people.list': () => listPeople(memory, deps, session),
		'people.save': (input) => savePerson(memory, deps, session, input),
		'people.leaving': (input) => whatLeaves(memory, deps, input),
		'people.retire': (input) => retirePerson(memory, deps, session, input),
		'people.changeDataKey': () => changeDataKey(memory, deps, session),
		'people.rights': () => listRights(),
		'notices.list': () => session.notices.list(),
		'notices.seen': (input) => session.notices.seen(input),
	}) satisfies Partial<Handlers>

/** The calls about consents of players. */
export const consentCalls = (memory: Pick<Memory, 'clinic' | 'outreach' | 'players'>, deps: Deps) =>
	({
		'consents.list': (input) => listConsents(memory, deps, input),
		'consents.record': (input) => recordConsent(memory, deps, input),
		'consents.withdraw': (input) => withdrawConsent(memory, deps, input),
		'consents.check': ({ playerId, purpose, recipient }) =>
			checkConsent(memory, deps, playerId, purpose, recipient),
	}) satisfies Partial<Handlers>
