/** Reading measures as a clinician types them. Pure. */
type Parsed = { ok: true; values: number[] } | { ok: false; says: string }
/**
 * Millimetres in each unit of length; the inch is 25.4 mm exactly by its international definition.
 */
const lengthMm: Record<string, number> = { mm: 1, cm: 10, in: 25.4 }
const measure = /^([+-]?\d+(?:[.,]\d+)?)(?:\s+(\d+)\/(\d+))?\s*([a-z°"%/]+)?$/i

function single(text: string, unit: string): number | string {
	if (/\d[.,]\d+[.,]\d/.test(text))
		return (
			`'${text}' has two separators. Is the comma or the point the decimal mark? Type the ` +
			'number with one only.'
		)
	const found = measure.exec(text)
	if (!found) return `'${text}' is not a number. Type digits such as 263,5 or 263.5.`
	const whole = Number((found[1] ?? '').replace(',', '.'))
	if (found[3] && Number(found[3]) === 0)
		return `'${text}' divides by zero. Type the fraction again.`
	const part = found[2] ? Number(found[2]) / Number(found[3]) : 0
	const value = whole < 0 ? whole - part : whole + part
	const given = (found[4] ?? unit).toLowerCase().replace('"', 'in').replace('°', 'deg')
	if (given === unit.toLowerCase()) return value
	const from = lengthMm[given]
	const to = lengthMm[unit]
	if (from === undefined || to === undefined)
		return (
			`'${text}' is in ${given}; this field is in ${unit || 'plain numbers'}. Type it in ` +
			`${unit || 'plain numbers'}.`
		)
	return Number(((value * from) / to).toFixed(6))
}
/** Reads one measure or repeats ('246 247', '246; 247') into `unit`; empty text is no values. */
export function parseNumber(text: string, unit: string): Parsed {
	const clean = text.trim()
	if (clean === '') return { ok: true, values: [] }
	// A unit or a fraction belongs to the number before it; other spaces separate repeats.
	const pieces = clean
		.split(/;|\s+(?=[+-]?\d)(?!\d+\/\d)/)
		.map((piece) => piece.trim())
		.filter(Boolean)
	const values: number[] = []
	for (const piece of pieces) {
		const value = single(piece, unit)
		if (typeof value === 'string') return { ok: false, says: value }
		values.push(value)
	}
	return { ok: true, values }
}
