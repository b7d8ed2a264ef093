/**
 * Twelve clinical pictures of invented players: the whole assessment of each, kept as readable text
 * beside the visit.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import { elementText } from '../../shared/engine/insert/element-words.ts'
import type { Basis, Because } from '../../shared/engine/protocol/basis.ts'
import { bothSides, rounded } from '../../shared/engine/visit/sides.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'

const folder = new URL('./pictures/', import.meta.url)
const names = readdirSync(folder)
	.filter((one) => one.endsWith('.json'))
	.sort()
const reasons = (list: readonly Because[]) =>
	list.length === 0
		? ''
		: `\n      because ` +
			`${list.map((one) => `${one.measure} ${one.value}${one.unit ? ` ${one.unit}` : ''}`).join(', ')}`
const ground = (basis: Basis) => `\n      basis ${basis.source} [${basis.strength}]`
/** The decisions of an assessment in the order a clinician reads them. */
function readable(a: Assessment): string {
	const lines = [
		`AGE ${rounded(a.ageYears, 1)}`,
		`ACTION ${a.screening.action}; stopped limbs: ${a.screening.blockedSides.join(', ') || 'none'}`,
		...a.screening.items
			.filter((one) => one.action !== 'proceed')
			.map((one) => `  ${one.action}: ${one.says} (${one.id})`),
		'FINDINGS',
		...a.findings.map(
			(one) => `  ${one.level} ${one.id}: ${one.says}${reasons(one.because)}${ground(one.basis)}`,
		),
		'SEEK',
		...[...new Set(a.footwear.target.seek.map((one) => one.feature))].map(
			(feature) =>
				`  ${feature}: ${a.footwear.target.seek
					.filter((one) => one.feature === feature)
					.map((one) => one.rule)
					.join(', ')}`,
		),
		'AVOID',
		...[...new Set(a.footwear.target.avoid.map((one) => one.feature))].map(
			(feature) =>
				`  ${feature}: ${a.footwear.target.avoid
					.filter((one) => one.feature === feature)
					.map((one) => one.rule)
					.join(', ')}`,
		),
		'CHOOSE',
		...a.footwear.contradictions.map((one) => `  ${one.says}`),
		...bothSides.flatMap((side) => [
			`INSERT ${side}: ${a.insert[side].state}`,
			...a.insert[side].stoppedBy.map((one) => `  stopped by ${one.id}`),
			...a.insert[side].elements.map(
				(one) =>
					`  ${elementText(one)} (${one.where}): ` +
					`${one.says}${reasons(one.because)}${ground(one.basis)}${one.cautions.map((each) => `\n      caution ${each}`).join('')}`,
			),
		]),
		...(a.insert.wearIn.length > 0
			? ['WEAR IN', ...a.insert.wearIn.map((one) => `  ${one.when}: ${one.says}`)]
			: []),
		...(a.loading.returnSteps
			? [
					'RETURN',
					'  ' +
						`${a.loading.returnSteps.map((one) => `week ${one.week} ${rounded(one.percentOfUsual, 0)} %`).join(', ')}`,
				]
			: []),
		...(a.loading.weeks
			? [
					'WEEKS',
					...a.loading.weeks.map(
						(one) =>
							`  ${one.from}: ` +
							`${one.sum}${one.monotony === undefined ? '' : `, monotony ${rounded(one.monotony, 3)}`}${one.changePercent === undefined ? '' : `, change ${rounded(one.changePercent, 1)} %`}`,
					),
				]
			: []),
		'MISSING',
		`  ${a.missing.map((one) => one.path).join(', ')}`,
	]
	return `${lines.join('\n')}\n`
}
it('there are twelve', () => expect(names).toHaveLength(12))
it.each(names)('%s', async (name) => {
	const visit = visitSchema.parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8')))
	const text = readable(assess(visit))
	expect(text).not.toMatch(/undefined(?!:)|NaN|\[object|[≥≤→≈]|predicts|diagnoses|prevents/)
	await expect(text).toMatchFileSnapshot(`./pictures/${name.replace('.json', '.txt')}`)
})
