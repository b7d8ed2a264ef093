/** Sizes of the shelf as the box shows them. */

/** A size of a model: its label in a size system, and the fitting where the maker names one. */
export interface SizeOfModel {
	label: number
	system: string
	fitting?: string
}
const systemWords: Readonly<Record<string, string>> = {
	mondopoint: 'mm',
	jpCm: 'cm (Japan)',
	eu: 'EU',
	uk: 'UK',
	usMen: 'US men',
	usWomen: 'US women',
	usChild: 'US child',
	au: 'Australia',
}
/** '8.5 UK, fitting G'; the label as the box shows it. */
export function sizeWords({ label, system, fitting }: SizeOfModel): string {
	const size = `${label} ${systemWords[system] ?? system}`
	return fitting === undefined ? size : `${size}, fitting ${fitting}`
}
