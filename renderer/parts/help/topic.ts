import { type MeasureHelp, measureHelp } from './measures.table.ts'

/** The help of the field at a path; undefined where a field needs none. */
export function helpOf(path: string): MeasureHelp | undefined {
	const key = path.split('.').at(-1) ?? ''
	return Object.hasOwn(measureHelp, key) ? measureHelp[key] : undefined
}
