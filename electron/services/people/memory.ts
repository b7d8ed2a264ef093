/** What is remembered of the people who work here, and which of them is at work now. */
import type { PersonValue } from '../../../shared/desk/people/person-record.ts'
import { ownerSlot } from '../../store/store.ts'
import { isLater, type Taken } from '../records/newest.ts'
import { Refusal } from '../records/refusal.ts'

export type { PersonValue } from '../../../shared/desk/people/person-record.ts'
export interface PersonEntry extends PersonValue {
	/** undefined where no record of the person can be read */
	recordId: string | undefined
}
export class PeopleMemory {
	readonly #byId = new Map<string, PersonEntry>()
	readonly #standing = new Map<string, Taken<PersonValue>>()
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
		if (!this.atWork)
			throw new Refusal('people.locked', 'The records are locked. Unlock them first.')
		return this.atWork
	}
	take(taken: Taken<PersonValue>): void {
		const { personId } = taken.value
		if (!isLater(taken, this.#standing.get(personId))) return
		this.#standing.set(personId, taken)
		this.#put({ ...taken.value, recordId: taken.id })
	}
	/** Somebody whose entry cannot be read, and who has the key all the same. */
	standIn(person: PersonValue): void {
		this.#put({ ...person, recordId: undefined })
	}
	/** The version after this one cannot be read: the person may have left, and needs a passphrase. */
	withoutPin(recordId: string): void {
		for (const person of this.#byId.values())
			if (person.recordId === recordId) this.#put({ ...person, pin: undefined })
	}
	#put(person: PersonEntry): void {
		this.#byId.set(person.personId, person)
		if (this.atWork?.personId === person.personId) this.atWork = person
	}
	forget(records: ReadonlySet<string>): void {
		for (const [personId, { id }] of this.#standing) {
			if (!records.has(id)) continue
			this.#standing.delete(personId)
			this.#byId.delete(personId)
		}
	}
	clear(): void {
		this.#byId.clear()
		this.#standing.clear()
		this.atWork = undefined
	}
}
