/** What the readings of a measure come to, as a line of a working. */
import { equation, exactly, inNumbers, over, plus, quantity } from './formula.ts'

export function meanLine(readings: readonly number[], unit: string): string {
	const [first, ...more] = readings.map((reading) => quantity(reading))
	if (first === undefined) return 'Not measured'
	if (more.length === 0) return `One reading: ${inNumbers(first)} ${unit}`
	const mean = over(plus(first, ...more), exactly(readings.length))
	return `Mean of ${readings.length} readings: ${equation(mean, unit)}`
}
