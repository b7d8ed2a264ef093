import type { Deps } from '../records/deps.ts'
import type { PersonEntry, PersonValue } from './memory.ts'

/**
 * The next version of a person: a record that follows the last one, where there is one.
 * @param person as remembered, or without a record for somebody new
 */
export function personRecord(person: PersonValue & Partial<Pick<PersonEntry, 'recordId'>>) {
	const { recordId, ...value } = person
	return { kind: 'person' as const, follows: recordId, value }
}
export const keepPerson = ({ keep }: Deps, person: Parameters<typeof personRecord>[0]): string =>
	keep(personRecord(person))
