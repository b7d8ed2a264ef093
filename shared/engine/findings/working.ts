/** Writing down how a number was worked out: figures as they are read, and the lines that apply. */
import { rounded } from '../visit/sides.ts'

/** A number as it stands in a working, without trailing zeros. */
export const figure = (value: number, digits = 2): string => String(rounded(value, digits))
/** A number to one decimal as it stands in a working. */
export const tenths = (value: number): string => figure(value, 1)
/** The lines that apply; one that is undefined does not. */
export const linesOf = (...lines: (string | undefined)[]): string[] =>
	lines.filter((line) => line !== undefined)
