/** How the feet were taken, their measures, and the shoes that the insert goes into. */
import { termWords } from '../../visit/terms.ts'
import type { Speak } from '../../words/speak.ts'
import { shown } from '../../words/words.ts'
import { heading } from '../base.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { measureTable } from '../measure-table.ts'

/** By hand or by a file: how the feet were taken, and the digest of what is sent along. */
export function capture({ visit, order = {} }: ReportInput, t: Speak): Block[] {
	const stance = visit.feet?.stance
	const file = [order.fileName, order.sha256 ?? ''].filter(Boolean).join(', SHA-256 ')
	return [
		heading(t('order.capture')),
		{
			kind: 'table',
			caption: t('order.captureCaption'),
			head: [t('order.item'), t('coach.answer')],
			widths: [130, '*'],
			rows: [
				[t('order.method'), stance ? t('order.methodHand', { stance }) : t('order.methodUnknown')],
				[t('order.file'), order.fileName ? file : t('order.fileNone')],
			],
		},
	]
}
/** The measures of both feet in mm; a measure not taken says so. */
export function feet({ visit }: ReportInput, t: Speak): Block[] {
	return [
		heading(t('order.feet')),
		{
			kind: 'table',
			caption: t('order.feet'),
			head: [t('order.item'), t('common.left'), t('common.right')],
			widths: ['*', 110, 110],
			rows: measureTable('laboratory', visit, t),
		},
	]
}
/** Every pair with its sole and inside length; none where no pair is recorded. */
export function shoes({ visit }: ReportInput, t: Speak): Block[] {
	const rows = (visit.footwear ?? []).map(({ id, name, sole, insideLengthMm }) => [
		name ?? id,
		sole ? termWords(sole) : t('common.notStated'),
		lengthWords(insideLengthMm, t),
	])
	if (rows.length === 0) return []
	return [
		{
			kind: 'table',
			caption: t('order.shoe'),
			head: [t('player.pair'), t('order.shoeType'), t('order.shoe')],
			widths: ['*', 130, 110],
			rows,
		},
	]
}
const lengthWords = (lengthMm: number | undefined, t: Speak): string =>
	lengthMm === undefined ? t('common.notMeasured') : `${shown(lengthMm)} mm`
