/** Which kinds of records go out in a pack, and which come home: as the ledger says of each. */
import type { KindDefinition } from '../ledger/kind.ts'
import { ledger } from '../ledger/ledger.ts'

/** Whether a kind goes out in a pack, with its player or with the clinic. */
export const goesOut = (kind: string): KindDefinition<unknown>['travels']['pack'] =>
	ledger.get(kind)?.travels.pack ?? 'no'
export const comesHome = (kind: string): boolean => ledger.get(kind)?.travels.home ?? false
