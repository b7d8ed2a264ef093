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
/** Keys that clinics could set before and that nothing goes by any more: they are read past. */
export const droppedKeys = ['season.noPairPoints', 'season.pinPoints', 'season.notDryPoints', 'season.unfamiliarPoints', 'season.shareBoundPoints'] as const
