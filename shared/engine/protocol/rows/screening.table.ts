import { row } from '../row.ts'

const ottawa = 'Ottawa ankle and foot rules (Stiell, JAMA 1993)'
const wells = 'Wells 2003, N Engl J Med 349:1227; two-level score as in NICE NG158'
export const screeningRows = {
	'screening.ottawaMinYears': row(6, 'years', 'children who walked before', ottawa, 'guideline', 'read'),
	'screening.ottawaMaxDays': row(10, 'days since injury', 'all players', ottawa, 'guideline', 'read'),
	'screening.wellsCalfCm': row(3, 'cm larger than the other side', 'adults', wells, 'guideline', 'read'),
	'screening.wellsLikelyScore': row(2, 'points', 'adults', wells, 'guideline', 'read'),
	'screening.wellsAlternativePoints': row(-2, 'points', 'adults', wells, 'guideline', 'read'),
	'screening.ottawaPrevalence': row(0.15, 'fractures among those tested', 'all ages, 27 studies', 'Bachmann 2003, BMJ 326:417', 'cohort', 'read'),
	'screening.ottawaLrMinus': row(0.08, 'negative likelihood ratio', 'all ages, 27 studies, n 15 581', 'Bachmann 2003, BMJ 326:417 (its table and text disagree on which row is which)', 'cohort', 'read'),
	'screening.ottawaSensitivityAdult': row(91, '% of fractures found (89 to 92)', 'adults, ankle, n 8560', 'BMC Musculoskelet Disord 2022;23, s12891-022-05831-7', 'cohort', 'read'),
	'screening.ottawaSensitivityYoung': row(98.5, '% of fractures found', 'to 18 years, n 3130', 'Dowling 2009, Acad Emerg Med 16:277', 'cohort', 'read'),
	'screening.boneStressWeeks': row(2, 'weeks of pain; above asks for imaging', 'all players', 'low-risk sites: image after two weeks or a painful hop', 'practice', 'from memory'),
	'screening.limpUnassessedDays': row(7, 'days; above, not yet examined', 'children', 'NHS hospital limp guideline 2021; Queensland paediatric guideline', 'guideline', 'read'),
	'screening.limpUndiagnosedDays': row(14, 'days; above, without diagnosis', 'children', 'NHS hospital limp guideline 2021; Queensland paediatric guideline', 'guideline', 'read'),
	'screening.slippedEpiphysisOverYears': row(9, 'years; above', 'children', 'NHS hospital limp guideline 2021; Queensland paediatric guideline', 'guideline', 'read'),
	'screening.anklePressureIndex': row(0.9, 'ratio; below is low', 'adults', 'ankle-brachial pressure index', 'guideline', 'from memory'),
	'screening.diabetesAdviceBelowYears': row(12, 'years', 'children with diabetes', 'NICE NG19', 'guideline', 'read'),
	'screening.periodsMissed': row(3, 'periods in a row', 'female players', 'IOC REDs CAT2 2023, Br J Sports Med', 'expert', 'read'),
	'screening.menarcheYears': row(15, 'years', 'female players', 'IOC REDs CAT2 2023, Br J Sports Med', 'expert', 'read'),
	'screening.redsHighRiskBoneStress': row(1, 'hip neck, sacrum or pelvis, in 2 years', 'all players', 'IOC REDs CAT2 2023, Br J Sports Med', 'expert', 'read'),
	'screening.redsOtherBoneStress': row(2, 'other sites, in 2 years', 'all players', 'IOC REDs CAT2 2023, Br J Sports Med', 'expert', 'read'),
	'screening.redsMonthsLost': row(6, 'months lost in 2 years', 'all players', 'IOC REDs CAT2 2023, Br J Sports Med', 'expert', 'read'),
	'screening.morningStiffnessMin': row(30, 'min; above', 'all players', 'morning stiffness in inflammatory disease', 'practice', 'from memory'),
} as const
