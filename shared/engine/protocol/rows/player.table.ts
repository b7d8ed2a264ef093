import { row } from '../row.ts'

/** What is asked of every player, whatever the room. */
export const playerRows = {
	'player.adultFromYears': row(18, 'years', 'all players', 'common practice, no source; the clot score is for 18 and over (NICE QS201)', 'practice', 'common practice'),
} as const
