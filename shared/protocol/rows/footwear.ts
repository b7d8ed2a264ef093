import { row } from '../row.ts'

export const footwearRows = {
	'footwear.adultFromYears': row(18, 'years', 'all players', 'common practice, no source', 'practice', 'common practice'),
	'footwear.broadZ': row(1, 'z of ball width for length', 'adults', 'own choice, no source', 'practice', 'choice'),
	'footwear.narrowZ': row(-1, 'z of ball width for length', 'adults', 'own choice, no source', 'practice', 'choice'),
	'footwear.heavyKg': row(95, 'kg', 'adults', 'common practice, no source; belief, not trial evidence', 'practice', 'common practice'),
	'footwear.adultTightMm': row(5, 'mm of toe room', 'adults, football boots', 'own choice, no source', 'practice', 'choice'),
	'footwear.adultLooseMm': row(12, 'mm of toe room', 'adults, football boots', 'own choice, no source', 'practice', 'choice'),
	'footwear.youthReplaceMm': row(5, 'mm of toe room', 'players under 18, football boots', 'own choice, no source', 'practice', 'choice'),
	'footwear.adultTrainerTightMm': row(10, 'mm of toe room', 'adults, trainers', 'own choice, no source (adults 10 to 13 mm, orthopaedic-society shoe advice, from memory)', 'practice', 'choice'),
	'footwear.adultTrainerLooseMm': row(15, 'mm of toe room', 'adults, trainers', 'own choice, no source', 'practice', 'choice'),
	'footwear.youthTrainerReplaceMm': row(8, 'mm of toe room', 'players under 18, trainers', 'own choice, no source', 'practice', 'choice'),
	'footwear.lifeCheckHours': row(80, 'h', 'football boots', 'common practice, no source (80 to 120 h)', 'practice', 'common practice'),
	'footwear.lifeReplaceHours': row(120, 'h', 'football boots', 'common practice, no source (80 to 120 h)', 'practice', 'common practice'),
} as const
