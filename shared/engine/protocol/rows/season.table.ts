import { row } from '../row.ts'

const none = 'common practice, no source'
const own = 'own choice, no source'
const players = 'all players'
/** Points count inside one level of the rotation model alone (season/problem/levels.ts gives the order of the levels). */
export const seasonRows = {
	'season.dryingDryHours': row(20, 'h', 'football boots', `${none}; measured drying times were not found`, 'practice', 'common practice'),
	'season.dryingDampHours': row(24, 'h', 'football boots', `${none}; measured drying times were not found`, 'practice', 'common practice'),
	'season.dryingWetHours': row(48, 'h', 'football boots', `${none}; measured drying times were not found`, 'practice', 'common practice'),
	'season.breakInFirstMinutes': row(20, 'min', 'new football boots', `${none} (break-in ladder: 20 min, then 20 + half the minutes so far)`, 'practice', 'common practice'),
	'season.breakInShare': row(0.5, 'of the minutes so far', 'new football boots', `${none} (break-in ladder: 20 min, then 20 + half the minutes so far)`, 'practice', 'common practice'),
	'season.newInsertShare': row(0.5, 'of each step of the ladder', 'new football boots together with a new insert', none, 'practice', 'common practice'),
	'season.roundMinutes': row(5, 'min, steps of break-in and shortened sessions are rounded down to it', 'all players', `${own}, so that a coach can keep to the clock`, 'practice', 'choice'),
	'season.shortestPartMinutes': row(15, 'min in a pair when boots are changed inside a session', players, own, 'practice', 'choice'),
	'season.matchFromMinutes': row(150, 'min of training', 'new football boots', none, 'practice', 'common practice'),
	'season.matchesCloseHours': row(24, 'h from the end of a match to the next', players, none, 'practice', 'common practice'),
	'season.familiarDays': row(14, 'days', players, none, 'practice', 'common practice'),
	'season.lowOffsetMm': row(4, 'mm, offset and heel raise together', 'players with heel or Achilles pain', own, 'practice', 'choice'),
	'season.lowOffsetMinutes': row(200, 'min/week', 'players with heel or Achilles pain', `${own} (the weekly cap the rotation model was first timed with)`, 'practice', 'choice'),
	'season.returnShare': row(0.5, 'of the usual week', 'after bone stress or a long lay-off', none, 'practice', 'common practice'),
	'season.returnRise': row(0.1, 'a week', 'after bone stress or a long lay-off', 'Soligard et al. 2016 (below 10 % a week); a weekly figure for stud minutes was not found', 'expert', 'from memory'),
	'season.returnPlusMinutes': row(30, 'min/week', 'after bone stress or a long lay-off', none, 'practice', 'common practice'),
	'season.layOffDays': row(28, 'days off injured', players, `${own}; how long a long lay-off is was not found`, 'practice', 'choice'),
	'season.rugbyStudMm': row(21, 'mm, longest stud', 'rugby union players', 'World Rugby Regulation 12, read through a page on boots', 'standard', 'read-secondary'),
	'season.turfShare': row(0.8, 'of playing time on artificial turf', 'football players', 'Miyamori et al. 2019, BMJ Open 9:e022864 (retrospective; odds ratio 3.44 for fifth metatarsal stress fracture above 80 % against below 20 %)', 'cross-sectional', 'read'),
	'season.lifeMinutes': row(7200, 'min', 'football boots', `${none} (80 to 120 h)`, 'practice', 'common practice'),
	'season.checkShare': row(0.67, 'of expected life', 'football boots', `${none} (80 of 120 h)`, 'practice', 'common practice'),
	'season.outgrownPoints': row(2, 'points/h', 'pairs with too little toe room', `${own}, more than any boot for natural ground lies behind another on it`, 'practice', 'choice'),
	'season.changePoints': row(1, 'points per change of boots inside a session', players, own, 'practice', 'choice'),
	'season.wearPoints': row(20, 'points at a whole life', players, own, 'practice', 'choice'),
	'season.sharePoints': row(10, 'points at the whole season in one pair', players, own, 'practice', 'choice'),
	'season.switchPoints': row(2, 'points', players, own, 'practice', 'choice'),
	'season.switchHours': row(48, 'h', players, own, 'practice', 'choice'),
	'season.pricePoints': row(0.1, 'points/h of the dearest pair', players, own, 'practice', 'choice'),
	'season.gapPoints': row(2, 'points at a first session without a pair, fewer the later', players, `${own}: what is worn now leaves time to buy`, 'practice', 'choice'),
	'season.splitWeeks': row(4, 'weeks', 'players with a weekly limit', own, 'practice', 'choice'),
	'season.trainingMinutes': row(75, 'min', 'where a fixture list gives no length', own, 'practice', 'choice'),
	'season.matchMinutes': row(90, 'min', 'where a fixture list gives no length', own, 'practice', 'choice'),
	'season.trainingStartHour': row(18, 'h of the day', 'where a fixture list gives no start', own, 'practice', 'choice'),
	'season.matchStartHour': row(14, 'h of the day', 'where a fixture list gives no start', own, 'practice', 'choice'),
} as const
