/** A pasted text as a table of cells, and what the words in it name. Pure. */
import { catalogue, type Placed } from '../../shared/engine/visit/measures/catalogue.ts'
import type { Side } from '../../shared/engine/visit/visit.ts'
import { reasonOf } from './judge.ts'
import { pasteNames } from './pasteNames.table.ts'

/** A name and what follows it on a line without columns: 'Heel to toe, left: 246 247'. */
const nameAndRest = /^(\D*[\p{L})\]])\s*:?\s+([+-]?\d.*)$/u
function cellsOf(line: string, inColumns: boolean): string[] {
	if (inColumns) return line.split(/[\t;|]/).map((cell) => cell.trim())
	const apart = line.trim().split(/\s{2,}/)
	if (apart.length > 1) return apart
	const [, name, rest] = nameAndRest.exec(line.trim()) ?? []
	return name !== undefined && rest !== undefined ? [name, rest] : [line.trim()]
}
/** Columns by tab, semicolon or bar; else by two spaces or more, or a name and its values. */
export function tableOf(text: string): string[][] {
	const lines = text.replace(/\r\n?/g, '\n').replace(/\n+$/, '').split('\n')
	const inColumns = lines.some((line) => /[\t;|]/.test(line))
	return lines.map((line) => cellsOf(line, inColumns))
}
/** What the words of a cell name; nothing for a value. */
export interface Heading {
	measure?: Placed
	side?: Side
	unit?: string
	/** Words that name nothing known. */
	unknown?: string
}
const sides: Readonly<Record<string, Side>> = {
	left: 'left',
	l: 'left',
	lt: 'left',
	right: 'right',
	r: 'right',
	rt: 'right',
}
const units: readonly string[] = [
	'mm',
	'cm',
	'm',
	'in',
	'kg',
	'g',
	'lb',
	'deg',
	'degrees',
	'°',
	'%',
]
/** Words that say no more than the side beside them. */
const ofSide: readonly string[] = ['foot', 'ankle', 'leg', 'side']
const wordsOf = (text: string): string[] => text.toLowerCase().match(/[\p{L}°%]+|\d+/gu) ?? []
const plain = (words: readonly string[]): string => words.join(' ')

const byName = new Map<string, Placed>()
for (const placed of catalogue) {
	const { key, measure } = placed
	if (measure.kind === 'note') continue
	for (const name of [measure.label, measure.name, ...(pasteNames[key] ?? [])]) {
		const known = plain(wordsOf(name).filter((word) => sides[word] === undefined))
		if (!byName.has(known)) byName.set(known, placed)
	}
}
const isValue = (cell: string): boolean => /^[+-]?\d/.test(cell) || reasonOf(cell) !== undefined
/** @returns undefined for a value and for an empty cell */
export function headingOf(cell: string): Heading | undefined {
	if (cell === '' || isValue(cell)) return undefined
	const all = wordsOf(cell)
	const side = all.map((word) => sides[word]).find((found) => found !== undefined)
	const names = all.filter((word) => sides[word] === undefined)
	const whole = byName.get(plain(names))
	// a name may hold a word that is a unit elsewhere: 'months a year in one sport'
	if (whole) return { measure: whole, ...(side && { side }) }
	const last = names.at(-1) ?? ''
	const given = units.includes(last) ? last : undefined
	const unit = given === 'degrees' || given === '°' ? 'deg' : given
	const bare = given ? names.slice(0, -1) : names
	const measure = byName.get(plain(bare))
	const found = { ...(side && { side }), ...(unit && { unit }) }
	if (measure) return { measure, ...found }
	const saysMore = bare.some((word) => !(side && ofSide.includes(word)))
	return saysMore ? { unknown: cell, ...found } : found
}
