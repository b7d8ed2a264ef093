/** Which fields wait today since they are tests under load of a limb that waits, and why. Pure. */
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { limbsTested } from '../../../shared/engine/visit/load-tests.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { listed } from '../../../shared/engine/words/en/format.ts'
import { signInWords } from '../../../shared/engine/words/en/gate.ts'
import { privateTopicOf } from '../../../shared/engine/words/statement.ts'

/** The player may read along: a private answer is not named beside a measure. */
const inWords = (rule: string): string =>
	privateTopicOf({ code: rule, says: '' }) === undefined
		? signInWords(rule.replace(/^screening\./, ''))
		: 'an answer on Flags'
/** Why a limb is not tested today, in words; empty where it may be. */
export const waitsBecause = (rules: readonly string[]): string =>
	listed([...new Set(rules.map(inWords))])
/** Why the test at a path of the visit waits; empty where it does not, or the path is no test. */
export function notToday(
	path: string,
	visit: Pick<Visit, 'screening'>,
	testsWait: Assessment['testsWait'],
): string {
	const rules = limbsTested(path, visit).flatMap((side) => testsWait?.[side] ?? [])
	return waitsBecause(rules)
}
