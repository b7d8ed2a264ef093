import type { CallName, InputOf, OutputOf } from '../../shared/contract.ts'

/** A service for every call of the contract. */
export type Handlers = {
	[Name in CallName]: (input: InputOf<Name>) => OutputOf<Name> | Promise<OutputOf<Name>>
}
