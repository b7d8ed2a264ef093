/** How far a plan is proven the best, in words. Pure. */
import type { Plan } from '../../../shared/engine/season/plan-file.ts'
import type { Level } from '../../../shared/engine/season/problem/levels.ts'
import { rounded } from '../../../shared/engine/visit/sides.ts'

const names: Readonly<Record<Level, string>> = {
	matches: 'matches covered',
	pins: 'pins kept',
	trainings: 'trainings covered',
	suited: 'soles suited',
	dry: 'dry pairs',
	familiar: 'matches in a familiar pair',
	told: 'as told before',
	shares: 'shares of training',
	even: 'even wear',
	changes: 'few changes',
}
/** From this share on, nothing is known of how near it is. */
const unknownGap = 1
const openWords = ({ level, gap }: NonNullable<Plan['levels']>[number]): string =>
	gap >= unknownGap
		? `${names[level]}: how near is not known`
		: `${names[level]}: within ${rounded(100 * gap, 2)} % of the best`
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
	const first = done.map(({ level }) => names[level])
	return [
		first.length > 0 ? `Proven the best: ${first.join(', ')}.` : '',
		`Not proven: ${open.map(openWords).join('; ')}.`,
	]
		.filter(Boolean)
		.join(' ')
}
