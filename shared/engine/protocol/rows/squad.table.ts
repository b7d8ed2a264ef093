import { row } from '../row.ts'

const asked = 'common practice, no source'
/** When a change since the last visit is asked about before going on: the two players may have been swapped. */
export const squadRows = {
	'squad.footShorterMm': row(4, 'mm shorter than at the last visit', 'all players', asked, 'practice', 'common practice'),
	'squad.footGrownMmPerYear': row(20, 'mm a year longer', 'all players', asked, 'practice', 'common practice'),
	'squad.statureDownCm': row(1, 'cm less than at the last visit', 'all players', asked, 'practice', 'common practice'),
	'squad.statureUpCmPerYear': row(15, 'cm a year more', 'all players', asked, 'practice', 'common practice'),
	'squad.massChangePercent': row(25, '% of the mass at the last visit, a year', 'all players', asked, 'practice', 'common practice'),
	'squad.sideDifferenceMm': row(12, 'mm between left and right foot', 'all players', asked, 'practice', 'common practice'),
} as const
