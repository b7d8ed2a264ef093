/** What a number that a finding rests on is called where it is no measure of the visit. */
import { ankleReadings } from './ankle.ts'
import { conditionsReadings } from './conditions.ts'
import { footwearReadings } from './footwear.ts'
import { growthReadings } from './growth.ts'
import { insertReadings } from './insert.ts'
import { loadingReadings } from './loading.ts'
import { matchReadings } from './match.ts'
import { pairsReadings } from './pairs.ts'
import { postureReadings } from './posture.ts'
import { raiseReadings } from './raise.ts'
import { screeningReadings } from './screening.ts'
import { seasonReadings } from './season.ts'
import { sizingReadings } from './sizing.ts'
import { workReadings } from './work.ts'

export const readings: Readonly<Record<string, string>> = {
	...ankleReadings,
	...conditionsReadings,
	...footwearReadings,
	...growthReadings,
	...insertReadings,
	...loadingReadings,
	...matchReadings,
	...pairsReadings,
	...postureReadings,
	...raiseReadings,
	...screeningReadings,
	...seasonReadings,
	...sizingReadings,
	...workReadings,
}
