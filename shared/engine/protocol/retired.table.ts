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
