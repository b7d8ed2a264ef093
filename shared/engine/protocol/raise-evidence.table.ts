/** What trials and practice say of the row that a heel raise rests on, for its working. */
import type { ThresholdKey } from './protocol.ts'

export const raiseEvidence: Partial<Record<ThresholdKey, string>> = {
	'ankle.raiseBlockMm': 'No trial found for a front block. Low and Dixon 2015/16: 10 mm in football boots, n 9, no ' + 'group effect; they advise against routine use',
	'ankle.raiseApophysitisMm': 'Wiegerinck 2016, n 101: raise better than waiting at 6 weeks; no difference at 3 months ' + '(the last from memory)',
	'ankle.raiseRestrictedMm': 'No published validation. Low and Dixon 2015/16: 10 mm in football boots, n 9, no group ' + 'effect; they advise against routine use',
	'raise.midportionMm': 'Rabusin 2021, n 100: 12 mm in daily shoes, 9.6 points better than exercise at 12 weeks, below ' + 'the least difference that matters (10)',
	'posture.legLengthShareMax': 'Trial PMC6417033, n 42: correcting 70 % of the difference eased back pain (adults over 35 ' + 'at work, not players)',
}
