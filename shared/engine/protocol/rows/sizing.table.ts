import { row } from '../row.ts'

const ansur = 'computed from the public ANSUR II data (2012; Gordon 2014), 4082 men, 1986 women'
const jis = 'JIS S 5037 as read on two secondary pages'
const tableA = "model of a published men's chart of width bands, fits all its rows within 0.5 mm except at US 15, where the upper edges of E and 2E are off by 1 mm"
const bands = 'own choice, no source (football boot 5 to 10 mm quoted from Healy 2005)'
const trainers = 'own choice, no source (10 to 13 mm, orthopaedic-society shoe advice, from memory; 15 mm inside, encyclopedia pages)'
const youthTrainers = 'own choice from 12 mm toe allowance and up to 5 mm growth (children; quoted from the Austrian childrens-shoe group on a secondary page)'
const real = 'own choice above the limit of one reading, 3.68 mm (2.4565 x mean absolute difference 1.50 mm, Lee 2014 J Foot Ankle Res)'
const men = 'adult men',
	women = 'adult women'

export const sizingRows = {
	'sizing.equalMm': row(0.05, 'mm', 'all players', 'half of the reading step of 0.1 mm', 'practice', 'choice'),
	'sizing.thirdReadingMm': row(2, 'mm between two readings', 'all players', 'own choice, no source (one reading has a real-change limit of 3.68 mm)', 'practice', 'choice'),
	'sizing.sideDifferenceMm': row(4, 'mm of length', 'all players', 'about half a size; more than 4 mm in 19 % of UK men (trade bulletin 2018)', 'practice', 'read-secondary'),
	'sizing.halfSizeMm': row(4.233, 'mm', 'all players', 'half a UK or US size, one sixth of an inch', 'standard', 'read'),
	'sizing.ballRatioMen': row(0.741, 'ball length / foot length', men, ansur, 'cross-sectional', 'derived'),
	'sizing.ballRatioWomen': row(0.739, 'ball length / foot length', women, ansur, 'cross-sectional', 'derived'),
	'sizing.readingSemMm': row(1.329, 'mm, one reading', 'n 130', '0.8862 x mean absolute difference 1.50 mm, Lee 2014 J Foot Ankle Res', 'cross-sectional', 'derived'),
	'sizing.lengthMeanMen': row(271.18, 'mm', men, ansur, 'cross-sectional', 'derived'),
	'sizing.lengthSdMen': row(13.1, 'mm', men, ansur, 'cross-sectional', 'derived'),
	'sizing.lengthMeanWomen': row(246.29, 'mm', women, ansur, 'cross-sectional', 'derived'),
	'sizing.lengthSdWomen': row(12.44, 'mm', women, ansur, 'cross-sectional', 'derived'),
	'sizing.breadthInterceptMen': row(38.091, 'mm', men, ansur, 'cross-sectional', 'derived'),
	'sizing.breadthSlopeMen': row(0.2352, 'mm/mm', men, ansur, 'cross-sectional', 'derived'),
	'sizing.breadthSdMen': row(4.23, 'mm', men, ansur, 'cross-sectional', 'derived'),
	'sizing.breadthInterceptWomen': row(40.16, 'mm', women, ansur, 'cross-sectional', 'derived'),
	'sizing.breadthSlopeWomen': row(0.2134, 'mm/mm', women, ansur, 'cross-sectional', 'derived'),
	'sizing.breadthSdWomen': row(3.97, 'mm', women, ansur, 'cross-sectional', 'derived'),
	'sizing.widthZ': row(1, 'z of ball width for length, either way', 'adults', 'own choice, no source', 'practice', 'choice'),
	'sizing.jisGirthEMm': row(243, 'mm at foot length 250, men, letter E', men, jis, 'standard', 'derived'),
	'sizing.jisGirthWomenLessMm': row(3, 'mm', women, jis, 'standard', 'derived'),
	'sizing.jisGirthSlope': row(0.6, 'mm/mm of size', 'adults', jis, 'standard', 'derived'),
	'sizing.jisSizeMinMenMm': row(200, 'mm, smallest printed size', men, jis, 'standard', 'read'),
	'sizing.jisSizeMaxMenMm': row(300, 'mm, largest printed size', men, jis, 'standard', 'read'),
	'sizing.jisSizeMinWomenMm': row(195, 'mm, smallest printed size', women, jis, 'standard', 'read'),
	'sizing.jisSizeMaxWomenMm': row(270, 'mm, largest printed size', women, jis, 'standard', 'read'),
	'sizing.jisLetterMm': row(6, 'mm per letter', 'adults', jis, 'standard', 'derived'),
	'sizing.jisBandBelowMm': row(3, 'mm below the centre', 'adults', jis, 'standard', 'read'),
	'sizing.usWidthBaseMm': row(78, 'mm, lower edge of C at US 5', men, tableA, 'practice', 'derived'),
	'sizing.usWidthPerSizeMm': row(3.1, 'mm per whole size', men, tableA, 'practice', 'derived'),
	'sizing.usWidthLetterMm': row(5, 'mm per letter', men, tableA, 'practice', 'derived'),
	'sizing.usWidthSizeMin': row(5, 'US men', men, tableA, 'practice', 'read'),
	'sizing.usWidthSizeMax': row(15, 'US men', men, tableA, 'practice', 'read'),
	'sizing.toeRoomAdultMinMm': row(5, 'mm', 'adults, football boots', bands, 'practice', 'choice'),
	'sizing.toeRoomAdultTargetMm': row(7.5, 'mm', 'adults, football boots', 'midpoint of the band; own choice, no source', 'practice', 'choice'),
	'sizing.toeRoomAdultMaxMm': row(10, 'mm', 'adults, football boots', bands, 'practice', 'choice'),
	'sizing.toeRoomYouthMinMm': row(8, 'mm at issue', 'players under 18, football boots', 'own choice, no source', 'practice', 'choice'),
	'sizing.toeRoomYouthTargetMm': row(10, 'mm at issue', 'players under 18, football boots', 'midpoint of the band; own choice, no source', 'practice', 'choice'),
	'sizing.toeRoomYouthMaxMm': row(12, 'mm at issue', 'players under 18, football boots', 'own choice, no source', 'practice', 'choice'),
	'sizing.trainerRoomAdultMinMm': row(10, 'mm', 'adults, trainers', trainers, 'practice', 'choice'),
	'sizing.trainerRoomAdultTargetMm': row(12.5, 'mm', 'adults, trainers', 'midpoint of the band; own choice, no source', 'practice', 'choice'),
	'sizing.trainerRoomAdultMaxMm': row(15, 'mm', 'adults, trainers', trainers, 'practice', 'choice'),
	'sizing.trainerRoomYouthMinMm': row(12, 'mm at purchase', 'players under 18, trainers', youthTrainers, 'practice', 'choice'),
	'sizing.trainerRoomYouthTargetMm': row(14.5, 'mm at purchase', 'players under 18, trainers', 'midpoint of the band; own choice, no source', 'practice', 'choice'),
	'sizing.trainerRoomYouthMaxMm': row(17, 'mm at purchase', 'players under 18, trainers', youthTrainers, 'practice', 'choice'),
	'sizing.girthInterceptMen': row(92.15, 'mm', men, ansur, 'cross-sectional', 'derived'),
	'sizing.girthSlopeMen': row(0.5895, 'mm/mm', men, ansur, 'cross-sectional', 'derived'),
	'sizing.girthSdMen': row(10.38, 'mm', men, ansur, 'cross-sectional', 'derived'),
	'sizing.girthInterceptWomen': row(86.942, 'mm', women, ansur, 'cross-sectional', 'derived'),
	'sizing.girthSlopeWomen': row(0.5732, 'mm/mm', women, ansur, 'cross-sectional', 'derived'),
	'sizing.girthSdWomen': row(9.37, 'mm', women, ansur, 'cross-sectional', 'derived'),
	'sizing.realLengthSameMm': row(4, 'mm or more, same examiner', 'all players', real, 'practice', 'choice'),
	'sizing.realLengthOtherMm': row(5, 'mm or more, other or unknown examiner', 'all players', real, 'practice', 'choice'),
	'sizing.realWidthMm': row(4, 'mm or more, same examiner', 'all players', real, 'practice', 'choice'),
	'sizing.realGirthMm': row(6, 'mm or more, same examiner', 'all players', 'one JIS letter; own choice, no source', 'practice', 'choice'),
	'sizing.labelSpreadMm': row(8, 'mm, about one EU size', 'published charts', 'comparison of three published charts for the same foot (4 to 8 mm)', 'practice', 'derived'),
} as const
