/** How far a plan is proven the best, in words. Pure. */
import type { Plan } from '../../../shared/engine/season/plan-file.ts'
import { rounded } from '../../../shared/engine/visit/sides.ts'
import { levelNames } from '../../../shared/engine/words/en/season/levels.ts'

/** From this share on, nothing is known of how near it is. */
const unknownGap = 1
const openWords = ({ level, gap }: NonNullable<Plan['levels']>[number]): string =>
	gap >= unknownGap
		? `${levelNames[level]}: how near is not known`
		: `${levelNames[level]}: within ${rounded(100 * gap, 2)} % of the best`
/** 'Proven the best: matches covered, pins kept. Not proven: even wear: within 2 % of the best.' */
export function provenWords({ levels = [], status, gap }: Plan): string {
	if (levels.length === 0)
		return status === 'optimal'
			? 'Proven the best possible.'
			: `Within ${rounded(100 * gap, 2)} % of the best possible.`
	const open = levels.filter(({ proven }) => !proven)
	const done = levels.filter(({ proven }) => proven)
	if (open.length === 0)
		return `Proven the best possible at each of ${levels.length} aims, matches first.`
	const first = done.map(({ level }) => levelNames[level])
	return [
		first.length > 0 ? `Proven the best: ${first.join(', ')}.` : '',
		`Not proven: ${open.map(openWords).join('; ')}.`,
	]
		.filter(Boolean)
		.join(' ')
}
