import { row } from '../row.ts'

const raw = 'raw banding, Redmond 2006/2008', trial = 'trial banding, Rabusin 2021 BJSM 55:486', mtp = 'JAPMA 2002;92:269 (65 deg); secondary source for 50 deg'
const rises = 'Hébert-Losier 2017 Physiotherapy 103:446', all = 'all players'
export const postureRows = {
	'posture.rawHighlySupinatedMax': row(-5, 'FPI', all, raw, 'cross-sectional', 'from memory'),
	'posture.rawSupinatedMax': row(-1, 'FPI', all, raw, 'cross-sectional', 'read'),
	'posture.rawNormalMax': row(5, 'FPI', all, raw, 'cross-sectional', 'read'),
	'posture.rawPronatedMax': row(9, 'FPI', all, raw, 'cross-sectional', 'from memory'),
	'posture.trialSupinatedMax': row(0, 'FPI', 'adults', trial, 'trial', 'read'),
	'posture.trialNormalMax': row(7, 'FPI', 'adults', trial, 'trial', 'read'),
	'posture.asymmetryNormal': row(2, 'FPI points', 'n 930', 'The Foot 2013 (journal from memory)', 'cross-sectional', 'read'),
	'posture.asymmetrySevere': row(4, 'FPI points; above is severe', 'n 930', 'The Foot 2013 (journal from memory)', 'cross-sectional', 'read'),
	'posture.minorP85': row(6, 'FPI', 'children 6 to 11 years, n 1762', 'Gijon-Nogueron 2016', 'cross-sectional', 'read'),
	'posture.adultFromYears': row(18, 'years', all, 'common practice, no source', 'practice', 'common practice'),
	'posture.mtpFreeDeg': row(65, 'deg, off the ground', all, mtp, 'expert', 'read'),
	'posture.mtpStructuralDeg': row(50, 'deg, off the ground', all, mtp, 'expert', 'read-secondary'),
	'posture.jackDeg': row(12, 'deg, standing', all, 'Gatt 2014', 'cross-sectional', 'read'),
	'posture.navicularDropMm': row(10, 'mm', all, 'Mueller, in Nielsen 2009 JFAR 2:12 (other limits 13 and 15 mm)', 'expert', 'read-secondary'),
	'posture.riseGapPercent': row(10, '% between sides', all, 'common practice, no source', 'practice', 'common practice'),
	'posture.riseNormFromYears': row(20, 'years', 'adults', rises, 'cross-sectional', 'read'),
	'posture.riseMen20': row(37, 'rises', 'men 20-29', rises, 'cross-sectional', 'read-secondary'), 'posture.riseMen30': row(32, 'rises', 'men 30-39', rises, 'cross-sectional', 'read-secondary'),
	'posture.riseMen40': row(28, 'rises', 'men 40-49', rises, 'cross-sectional', 'read-secondary'), 'posture.riseMen50': row(23, 'rises', 'men 50-59', rises, 'cross-sectional', 'read-secondary'),
	'posture.riseMen60': row(19, 'rises', 'men 60-69', rises, 'cross-sectional', 'read-secondary'), 'posture.riseMen70': row(14, 'rises', 'men 70-79', rises, 'cross-sectional', 'read-secondary'),
	'posture.riseWomen20': row(30, 'rises', 'women 20-29', rises, 'cross-sectional', 'read-secondary'), 'posture.riseWomen30': row(27, 'rises', 'women 30-39', rises, 'cross-sectional', 'read-secondary'),
	'posture.riseWomen40': row(24, 'rises', 'women 40-49', rises, 'cross-sectional', 'read-secondary'), 'posture.riseWomen50': row(21, 'rises', 'women 50-59', rises, 'cross-sectional', 'read-secondary'),
	'posture.riseWomen60': row(19, 'rises', 'women 60-69', rises, 'cross-sectional', 'read-secondary'), 'posture.riseWomen70': row(16, 'rises', 'women 70-79', rises, 'cross-sectional', 'read-secondary'),
} as const
