import { row } from '../row.ts'

const ottawa = 'Ottawa ankle and foot rules (Stiell, JAMA 1993)'
const wells = 'Wells 2003, N Engl J Med 349:1227; two-level score as in NICE NG158'
export const screeningRows = {
	'screening.minorBelowYears': row(18, 'years', 'all players', 'NICE QS201 (clot score for 18 and over)', 'guideline', 'read'),
	'screening.ottawaMinYears': row(6, 'years', 'children who walked before', ottawa, 'guideline', 'read'),
	'screening.ottawaMaxDays': row(10, 'days since injury', 'all players', ottawa, 'guideline', 'read'),
	'screening.wellsCalfCm': row(3, 'cm larger than the other side', 'adults', wells, 'guideline', 'read'),
	'screening.wellsLikelyScore': row(2, 'points', 'adults', wells, 'guideline', 'read'),
	'screening.wellsAlternativePoints': row(-2, 'points', 'adults', wells, 'guideline', 'read'),
} as const
