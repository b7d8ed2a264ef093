/** What is typed about one change of an insert that is worn. Pure. */
import { adjustUnit } from '../../../../shared/engine/insert/follow/unit.ts'
import type { Adjustment } from '../../../../shared/engine/visit/recorded/insert-worn.ts'
import { adjustmentSchema } from '../../../../shared/engine/visit/recorded/insert-worn.ts'
import { parseNumber } from '../../../parts/parseNumber.ts'

export const amountField = (at: number): string => `adjust.${at}`
const limits = {
	mm: adjustmentSchema.shape.mm.unwrap(),
	deg: adjustmentSchema.shape.deg.unwrap(),
}
/** Without an amount, and with another unit where another element is chosen. */
export function withElement(line: Adjustment, element: string | undefined): Adjustment {
	const { mm: _, deg: __, element: ___, ...rest } = line
	return element === undefined ? rest : { ...rest, element }
}
/** The line with its amount as typed; empty leaves how much to whoever makes it. */
export function readAmount(line: Adjustment, text: string): { line?: Adjustment; wrong: string } {
	const { mm: _, deg: __, ...rest } = line
	if (text.trim() === '') return { line: rest, wrong: '' }
	const unit = adjustUnit(line.element)
	const parsed = parseNumber(text, unit)
	if (!parsed.ok) return { wrong: parsed.says }
	const [value, ...more] = parsed.values
	const { minValue: least, maxValue: most } = limits[unit]
	if (value === undefined || more.length > 0 || value < Number(least) || value > Number(most))
		return { wrong: `'${text}' is not allowed; give one number, ${least} to ${most} ${unit}.` }
	return { line: { ...rest, [unit]: value }, wrong: '' }
}
