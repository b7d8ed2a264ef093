/** The tables in words: what screen, paper and CSV show alike. */
import type { Spread } from '../../engine/plain/middle.ts'
import { type Trouble, termWords, troubles } from '../../engine/visit/terms.ts'
import { listed, number } from '../../engine/words/en/format.ts'
import type { Speak } from '../../engine/words/speak.ts'
import { actionWords, capital } from '../../engine/words/words.ts'
import type { Audit } from './audit.ts'
import { measuresTaken } from './followed.ts'
import type { TableId } from './seen.ts'
import { type AuditRow, type Cell, hidden, within } from './tally.ts'
import { type Column, type Section, sections, type View } from './views.table.ts'

export interface TableInWords {
	caption: string
	head: string[]
	rows: string[][]
	says: string[]
}
export interface SectionInWords {
	head: Section['head']
	title: string
	tables: TableInWords[]
}
export const cellWords = (cell: Cell, t: Speak): string =>
	cell === hidden ? t('audit.hidden') : String(cell)
const signed = (value: number): string =>
	value < 0 ? `\u2212${number(-value, 2)}` : number(value, 2)
export function spreadWords(spread: Spread | typeof hidden | undefined, t: Speak): string {
	if (spread === undefined) return ''
	if (spread === hidden) return t('audit.hidden')
	const { median, low, high } = spread
	return t('audit.spread', { median: signed(median), low: signed(low), high: signed(high) })
}
const takenOf = (code: string) => measuresTaken.find((each) => each === code) ?? 'none'
const partWords = (part: string, t: Speak): string =>
	listed(part.split('+').map((name) => t(`audit.row.part.${takenOf(name)}`)))
function conditionRow(row: string, t: Speak): string {
	const [condition = '', part] = row.split(within)
	const name = capital(termWords(condition))
	return part === undefined ? name : t('audit.row.part', { row: name, done: partWords(part, t) })
}
const adviceRows = {
	clear: 'audit.row.advice.clear',
	'stop-wearing': 'audit.row.advice.stop-wearing',
	'mend-first': 'audit.row.advice.mend-first',
	replace: 'audit.row.advice.replace',
	modify: 'audit.row.advice.modify',
	own: 'audit.row.advice.own',
	'wearing-in': 'audit.row.advice.wearing-in',
	season: 'audit.row.advice.season',
} as const
const has = <Table extends object>(table: Table, key: PropertyKey): key is keyof Table =>
	Object.hasOwn(table, key)
const forecastRows = {
	'foot-length': 'audit.row.foot-length',
	outgrown: 'audit.row.outgrown',
	wear: 'audit.row.wear',
} as const
function labelRow(row: string, t: Speak): string {
	const system = row.startsWith('system:') ? row.slice('system:'.length) : undefined
	return system === undefined ? row : t('audit.row.system', { system: termWords(system) })
}
const plainRow = (row: string): string => capital(termWords(row))
const rowWords: Readonly<Record<TableId, (row: string, t: Speak) => string>> = {
	condition: conditionRow,
	measure: (row, t) => t(`audit.row.${takenOf(row)}`),
	advice: (row, t) => (has(adviceRows, row) ? t(adviceRows[row]) : plainRow(row)),
	reason: plainRow,
	referral: (row, t) =>
		row === 'proceed'
			? t('audit.row.proceed')
			: capital(has(actionWords, row) ? actionWords[row] : row),
	label: labelRow,
	forecast: (row, t) => (has(forecastRows, row) ? t(forecastRows[row]) : plainRow(row)),
	stage: plainRow,
	size: (_, t) => t('audit.row.all'),
}
/** @param trouble the line is of, where there is one for each */
function shownIn(column: Column, { cells, spreads }: AuditRow, t: Speak, trouble = ''): string {
	if ('values' in column) return spreadWords(spreads[column.values], t)
	const name = column.cell.endsWith('.') ? `${column.cell}${trouble}` : column.cell
	return cellWords(cells[name] ?? 0, t)
}
/** Harm that is said also where nobody told it; other trouble where somebody did. */
const alwaysSaid: readonly Trouble[] = ['blister', 'wound', 'new-pain', 'fell', 'wrong-size']
function linesOf({ table, columns, isByTrouble }: View, row: AuditRow, t: Speak): string[][] {
	const name = rowWords[table](row.row, t)
	const line = (called: string, trouble?: string) => [
		called,
		...columns.map((column) => shownIn(column, row, t, trouble)),
	]
	if (!isByTrouble) return [line(name)]
	return troubles
		.filter((trouble) => alwaysSaid.includes(trouble) || row.cells[`told.${trouble}`] !== 0)
		.map((trouble) => line(`${name}: ${termWords(trouble)}`, trouble))
}
const columnName = (name: Column['name'], t: Speak): string => t(`audit.col.${name}`)
function tableOf(view: View, audit: Audit, t: Speak): TableInWords {
	return {
		caption: t(`audit.caption.${view.caption}`),
		head: [columnName(view.row, t), ...view.columns.map(({ name }) => columnName(name, t))],
		rows: audit.tables[view.table]
			.filter(({ row }) => view.rows?.includes(row) ?? true)
			.flatMap((row) => linesOf(view, row, t)),
		says: view.says.map((key) => t(key)),
	}
}
export const inWords = (audit: Audit, t: Speak): SectionInWords[] =>
	sections.map(({ head, views }) => ({
		head,
		title: t(`audit.head.${head}`),
		tables: views.map((view) => tableOf(view, audit, t)),
	}))
