/** A pasted block: by the names in it, or by place; never a value where it was not meant. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planBlock } from '../../renderer/parts/pasteBlock.ts'
import { pasteNames } from '../../renderer/parts/pasteNames.table.ts'
import { headingOf } from '../../renderer/parts/pasteTable.ts'
import { catalogue } from '../../shared/engine/visit/measures/catalogue.ts'

const feet = ['heelToToeMm', 'heelToBallMm', 'ballWidthMm', 'ballGirthMm'].map((key) => [
	`feet.left.${key}`,
	`feet.right.${key}`,
])
const plan = (text: string, at = 'feet.left.heelToToeMm') => planBlock(text, feet, at)
/** Path and value, or the name of what was left out. */
const read = (text: string) =>
	Object.fromEntries(
		plan(text).cells.map(({ path, name, judged }) => [
			judged.error === undefined ? path : name,
			judged.error ?? judged.notMeasured ?? judged.value,
		]),
	)

describe('a block with names', () => {
	it.each([
		['\tLeft\tRight\nHeel to toe\t246\t249\nHeel to ball\t178\t180'],
		// another order, other words, other units, right first
		['Foot\tR (mm)\tL (mm)\nball length\t180\t178\nFoot length\t249\t246'],
		['Heel to toe (cm)\t24.6\t24,9\nHeel to ball\t17.8 cm\t180'],
		['Left heel to toe\t246\nRight heel to toe\t249\nHeel to ball L\t178\nHeel to ball R\t180'],
		[
			'Heel to toe, left: 246\nHeel to toe, right: 249\nHeel to ball, left: 178\nheel to ball right 180',
		],
		['Side\tHeel to toe\tHeel to ball\nLeft\t246\t178\nRight\t249\t180'],
		['Heel to toe    246    249\nHeel to ball   178    180'],
		['| | left | right |\n| Heel to toe | 246 | 249 |\n| Heel to ball | 178 | 180 |'],
	])('%j goes by them', (text) => {
		expect(plan(text).by).toBe('names')
		expect(read(text)).toEqual({
			'feet.left.heelToToeMm': 246,
			'feet.right.heelToToeMm': 249,
			'feet.left.heelToBallMm': 178,
			'feet.right.heelToBallMm': 180,
		})
	})
	it('a value is never offered to a field of another name', () =>
		expect(read('Arch height\t32\t33\nHeel to toe\t251\t252')).toEqual({
			'Arch height': 'No field of the visit has this name.',
			'feet.left.heelToToeMm': 251,
			'feet.right.heelToToeMm': 252,
		}))
	it('words that no field knows do not push the values along', () => {
		const { by, cells } = plan('Arch height\t32\t33\nToe spread\t4\t5')
		expect(by).toBe('names')
		expect(cells.every(({ path }) => path === undefined)).toBe(true)
	})
	it('reads several values of one field as its readings, and reasons as reasons', () =>
		expect(read('\tL\tR\nHeel to toe\t246\tnp\nHeel to toe\t247\t\nStature\t158.4 158.6')).toEqual({
			'feet.left.heelToToeMm': [246, 247],
			'feet.right.heelToToeMm': 'pain',
			'body.statureCm': [158.4, 158.6],
		}))
	it('asks for the side where one value could be either', () =>
		expect(read('Heel to toe\t246')).toEqual({
			'Heel to toe': 'Whether left or right is not said.',
		}))
	it('names a term that the field does not have', () => {
		const [cell] = plan('End feel, left\tcalf-stretch').cells
		expect(cell).toMatchObject({ path: 'ankles.left.endFeel', judged: { value: 'calf-stretch' } })
		const [wrong] = plan('End feel, left\trubbery').cells
		expect(wrong?.judged.error).toContain('rubbery')
	})
	it('whatever the order of its lines, each value goes to its own name', () => {
		const labels = ['Heel to toe', 'Heel to ball', 'Ball width', 'Ball girth']
		fc.assert(
			fc.property(
				fc.shuffledSubarray(labels, { minLength: 1 }),
				fc.boolean(),
				(chosen, rightFirst) => {
					const value = (label: string, side: string) =>
						(side === 'left' ? 100 : 200) + labels.indexOf(label)
					const sides = rightFirst ? ['right', 'left'] : ['left', 'right']
					const lines = chosen.map((label) =>
						[label, ...sides.map((side) => value(label, side))].join('\t'),
					)
					const { cells } = plan([['', ...sides].join('\t'), ...lines].join('\n'))
					expect(cells).toHaveLength(2 * chosen.length)
					for (const { path = '', text } of cells) {
						const [, side = '', key] = path.split('.')
						const label = catalogue.find((placed) => placed.key === key)?.measure.label ?? ''
						expect(Number(text)).toBe(value(label, side))
					}
				},
			),
		)
	})
})
describe('a block of values alone', () => {
	it('goes by place, from the field that is chosen', () => {
		expect(plan('246\t249\n178\t180').by).toBe('place')
		expect(
			plan('246\t249\n178\t180', 'feet.left.heelToBallMm').cells.map(({ path }) => path),
		).toEqual([
			'feet.left.heelToBallMm',
			'feet.right.heelToBallMm',
			'feet.left.ballWidthMm',
			'feet.right.ballWidthMm',
		])
	})
	it('a value that is none is named, where the words beside it are no name', () => {
		const cells = plan('246\t999').cells
		expect(cells[1]?.judged.error).toContain('999 is outside')
	})
})
describe('names', () => {
	it('are those of measures that exist', () => {
		const keys = catalogue.map(({ key }) => key)
		expect(Object.keys(pasteNames).filter((key) => !keys.includes(key))).toEqual([])
	})
	it('every measure is found by its label and by its name, with and without its unit', () => {
		for (const placed of catalogue) {
			const { label, name, kind } = placed.measure
			if (kind === 'note') continue
			for (const words of [label, name]) {
				expect(headingOf(words)?.measure?.key, words).toBe(placed.key)
				expect(headingOf(`${words} (mm)`), words).toMatchObject({ measure: { key: placed.key } })
			}
		}
	})
	it('no name means two measures', () => {
		const said = catalogue.flatMap(({ key, measure }) => [
			...new Set([
				measure.label.toLowerCase(),
				measure.name.toLowerCase(),
				...(pasteNames[key] ?? []),
			]),
		])
		expect(said.filter((name, index) => said.indexOf(name) !== index)).toEqual([])
	})
})
