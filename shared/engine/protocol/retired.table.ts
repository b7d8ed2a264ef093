/** Keys that clinics could set before, and the key that stands for them now. */
export const retiredKeys = {
	'sizing.adultFromYears': 'player.adultFromYears',
	'posture.adultFromYears': 'player.adultFromYears',
	'growth.adultFromYears': 'player.adultFromYears',
	'screening.minorBelowYears': 'player.adultFromYears',
	'footwear.adultFromYears': 'player.adultFromYears',
	'loading.youthBelowYears': 'player.adultFromYears',
	'insert.adultFromYears': 'player.adultFromYears',
} as const
/**
 * Keys that clinics could set before and that nothing rests on any more: pairs in use are held
 * against the band of toe room itself, raises are worked out by pair, a season is solved level by
 * level, and the club is told no counts. Their values are left out.
 */
export const droppedKeys: readonly string[] = [
	'footwear.adultTightMm',
	'footwear.adultLooseMm',
	'footwear.adultTrainerTightMm',
	'footwear.adultTrainerLooseMm',
	'season.noPairPoints',
	'season.pinPoints',
	'season.notDryPoints',
	'season.unfamiliarPoints',
	'season.shareBoundPoints',
	'insert.achillesRaiseMinMm',
	'insert.achillesRaiseMaxMm',
	'insert.legLengthPercent',
	'squad.clubCellLeast',
]
