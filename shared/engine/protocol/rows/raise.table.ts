import { row } from '../row.ts'

const all = 'all players',
	cp = 'common practice, no source',
	own = 'own choice, no source'
export const raiseRows = {
	'raise.midportionMm': row(12, 'mm, both feet, in daily shoes', 'adults with mid-portion Achilles tendinopathy, n 100', 'dose of the trial of Rabusin 2021 BJSM 55:486 (not boots)', 'trial', 'read'),
	'raise.plantarHeelMm': row(6, 'mm heel above forefoot, both feet', all, 'common practice, no source (6 to 10 mm)', 'practice', 'common practice'),
	'raise.achillesOffsetShare': row(0, 'of the offset of the pair that is taken off the raise', 'adults, n 100', 'the trial of Rabusin 2021 BJSM 55:486 added lifts to the shoes worn (offset 12.3 mm, median)', 'trial', 'read'),
	'raise.apophysitisOffsetShare': row(0, 'of the offset of the pair that is taken off the raise', 'children, n 101 and n 124', 'trials added raises to the shoes worn: Wiegerinck 2016 J Pediatr Orthop 36:152, James 2016 BJSM 50:1268', 'trial', 'read'),
	'raise.plantarHeelOffsetShare': row(1, 'of the offset of the pair that is taken off the raise', all, 'practice asks for an offset of the shoe, not for a raise: common practice, no source', 'practice', 'common practice'),
	'raise.heelAboveForefootMaxMm': row(24, 'mm, offset and raise together', 'adults, n 100', 'median offset 12.3 mm and 12 mm of raise, Rabusin 2021 BJSM 55:486', 'trial', 'derived'),
	'raise.heelAboveForefootAtRiskMm': row(10, 'mm, offset and raise together, where the forefoot bears no more load', all, 'own choice, no source: no more than the usual running shoe', 'practice', 'choice'),
	'raise.insertUnderHeelMm': row(3, 'mm under the heel by an insert that is worn and was not measured', all, 'common practice, no source (shells for boots 2.5 to 3.5 mm)', 'practice', 'common practice'),
	'raise.stepMm': row(1, 'mm, steps in which a leg-length raise is made', all, own, 'practice', 'choice'),
	'raise.leastMm': row(2, 'mm; a smaller raise for both feet is not made', all, own, 'practice', 'choice'),
	'raise.sameMm': row(1, 'mm; a raise already worn that differs by no more is left', all, own, 'practice', 'choice'),
	'raise.bootOffsetMm': row(0, 'mm, offset of a boot still to be chosen', all, 'trade pages: most football boots are nearly flat', 'practice', 'read-secondary'),
	'raise.trainerOffsetMm': row(10, 'mm, offset of a trainer still to be chosen', all, 'common practice, no source (8 to 12 mm)', 'practice', 'common practice'),
	'raise.outsoleBallShare': row(0.5, 'of a raise on the outsole that goes under the ball', all, 'trade pages: whole at the heel, half at the ball', 'practice', 'read-secondary'),
	'raise.shortByMm': row(2, 'mm short of the least toe room; from here no raise', all, own, 'practice', 'choice'),
	'raise.trainingAfterDays': row(7, 'days in everyday shoes before training', all, cp, 'practice', 'common practice'),
	'raise.matchAfterDays': row(14, 'days before a match at the earliest', all, cp, 'practice', 'common practice'),
	'raise.reviewWeeks': row(6, 'weeks to the re-check of a raise', all, 'common practice, no source (4 to 6 weeks); 6 weeks in Wiegerinck 2016 J Pediatr Orthop 36:152', 'practice', 'common practice'),
} as const
