import type { Card } from '../../../shared/contract.ts'

/** What the last save had to say: players on record who are like this one. */
export interface SavedNotice {
	playerId: string
	similar: Card[]
}
