/** What is remembered of the people who work here, and which of them is at work now. */
import type { PinDigest } from '../../../shared/desk/people/pin-digest.ts'
import type { StaffRole } from '../../../shared/desk/records/people.ts'
import { ownerSlot } from '../../store/store.ts'
import { Refusal } from '../records/refusal.ts'
import type { Remembered } from '../records/remember.ts'

/** A person as a record of the kind 'person' holds them. */
export interface PersonValue {
	personId: string
	/** the name of the key slot that the person's passphrase opens */
	slot: string
	name: string
	registration: string
	role: StaffRole
	active: boolean
	pin?: PinDigest | undefined
}
export interface PersonEntry extends PersonValue {
	recordId: string
}
export class PeopleMemory {
	readonly #byId = new Map<string, PersonEntry>()
	/** who is at work; undefined while the records are locked */
	atWork: PersonEntry | undefined

	get byId(): ReadonlyMap<string, PersonEntry> {
		return this.#byId
	}
	all(): PersonEntry[] {
		return [...this.#byId.values()]
	}
	owner(): PersonEntry | undefined {
		return this.all().find((person) => person.slot === ownerSlot)
	}
	/** Undefined for nobody and for who is not in the list. */
	nameOf(personId: string | null): string | undefined {
		return personId === null ? undefined : this.#byId.get(personId)?.name
	}
	/** Who is at work. @throws Refusal while the records are locked */
	acts(): PersonEntry {
		if (!this.atWork) throw new Refusal('The records are locked. Unlock them first.')
		return this.atWork
	}
	take({ id, value }: Remembered): void {
		const person: PersonEntry = { ...(value as PersonValue), recordId: id }
		this.#byId.set(person.personId, person)
		if (this.atWork?.personId === person.personId) this.atWork = person
	}
	clear(): void {
		this.#byId.clear()
		this.atWork = undefined
	}
}
