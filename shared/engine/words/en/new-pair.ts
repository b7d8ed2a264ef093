/** What a pair that is still to be chosen is called, by what it is worn for. */
import type { PairRole } from '../../visit/terms.ts'

export const newPairNames: Readonly<Record<PairRole, string>> = {
	match: 'new match pair',
	training: 'new training pair',
	running: 'new running pair',
	everyday: 'new everyday pair',
}
