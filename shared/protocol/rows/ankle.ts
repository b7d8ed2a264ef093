import { row } from '../row.ts'

const all = 'all players', memory = 'geometry of the lunge', cp = 'common practice, no source'
export const ankleRows = {
	'ankle.restrictedDeg': row(36.5, 'deg, knee bent, weight-bearing; below is restricted', 'junior basketball, n 75 (not football)', 'Backman and Danielson 2011 AJSM 39:2626', 'cohort', 'read'),
	'ankle.restrictedCm': row(9, 'cm, toe to wall; below is restricted', all, 'practice pages, which disagree (8 to 10 cm)', 'practice', 'common practice'),
	'ankle.asymmetryFlagCm': row(1.5, 'cm between legs', 'ankle patients, n 53', 'Chisholm 2012 Physiother Can 64:347', 'cross-sectional', 'read'),
	'ankle.asymmetryActCm': row(2, 'cm between legs', all, cp, 'practice', 'common practice'),
	'ankle.asymmetryActDeg': row(5, 'deg between legs', all, 'near the real-change limit 4.7 deg, Powden 2015 Man Ther 20:524', 'practice', 'derived'),
	'ankle.gastrocnemiusGapDeg': row(13, 'deg, knee bent minus straight', 'adults 18 to 40, n 20', 'Baumbach 2014 BMC MSD 15:246; Barouk 2014 FAC 19:659', 'expert', 'read'),
	'ankle.pairToleranceDeg': row(8, 'deg from geometry', all, cp, 'practice', 'derived'),
	'ankle.toePerFoot': row(0.75, 'ankle-to-toe / foot length', all, memory, 'practice', 'from memory'),
	'ankle.toeDefaultCm': row(19.9, 'cm, ankle to toe', all, memory, 'practice', 'from memory'),
	'ankle.kneeCm': row(5, 'cm, front of knee', all, memory, 'practice', 'from memory'),
	'ankle.shankCm': row(43, 'cm, shank', all, memory, 'practice', 'from memory'),
	'ankle.ballPerFoot': row(0.72, 'heel to ball / foot length', all, 'default where unmeasured (0.70 to 0.74)', 'practice', 'from memory'),
	'ankle.raiseRestrictedMm': row(4, 'mm, both feet', all, 'common practice, no source (3 to 6 mm in boots)', 'practice', 'common practice'),
	'ankle.raiseApophysitisMm': row(5, 'mm, both feet', 'growing players', 'common practice, no source (4 to 6 mm)', 'practice', 'common practice'),
	'ankle.raiseBlockMm': row(6, 'mm, both feet', all, 'common practice, no source (3 to 6 mm in boots)', 'practice', 'common practice'),
	'ankle.raiseWarnMm': row(6, 'mm in a boot', all, 'common practice, no source', 'practice', 'common practice'),
	'ankle.raiseStopMm': row(10, 'mm in a boot', all, 'common practice, no source', 'practice', 'common practice'),
	'ankle.offsetMaxMm': row(10, 'mm', all, 'football boots are mostly near 0 mm, exceptions near 10 mm (trade pages)', 'practice', 'read-secondary'),
	'ankle.demandDeg': row(1, 'deg between two pairs', all, 'own choice, no source', 'practice', 'choice'),
} as const
