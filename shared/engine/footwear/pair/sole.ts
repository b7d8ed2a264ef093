/** Whether the sole of an owned pair may be worn on any ground that is played on. */
import { rolesOfPair } from '../../facts/trainer.ts'
import { present } from '../../plain/present.ts'
import { suitability } from '../../protocol/norms/suitability.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { Sole, Surface } from '../../visit/terms.ts'
import type { Pair } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import type { Ground, PairPicture } from './ground.ts'
import { weeksLater } from './room.ts'

/** Forbidden whatever the weather. */
const isForbidden = (sole: Sole, ground: Surface): boolean =>
	Object.values(suitability[sole][ground]).every((cost) => cost === 'forbidden')
/** A pair that serves running or every day as well has its use there. */
export function soleGrounds(pair: Pair, picture: PairPicture, protocol: Protocol): Ground[] {
	const { sole } = pair
	const { grounds } = picture
	const isPlayedIn = rolesOfPair(pair).every((role) => role === 'match' || role === 'training')
	if (sole === undefined || !isPlayedIn || grounds.length === 0) return []
	if (!grounds.every((ground) => isForbidden(sole, ground))) return []
	return [
		{
			verdict: 'replace',
			statement: state('owned.sole-nowhere', { sole, grounds: [...grounds] }),
			...present({ by: weeksLater(picture, protocol.value('footwear.ownedReplaceWeeks')) }),
		},
	]
}
