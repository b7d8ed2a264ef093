/**
 * Some two dozen clinical pictures of invented players: the plan of each, what each reader is told, and
 * the whole assessment, kept as readable text beside the visit.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { settledAsProposed } from '../../electron/command/demo/visits.ts'
import { assess } from '../../shared/engine/assess.ts'
import type {
	Assessment,
	FeatureWish,
	InsertSide,
	LoadingResult,
	LoadWeek,
} from '../../shared/engine/findings/assessment.ts'
import type { Basis, Because } from '../../shared/engine/protocol/basis.ts'
import { bothSides, rounded } from '../../shared/engine/visit/sides.ts'
import { type Side, visitSchema } from '../../shared/engine/visit/visit.ts'
import { elementText } from '../../shared/engine/words/en/insert-names.ts'
import { readingInWords } from '../../shared/engine/words/reading.ts'
import { planLines, toldLines } from './picture-lines.ts'

const folder = new URL('./pictures/', import.meta.url)
const names = readdirSync(folder)
	.filter((name) => name.endsWith('.json'))
	.sort()
const reasons = (list: readonly Because[]) => {
	const numbers = list.map(readingInWords)
	return numbers.length === 0 ? '' : `\n      because ${numbers.join(', ')}`
}
const ground = (basis: Basis) => `\n      basis ${basis.source} [${basis.strength}]`
/** Each feature once, with the rules that ask for it. */
const wishes = (list: readonly FeatureWish[]): string[] =>
	[...new Set(list.map(({ feature }) => feature))].map((feature) => {
		const rules = list.filter((wish) => wish.feature === feature).map(({ rule }) => rule)
		return `  ${feature}: ${rules.join(', ')}`
	})
const insertLines = (side: Side, { state, stoppedBy, elements }: InsertSide): string[] => [
	`INSERT ${side}: ${state}`,
	...stoppedBy.map(({ id }) => `  stopped by ${id}`),
	...elements.map((element) => {
		const cautions = element.cautions.map((caution) => `\n      caution ${caution}`).join('')
		const why = `${reasons(element.because)}${ground(element.basis)}${cautions}`
		return `  ${elementText(element)} (${element.where}): ${element.says}${why}`
	}),
]
function weekLine({ from, sum, monotony, changePercent }: LoadWeek): string {
	const even = monotony === undefined ? '' : `, monotony ${rounded(monotony, 3)}`
	const change = changePercent === undefined ? '' : `, change ${rounded(changePercent, 1)} %`
	return `  ${from}: ${sum}${even}${change}`
}
function loadingLines({ returnSteps, weeks }: LoadingResult): string[] {
	const steps = returnSteps?.map(
		({ week, percentOfUsual }) => `week ${week} ${rounded(percentOfUsual, 0)} %`,
	)
	return [
		...(steps ? ['RETURN', `  ${steps.join(', ')}`] : []),
		...(weeks ? ['WEEKS', ...weeks.map(weekLine)] : []),
	]
}
/** The decisions of an assessment in the order a clinician reads them. */
function readable(assessment: Assessment): string {
	const { ageYears, screening, findings, footwear, insert, loading, missing } = assessment
	const lines = [
		`AGE ${rounded(ageYears, 1)}`,
		`ACTION ${screening.action}; stopped limbs: ${screening.blockedSides.join(', ') || 'none'}`,
		...screening.items
			.filter(({ action }) => action !== 'proceed')
			.map(({ action, says, id }) => `  ${action}: ${says} (${id})`),
		'FINDINGS',
		...findings.map(
			({ level, id, says, because, basis }) =>
				`  ${level} ${id}: ${says}${reasons(because)}${ground(basis)}`,
		),
		'SEEK',
		...wishes(footwear.target.seek),
		'AVOID',
		...wishes(footwear.target.avoid),
		'CHOOSE',
		...footwear.contradictions.map(({ says }) => `  ${says}`),
		...bothSides.flatMap((side) => insertLines(side, insert[side])),
		...(insert.wearIn.length > 0
			? ['WEAR IN', ...insert.wearIn.map(({ when, says }) => `  ${when}: ${says}`)]
			: []),
		...loadingLines(loading),
		'MISSING',
		`  ${missing.map(({ path }) => path).join(', ')}`,
	]
	return `${lines.join('\n')}\n`
}
it('there are twenty-six', () => expect(names).toHaveLength(26))
it.each(names)('%s', async (name) => {
	const visit = visitSchema.parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8')))
	const assessment = assess(visit)
	const decisions = settledAsProposed(assessment)
	const parts = [
		...planLines(assessment),
		...toldLines(visit, assessment, decisions),
		readable(assessment),
	]
	const text = parts.join('\n')
	expect(text).not.toMatch(/undefined(?!:)|NaN|\[object|[≥≤→≈]|predicts|diagnoses|prevents/)
	await expect(text).toMatchFileSnapshot(`./pictures/${name.replace('.json', '.txt')}`)
})
