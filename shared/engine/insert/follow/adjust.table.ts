/**
 * What is proposed where an insert gives trouble: of the rows of a place the first that the insert
 * has something for. That it is adjusted so is common practice, no source; how much is a row of the
 * protocol, or is left to whoever makes it.
 */
import type { ThresholdKey } from '../../protocol/protocol.ts'
import type { InsertAct, InsertPlace } from '../../visit/terms.ts'
import type { ElementId } from '../../words/en/insert-names.ts'

export interface AdjustRow {
	act: InsertAct
	element?: ElementId
	/** Only where the insert has the element. */
	whereHas?: true
	amount?: { key: ThresholdKey; unit: 'mm' | 'deg' }
}
const onceMm = { key: 'insert.adjustMm', unit: 'mm' } as const
const onceDeg = { key: 'insert.adjustDeg', unit: 'deg' } as const
const lower = (element: ElementId, amount: AdjustRow['amount']): AdjustRow => ({
	act: 'take-off',
	element,
	whereHas: true,
	...(amount && { amount }),
})
const grindShell: AdjustRow = { act: 'grind', element: 'shell', whereHas: true, amount: onceMm }
const judges: AdjustRow = { act: 'maker-judges' }

export const adjustRows: Readonly<Record<InsertPlace, readonly AdjustRow[]>> = {
	heel: [{ act: 'widen', element: 'heel-aperture', whereHas: true }, lower('medial-skive', onceMm), lower('lateral-skive', onceMm), { act: 'replace', element: 'heel-cushion', whereHas: true }, { act: 'add', element: 'heel-cushion', amount: { key: 'insert.heelCushionMm', unit: 'mm' } }, judges],
	'inner-arch': [lower('rearfoot-post-medial', onceDeg), grindShell, judges],
	'outer-arch': [lower('rearfoot-post-lateral', onceDeg), grindShell, judges],
	forefoot: [
		lower('metatarsal-dome', onceMm),
		lower('forefoot-post-medial', onceDeg),
		lower('forefoot-post-lateral', onceDeg),
		{ act: 'widen', element: 'first-head-aperture', whereHas: true },
		{
			act: 'add',
			element: 'forefoot-cushion',
			amount: { key: 'insert.forefootCushionMm', unit: 'mm' },
		},
		judges,
	],
	edge: [{ act: 'grind' }, judges],
	'slips-in-shoe': [{ act: 'replace', element: 'cover' }, judges],
	'too-thick': [lower('heel-cushion', onceMm), grindShell, judges],
	'worn-out': [{ act: 'replace' }],
	'top-cover': [{ act: 'replace', element: 'cover' }, judges],
}
