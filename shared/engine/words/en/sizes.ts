/** Sizes of the shelf as the box shows them. */
import { termWords } from '../../visit/terms.ts'

/** A size of a model: its label in a size system, and the fitting where the maker names one. */
export interface SizeOfModel {
	label: number
	system: string
	fitting?: string
}
/** Systems that a box names otherwise than the lists do. */
const onBox: Readonly<Record<string, string>> = { mondopoint: 'mm', jpCm: 'cm (Japan)' }
/** '8.5 UK, fitting G'; the label as the box shows it. */
export function sizeWords({ label, system, fitting }: SizeOfModel): string {
	const size = `${label} ${onBox[system] ?? termWords(system)}`
	return fitting === undefined ? size : `${size}, fitting ${fitting}`
}
