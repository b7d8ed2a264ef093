import { row } from '../row.ts'

const jayanthi = 'Jayanthi et al. 2015, Am J Sports Med (case-control)'
export const loadingRows = {
	'loading.hoursOverAge': row(0, 'h/week above age in completed years', 'young players', `${jayanthi}: serious overuse injury, odds ratio 2.07`, 'cohort', 'read'),
	'loading.organisedToFreeMax': row(2, 'organised : free play', 'young players', `${jayanthi}: odds ratio 1.87`, 'cohort', 'read'),
	'loading.hoursMax': row(16, 'h/week in all; above', 'young players', 'Brenner 2016', 'expert', 'read-secondary'),
	'loading.sidestepLowBw': row(2, 'body weights', 'adults', 'sidestep, peak vertical force; football figure not found', 'expert', 'from memory'),
	'loading.sidestepHighBw': row(3, 'body weights', 'adults', 'sidestep, peak vertical force; football figure not found', 'expert', 'from memory'),
	'loading.runFirstLowBw': row(1.3, 'body weights', 'running 2.4 to 4.0 m/s, n 5', 'Ricard and Veatch 1994', 'cross-sectional', 'read'),
	'loading.runFirstHighBw': row(2.01, 'body weights', 'running 2.4 to 4.0 m/s, n 5', 'Ricard and Veatch 1994', 'cross-sectional', 'read'),
	'loading.runActiveLowBw': row(2, 'body weights', 'adults', 'running, active peak', 'expert', 'from memory'),
	'loading.runActiveHighBw': row(3, 'body weights', 'adults', 'running, active peak', 'expert', 'from memory'),
	'loading.kickLowBw': row(2.5, 'body weights', 'adults', 'standing leg of a kick, or sprint', 'expert', 'from memory'),
	'loading.kickHighBw': row(3.5, 'body weights', 'adults', 'standing leg of a kick, or sprint', 'expert', 'from memory'),
	'loading.landingLowBw': row(3, 'body weights', 'adults', 'single-leg jump landing; drop and rebound 6 and more', 'expert', 'from memory'),
	'loading.landingHighBw': row(5, 'body weights', 'adults', 'single-leg jump landing; drop and rebound 6 and more', 'expert', 'from memory'),
	'loading.weeklyRisePercent': row(10, '% a week', 'all players', 'Soligard 2016, IOC statement', 'expert', 'from memory'),
	'loading.weeklyRiseCapPercent': row(20, '% a week', 'all players', 'common practice, no source', 'practice', 'common practice'),
	'loading.easierWeekEvery': row(4, 'weeks', 'all players', 'common practice, no source', 'practice', 'common practice'),
	'loading.easierWeekPercent': row(80, '% of the level reached', 'all players', 'own choice, no source', 'practice', 'choice'),
	'loading.returnStartPercent': row(50, '% of the usual weekly load', 'after a bone stress injury or long lay-off', 'common practice, no source', 'practice', 'common practice'),
	'loading.returnMostWeeks': row(26, 'weeks', 'length of the table', 'own choice, no source', 'practice', 'choice'),
	'loading.monthsInOneSport': row(8, 'months a year; above', 'young players', 'criterion of specialisation, Jayanthi et al. 2015: odds ratio for injury 1.27', 'cohort', 'read'),
	'loading.daysOffPerWeek': row(1, 'days a week; below', 'young players', 'paediatric advice of 1 to 2 days off a week', 'expert', 'from memory'),
} as const
