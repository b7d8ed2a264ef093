import type { Strength } from './basis.ts'

export interface ThresholdRow {
	key: string
	value: number
	unit: string
	population: string
	source: string
	strength: Strength
	/** in the words of the trade files: read, derived, from memory, common practice */ surety:
		| 'read'
		| 'read-secondary'
		| 'derived'
		| 'from memory'
		| 'common practice'
		| 'choice'
}

export type Row = Omit<ThresholdRow, 'key'>
/**
 * One threshold: value, unit, whom it was found in, where it stands, how strong and how surely
 * read.
 */
export function row(
	value: number,
	unit: string,
	population: string,
	source: string,
	strength: Row['strength'],
	surety: Row['surety'],
): Row {
	return { value, unit, population, source, strength, surety }
}
