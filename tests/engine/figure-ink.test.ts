/** Every ink of the engine's drawings that stand on a screen follows the look. */
import { expect, it } from 'vitest'
import { inks } from '../../renderer/parts/figureInk.ts'
import { workFigure } from '../../renderer/screens/assessment/decide/workFigures.ts'
import { assess } from '../../shared/engine/assess.ts'
import { chartSvg } from '../../shared/engine/charts/svg.ts'
import { lacingIds } from '../../shared/engine/footwear/lacing.ts'
import { lacingFigure } from '../../shared/engine/footwear/lacing-figure.ts'
import { soleFigure } from '../../shared/engine/footwear/sole-figure.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { modelWith, sizeOf, studAt, visitWith } from '../published/known-shelf.ts'
import { allCharts, first, second } from './chart-visits.ts'

const inksOf = (svg: string): string[] =>
	[...svg.matchAll(/(?:fill|stroke)="(#[^"]+)"/g)].map(([, ink = '']) => ink)
const atRisk: NonNullable<Parameters<typeof soleFigure>[5]> = {
	'first metatarsal head': [{ measure: 'pain', value: 5, unit: '/10' }],
	'fifth metatarsal head': [],
	'heel centre': [],
}

it.each([
	[
		'charts',
		allCharts(second, [first]).map((chart) =>
			chartSvg(chart, { colour: '#17524f', widthPt: 350, heightPt: 205 }),
		),
	],
	[
		'a sole with a stud under a joint at risk',
		[
			soleFigure(
				modelWith({ studs: [studAt(0.7, -0.6), studAt(0.1, 0.4)] }),
				sizeOf(8, 270, 102),
				assess(visitWith()).sizing,
				'left',
				openProtocol(),
				atRisk,
			).svg,
		],
	],
	['laces', lacingIds.map((id) => lacingFigure(id, 'left').svg)],
	[
		'work on a boot',
		[workFigure('heel-raise')?.figure.svg ?? '', workFigure('stud-first')?.figure.svg ?? ''],
	],
])('%s', (_, drawings) => {
	const used = drawings.flatMap(inksOf)
	expect(used.length).toBeGreaterThan(0)
	expect(used.filter((ink) => !Object.hasOwn(inks, ink))).toEqual([])
})
