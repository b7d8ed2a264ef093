import { row } from '../row.ts'

/** What the audit of the clinic shows, and when a forecast is held to be wrong too often. */
export const auditRows = {
	'audit.leastCell': row(5, 'players of a cell that shows', 'all players', 'common practice, no source: counts from one to four are not published', 'practice', 'common practice'),
	'audit.leastForecasts': row(22, 'forecasts before a clinic may take its own error', 'all players', 'Wilks, Ann Math Stat 1941;12:91-96: the range of 22 values holds 80 % of all with 95 % certainty', 'standard', 'derived'),
	'audit.bandPercent': row(80, '% of the feet that a forecast band is held to', 'players under 18', 'own choice, no source: the band of the forecast states no share itself', 'practice', 'choice'),
	'audit.chancePercent': row(5, '% chance, below which a band is wrong too often', 'all players', 'exact one-sided binomial test at the customary level (standard statistics)', 'standard', 'from memory'),
	'audit.surePercent': row(95, '% certainty of an interval for a share', 'all players', 'Clopper and Pearson, Biometrika 1934;26:404-413, at the customary level', 'standard', 'from memory'),
} as const
