import { row } from '../row.ts'

const utility = "limits stated by the maturity-offset authors' web utility (Mirwald 2002 equations)"
const mirwald = 'Mirwald et al., Med Sci Sports Exerc 2002;34(4):689-694'
const moore = 'Moore et al., Med Sci Sports Exerc 2015;47(8):1755-1764'
const monasterio = 'Monasterio et al., J Sci Med Sport 2021;24(3):218-223 (windows of 85-96, 88-93 and 88-95 are also in use)'
const salter = 'Salter et al. 2021, Int J Sports Sci Coach, doi 10.1177/17479541211020418'
const khamis = 'Khamis and Roche, Pediatrics 1994;94(4):504-507, erratum 1995;95(3):457'
const cheng = 'Cheng 1997, 2829 Hong Kong children, weight-bearing, read linearly'
const boys = 'boys',
	girls = 'girls',
	minors = 'players under 18'

export const growthRows = {
	'growth.offsetAgeMinBoys': row(9, 'years', boys, utility, 'expert', 'read'),
	'growth.offsetAgeMaxBoys': row(18, 'years', boys, utility, 'expert', 'read'),
	'growth.offsetAgeMinGirls': row(8, 'years', girls, utility, 'expert', 'read'),
	'growth.offsetAgeMaxGirls': row(16, 'years', girls, utility, 'expert', 'read'),
	'growth.offsetLimitYears': row(4, 'years either side of peak height velocity', minors, utility, 'expert', 'read'),
	'growth.mooreAgeMin': row(7.5, 'years', minors, 'fitted ages of Moore et al., Med Sci Sports Exerc 2015;47(8):1755-1764', 'cohort', 'read'),
	'growth.mooreAgeMax': row(17.5, 'years', minors, 'fitted ages of Moore et al., Med Sci Sports Exerc 2015;47(8):1755-1764', 'cohort', 'read'),
	'growth.fransenAgeMin': row(8, 'years', boys, 'Fransen et al., Pediatr Exerc Sci 2018;30(2):296-307', 'cohort', 'read'),
	'growth.fransenAgeMax': row(17, 'years', boys, 'Fransen et al., Pediatr Exerc Sci 2018;30(2):296-307', 'cohort', 'read'),
	'growth.bestAgeMinBoys': row(12, 'years', boys, utility, 'expert', 'read'),
	'growth.bestAgeMaxBoys': row(16, 'years', boys, utility, 'expert', 'read'),
	'growth.bestAgeMinGirls': row(9, 'years', girls, utility, 'expert', 'read'),
	'growth.bestAgeMaxGirls': row(13, 'years', girls, utility, 'expert', 'read'),
	'growth.sittingRatioMin': row(0.46, 'sitting height / stature', minors, 'common practice, no source', 'practice', 'common practice'),
	'growth.sittingRatioMax': row(0.58, 'sitting height / stature', minors, 'common practice, no source', 'practice', 'common practice'),
	'growth.offsetErrorYears': row(0.6, 'years (about one standard error)', minors, 'Mirwald et al., Med Sci Sports Exerc 2002;34(4):689-694', 'cohort', 'read-secondary'),
	'growth.mirwaldErrorBoys': row(0.592, 'years, one standard error', boys, mirwald, 'cohort', 'read-secondary'),
	'growth.mirwaldErrorGirls': row(0.569, 'years, one standard error', girls, mirwald, 'cohort', 'read-secondary'),
	'growth.mooreSittingErrorBoys': row(0.51, 'years, one standard error', boys, `${moore} (0.85 to 0.89 in other samples)`, 'cohort', 'read'),
	'growth.mooreErrorBoys': row(0.542, 'years, one standard error', boys, `${moore} (0.85 to 0.89 in other samples)`, 'cohort', 'from memory'),
	'growth.mooreErrorGirls': row(0.52, 'years, one standard error', girls, `${moore} (0.65 to 0.70 in other samples)`, 'cohort', 'read'),
	'growth.adultStatureMedianBoysCm': row(2.16, 'cm, median absolute error', boys, khamis, 'cohort', 'read-secondary'),
	'growth.adultStatureMedianGirlsCm': row(1.67, 'cm, median absolute error', girls, khamis, 'cohort', 'read-secondary'),
	'growth.offsetAroundYears': row(1, 'years either side, inclusive', minors, salter, 'cohort', 'read'),
	'growth.percentAroundMin': row(88, '% of adult stature, inclusive', 'academy boys', monasterio, 'cohort', 'read'),
	'growth.percentAroundMax': row(96, '% of adult stature, inclusive', 'academy boys', monasterio, 'cohort', 'read'),
	'growth.adultStatureErrorBoysCm': row(5.3, 'cm (90 % bound)', boys, khamis, 'cohort', 'read-secondary'),
	'growth.adultStatureErrorGirlsCm': row(4.3, 'cm (90 % bound)', girls, khamis, 'cohort', 'read-secondary'),
	'growth.adultStatureAgeMin': row(4, 'years', minors, khamis, 'cohort', 'read-secondary'),
	'growth.adultStatureAgeMax': row(17.5, 'years', minors, khamis, 'cohort', 'read-secondary'),
	'growth.kneePromptMinPercent': row(86, '% of adult stature', 'academy boys', 'Br J Sports Med 2021;55 Suppl 1:A121.2 (tibial tubercle: median 87.2 %)', 'cohort', 'read'),
	'growth.kneePromptMaxPercent': row(91, '% of adult stature', 'academy boys', 'Br J Sports Med 2021;55 Suppl 1:A121.2 (tibial tubercle: median 87.2 %)', 'cohort', 'read'),
	'growth.velocityMinDays': row(80, 'days', minors, 'from the error of one stature reading, Voss et al., Arch Dis Child 1990;65:1340-1344', 'practice', 'derived'),
	'growth.velocityTrendDays': row(180, 'days: below this trend only', minors, 'from the error of one stature reading, Voss et al., Arch Dis Child 1990;65:1340-1344', 'practice', 'derived'),
	'growth.statureReadingSdCm': row(0.3, 'cm', minors, 'Voss et al., Arch Dis Child 1990;65:1340-1344 (0.2 to 0.3)', 'cross-sectional', 'read'),
	'growth.shrinkCm': row(0.6, 'cm', minors, 'two reading errors, Voss et al., Arch Dis Child 1990;65:1340-1344', 'practice', 'derived'),
	'growth.fastCmPerYear': row(7.2, 'cm/y', 'boys 11 to 19 years', 'Kemper et al. 2015, Int J Sports Med (0.6 cm a month, odds ratio 1.63, 1.06-2.52)', 'cohort', 'read'),
	'growth.footRateBoysMm': row(8.5, 'mm/y', boys, cheng, 'cross-sectional', 'derived'),
	'growth.footRateGirlsMm': row(9, 'mm/y', girls, cheng, 'cross-sectional', 'derived'),
	'growth.footStopBoys': row(15, 'years', boys, cheng, 'cross-sectional', 'derived'),
	'growth.footStopEarlyGirls': row(12, 'years', girls, cheng, 'cross-sectional', 'derived'),
	'growth.footStopGirls': row(13, 'years', girls, 'between the plateau of Cheng 1997 (12) and the end of quarterly checks (14)', 'practice', 'choice'),
	'growth.footStopLateGirls': row(14, 'years', girls, 'end of quarterly checks', 'practice', 'choice'),
	'growth.footLateYears': row(1, 'years that the foot of a player before or around the growth spurt may grow on', minors, 'own choice, no source (the foot leads the spurt in stature by about two years at group level, Busscher et al. 2011)', 'practice', 'choice'),
	'growth.footLowFactor': row(0.5, 'of the mean rate', minors, 'width of the forecast band, own choice, no source', 'practice', 'choice'),
	'growth.footHighFactor': row(1.5, 'of the mean rate', minors, 'width of the forecast band, own choice, no source', 'practice', 'choice'),
	'growth.footFastMmPerYear': row(10, 'mm/y', minors, 'season rule, own choice, no source', 'practice', 'choice'),
	'growth.footIntervalMinDays': row(42, 'days', minors, 'own choice, no source: shorter intervals are mostly measuring error', 'practice', 'choice'),
	'growth.againAgeBoys': row(15, 'years', boys, 'season rule, own choice, no source', 'practice', 'choice'),
	'growth.againAgeGirls': row(14, 'years', girls, 'season rule, own choice, no source', 'practice', 'choice'),
	'growth.againMonths': row(3, 'months', minors, 'Towlson et al., J Sport Health Sci 2021;10:403-412 (every 3 to 4 months)', 'expert', 'read'),
	'growth.againFastWeeks': row(8, 'weeks', minors, 'common practice, no source (6 to 8 weeks)', 'practice', 'common practice'),
	'growth.againSlowMonths': row(6, 'months', minors, 'common practice, no source', 'practice', 'common practice'),
} as const
