/**
 * The charts of the player report: one description, drawn on the page as on the screen, read back
 * from the PDF.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { assess } from '../../shared/engine/assess.ts'
import { chartsOf } from '../../shared/engine/charts/charts.ts'
import { chartSvg } from '../../shared/engine/charts/svg.ts'
import { clinicSchema } from '../../shared/engine/report/clinic.ts'
import { type Block, blocksIn, type LwDocument } from '../../shared/engine/report/document.ts'
import { plainChart } from '../../shared/engine/report/plain-chart.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { documentSentences, speakFrom } from '../../shared/engine/words/speak.ts'
import { spokenTo, state } from '../../shared/engine/words/statement.ts'
import { pagesOf, wordsOf } from './read-pages.ts'

const demo = JSON.parse(
	readFileSync(new URL('../../assets/demo/demo.json', import.meta.url), 'utf8'),
) as { clinic: unknown; players: { player: { givenName: string }; visits: unknown[] }[] }
const clinic = clinicSchema.parse(demo.clinic)
function courseOf(name: string): { visit: Visit; earlier: Visit[] } {
	const visits = demo.players
		.find(({ player }) => player.givenName === name)!
		.visits.map((visit) => visitSchema.parse(visit))
	return { visit: visits.at(-1)!, earlier: visits.slice(0, -1) }
}
const compose = (visit: Visit, earlier: Visit[]): LwDocument =>
	playerReport({
		visit,
		earlier,
		assessment: assess(visit, earlier),
		decisions: noDecisions,
		clinic,
		signedAt: '2027-02-01T09:00:00.000Z',
		draft: false,
	})
/** What a chart is drawn of, by what stands along its side. */
const sides = ['player.lunge', 'player.heelToToe', 'player.height'] as const
const drawnOf = ({ svg }: { svg: string }) =>
	sides.find((key) => svg.includes(documentSentences[key]))
const reader = { audience: 'player', told: [] } as const
type Figure = Extract<Block, { kind: 'figure' }>
const chartFigures = (document: LwDocument): Figure[] =>
	blocksIn(document.blocks).filter(
		(block): block is Figure =>
			block.kind === 'figure' && !block.alternative.startsWith('Both feet from above'),
	)
/** The heading under which a block stands. */
const under = (document: LwDocument, figure: Figure): string | undefined =>
	blocksIn(document.blocks)
		.slice(0, blocksIn(document.blocks).indexOf(figure))
		.findLast((block) => block.kind === 'heading')?.text
const { visit, earlier } = courseOf('Tui')

describe('charts in the player report', () => {
	it('stand under what they show: ankle range over time, and foot length, alone of two, under growing', () => {
		const document = compose(visit, earlier)
		expect(
			chartFigures(document).map((figure) => [under(document, figure), drawnOf(figure)]),
		).toEqual([
			[documentSentences['player.anklesOverTime'], 'player.lunge'],
			[documentSentences['player.growing'], 'player.heelToToe'],
		])
	})
	it('draw the readings that the screen draws, in plain words', () => {
		const assessment = assess(visit, earlier)
		for (const [topic, side] of [
			['sizing', 'player.heelToToe'],
			['ankle', 'player.lunge'],
		] as const) {
			const screen = chartsOf(topic, visit, earlier, assessment)[0]!
			const { chart, caption } = plainChart(screen, reader, speakFrom())!
			const figure = chartFigures(compose(visit, earlier)).find((one) => drawnOf(one) === side)!
			expect(figure.svg).toBe(
				chartSvg(chart, {
					colour: clinic.colour,
					widthPt: figure.widthPt,
					heightPt: figure.heightPt,
				}),
			)
			expect(chart.panels.map(({ series }) => series.map(({ points }) => points))).toEqual(
				screen.panels.map(({ series }) => series.map(({ points }) => points)),
			)
			expect(figure.alternative).toBe(chart.alternative)
			expect(figure.caption.startsWith(caption)).toBe(true)
		}
	})
	it('have no words for body mass: that chart does not reach a player', () => {
		const mass = chartsOf('growth', visit, earlier, assess(visit, earlier)).find(
			({ id }) => id === 'growth-mass',
		)!
		expect(plainChart(mass, reader, speakFrom())).toBeUndefined()
	})
	it(
		'reach the page with their numbers and words, their sources apart, inside the margins, for one page ' +
			'more at most',
		async () => {
			const document = compose(visit, earlier)
			const drawn = chartFigures(document)
			const without = {
				...document,
				blocks: document.blocks.filter((block) => !drawn.some((figure) => figure === block)),
			}
			const plain = await pagesOf(await renderPdf(without))
			const full = await pagesOf(await renderPdf(document))
			const text = wordsOf(full)
			const items = full.flatMap((page) => page.items)
			expect(full.length).toBeLessThanOrEqual(plain.length + 1)
			for (const words of [
				'Left ankle',
				documentSentences['player.chartToCome'],
				spokenTo('player', state('chart.course', { of: 'lungeCm', seated: false }))!,
			])
				expect(text).toContain(words)
			expect(document.notes.join(' ')).toContain('Cheng 1997')
			expect(text).not.toMatch(/Cheng|undefined|NaN|P97|Stature/)
			expect(Math.min(...items.map((item) => item.x))).toBeGreaterThanOrEqual(50)
			expect(Math.max(...items.map((item) => item.x + item.width))).toBeLessThanOrEqual(595.28 - 50)
		},
	)
	it('are left out where there is no course to show: one visit of an adult', () => {
		const { visit: adult, earlier: none } = courseOf('Owain')
		expect(none).toEqual([])
		expect(chartFigures(compose(adult, none))).toEqual([])
	})
	it('give every number of a long course as alternative, and none as caption', () => {
		const many = Array.from({ length: 12 }, (_, index) => ({
			...earlier[0]!,
			visitDate: `2025-${String(index + 1).padStart(2, '0')}-10`,
		}))
		const figure = chartFigures(compose(visit, many)).find(
			(one) => drawnOf(one) === 'player.heelToToe',
		)!
		for (const month of ['January 2025', 'December 2025', 'January 2027']) {
			expect(figure.alternative).toContain(month)
			expect(figure.caption).not.toContain(month)
		}
		expect(figure.alternative).toContain('246.5 mm on 20 January 2027')
	})
})
