import { row } from '../row.ts'

const jayanthi = 'Jayanthi et al. 2015, Am J Sports Med (case-control)'
export const loadingRows = {
	'loading.youthBelowYears': row(18, 'years', 'young players', jayanthi, 'cohort', 'read'),
	'loading.hoursOverAge': row(0, 'h/week above age in completed years', 'young players', `${jayanthi}: serious overuse injury, odds ratio 2.07`, 'cohort', 'read'),
	'loading.organisedToFreeMax': row(2, 'organised : free play', 'young players', `${jayanthi}: odds ratio 1.87`, 'cohort', 'read'),
	'loading.hoursMax': row(16, 'h/week', 'young players', 'Brenner 2016', 'expert', 'read-secondary'),
	'loading.sidestepLowBw': row(2, 'body weights', 'adults', 'sidestep, peak vertical force; football figure not found', 'expert', 'from memory'),
	'loading.sidestepHighBw': row(3, 'body weights', 'adults', 'sidestep, peak vertical force; football figure not found', 'expert', 'from memory'),
} as const
