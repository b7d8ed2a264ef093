/**
 * Every sentence of the rooms in English, by its code. Another language is another folder with the
 * same codes: `satisfies` on its own index names what it lacks.
 */
import { ankleSentences } from './ankle.ts'
import { askedSentences } from './asked.ts'
import { chartSentences } from './charts.ts'
import { conditionsSentences } from './conditions.ts'
import { courseSentences } from './course.ts'
import { footwearSentences } from './footwear.ts'
import { gateSentences } from './gate.ts'
import { growthSentences } from './growth.ts'
import { insertSentences } from './insert.ts'
import { loadingSentences } from './loading.ts'
import { matchSentences } from './match.ts'
import { ownedSentences } from './owned.ts'
import { postureSentences } from './posture.ts'
import { prescriptionSentences } from './prescription.ts'
import { raiseSentences } from './raise.ts'
import { recheckSentences } from './recheck.ts'
import { rolesSentences } from './roles.ts'
import { screeningSentences } from './screening.ts'
import { seasonSentences } from './season.ts'
import { settledSentences } from './settled.ts'
import { signingSentences } from './signing.ts'
import { sizingSentences } from './sizing.ts'
import { workSentences } from './work.ts'

export const sentences = {
	...ankleSentences,
	...askedSentences,
	...chartSentences,
	...conditionsSentences,
	...courseSentences,
	...footwearSentences,
	...gateSentences,
	...growthSentences,
	...insertSentences,
	...loadingSentences,
	...matchSentences,
	...ownedSentences,
	...postureSentences,
	...prescriptionSentences,
	...raiseSentences,
	...recheckSentences,
	...rolesSentences,
	...screeningSentences,
	...seasonSentences,
	...settledSentences,
	...signingSentences,
	...sizingSentences,
	...workSentences,
}
