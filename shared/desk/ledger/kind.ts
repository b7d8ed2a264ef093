/** What the ledger says of one kind of record. */
import type { z } from 'zod'
import type { AuditFunction } from '../records/audit.ts'
import type { StaffRole } from '../records/people.ts'

/** Where records of a kind go besides the store they were written in. */
interface Travels {
	/** with the players that were chosen, as a version of the clinic, or not at all */
	pack: 'player' | 'clinic' | 'no'
	/** whether the file of the way back may bring it home */
	home: boolean
	/** whether several PCs with records in common give it to each other */
	share: boolean
}
/** How a record is found again: whom it is about, what it is a version of, what lists show. */
interface Found {
	about?: string | undefined
	thing?: string | undefined
	card?: unknown
}
/** From the value of one version to that of the next. */
type Upgrade = (value: unknown) => unknown

export interface KindDefinition<Value> {
	/** as it stands in every record, for ever */
	name: string
	/** of the value's form, from 1 */
	version: number
	schema: z.ZodType<Value>
	/** step i leads from version i + 1 to version i + 2; one file each */
	upgrades: readonly Upgrade[]
	/**
	 * Whether what is left of a newer record counts without the parts that cannot be read. Where half
	 * a record could permit, send or destroy something that the whole forbids, it does not.
	 */
	readsPartly: boolean
	mayWrite: readonly StaffRole[] | 'program'
	travels: Travels
	/** versions follow each other and one counts: two that follow the same one are asked about */
	chained: boolean
	/** what creating one is called in the audit trail; the next version of a 'create' is an 'update' */
	audit: AuditFunction
	words: { one: string; many: string }
	/**
	 * What a record is a version of, where the next version is this one with some entries changed:
	 * keys unknown here are then put back into it. Undefined where each record stands for itself.
	 */
	thingOf?(value: Value): string | undefined
	/**
	 * How a record of the first versions of the program, which had none of it, is found.
	 * @param followed gives the same of the record that it follows
	 */
	foundBy?(value: Value, followed: () => Found | undefined): Found | undefined
}
/** Checks a definition against its schema; gives it back as it is. */
export const defineKind = <Value>(definition: KindDefinition<Value>): KindDefinition<Value> =>
	definition
