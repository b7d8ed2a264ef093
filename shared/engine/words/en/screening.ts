/** What the screening room says. */
import { boneSentences } from './screening/bone.ts'
import { recordedConditionSentences } from './screening/conditions.ts'
import { diabetesAndClotSentences } from './screening/diabetes-and-clot.ts'
import { generalSentences } from './screening/general.ts'
import { injurySentences } from './screening/injury.ts'
import { limbSentences } from './screening/limb.ts'
import { privateSentences } from './screening/private.ts'

export const screeningSentences = {
	...generalSentences,
	...privateSentences,
	...recordedConditionSentences,
	...injurySentences,
	...boneSentences,
	...limbSentences,
	...diabetesAndClotSentences,
}
/** Names of its numbers that are no measure of the visit. */
export const screeningReadings = {
	screeningAnswer: 'answer',
	screeningAnswers: 'answers',
	wellsScore: 'Wells score',
	questionsNotAsked: 'questions not asked',
	openSince: 'open since',
	outcomeOn: 'outcome of',
	diabeticFootRisk: 'foot risk in diabetes',
}
