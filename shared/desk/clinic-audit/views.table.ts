/** The tables as they are read: what is missing stands first in each. */
import type { documentSentences } from '../../engine/words/speak.ts'
import { measuresTaken } from './followed.ts'
import type { TableId } from './seen.ts'

type Key = keyof typeof documentSentences
type Tail<Head extends string> = Extract<Key, `${Head}${string}`> extends `${Head}${infer Name}` ? Name : never
type ColumnName = Tail<'audit.col.'>
/** A column: the cell or the values that it shows, and its head. */
export type Column =
	| { cell: string; name: ColumnName }
	/** median and range of values */
	| { values: string; name: ColumnName }
export interface View {
	table: TableId
	caption: Tail<'audit.caption.'>
	row: ColumnName
	columns: readonly Column[]
	/** these rows only; absent: all */
	rows?: readonly string[]
	/** a line for each trouble: a cell that ends in a full stop is followed by it */
	isByTrouble?: true
	/** said under it */
	says: readonly ('audit.mean' | 'audit.sessions' | 'audit.missing.seen' | 'audit.missing.advice' | 'audit.missing.harm' | 'audit.missing.referral' | 'audit.missing.label' | 'audit.missing.size' | 'audit.missing.stage')[]
}
export interface Section {
	head: Tail<'audit.head.'>
	views: readonly View[]
}
const cell = (name: string, head: ColumnName): Column => ({ cell: name, name: head })
const values = (name: string, head: ColumnName): Column => ({ values: name, name: head })

const followed = (table: 'condition' | 'measure', row: ColumnName): View[] => [
	{
		table,
		row,
		caption: 'seen',
		columns: [cell('missing', 'missing'), cell('not-due', 'not-due'), cell('again', 'again'), cell('players', 'players')],
		says: ['audit.missing.seen'],
	},
	{
		table,
		row,
		caption: 'pain',
		columns: [cell('pain-missing', 'missing'), cell('pain-told', 'told'), values('pain-before', 'before'), values('pain-after', 'after')],
		says: ['audit.mean'],
	},
	{
		table,
		row,
		caption: 'sessions',
		columns: [cell('sessions-missing', 'missing'), cell('sessions-told', 'told'), values('sessions-before', 'before'), values('sessions-after', 'after')],
		says: ['audit.sessions'],
	},
]
const missingFirst = (...names: ColumnName[]): Column[] => ['missing' as const, ...names, 'players' as const].map((name) => cell(name, name))

const advised: Omit<View, 'table'> = {
	row: 'row.advice',
	caption: 'advice',
	columns: [cell('gone', 'gone'), cell('unasked', 'unasked'), cell('done', 'done'), cell('in-part', 'in-part'), cell('not-done', 'not-done'), cell('not-wanted', 'not-wanted'), cell('players', 'players')],
	says: ['audit.missing.advice'],
}
export const sections: readonly Section[] = [
	{ head: 'condition', views: followed('condition', 'row.condition') },
	{ head: 'measure', views: followed('measure', 'row.measure') },
	{
		head: 'advice',
		views: [
			{ ...advised, table: 'measure', caption: 'worn', rows: measuresTaken, says: [] },
			{ ...advised, table: 'advice' },
			{
				table: 'reason',
				row: 'row.reason',
				caption: 'reason',
				columns: [cell('players', 'players')],
				says: [],
			},
		],
	},
	{
		head: 'harm',
		views: [
			{
				table: 'measure',
				rows: measuresTaken,
				isByTrouble: true,
				row: 'row.harm',
				caption: 'harm',
				columns: [cell('gone', 'gone'), cell('unasked', 'unasked'), cell('not-worn', 'not-worn'), cell('not.', 'not-told'), cell('told.', 'trouble'), cell('players', 'players')],
				says: ['audit.missing.harm'],
			},
		],
	},
	{
		head: 'referral',
		views: [
			{
				table: 'referral',
				row: 'row.referral',
				caption: 'referral',
				columns: missingFirst('nothing', 'answered', 'excluded', 'recovered', 'confirmed'),
				says: ['audit.missing.referral'],
			},
		],
	},
	{
		head: 'label',
		views: [
			{
				table: 'label',
				row: 'row.label',
				caption: 'label',
				columns: [cell('missing', 'missing'), cell('measured', 'measured'), values('difference', 'difference'), cell('players', 'players')],
				says: ['audit.missing.label'],
			},
			{
				table: 'size',
				row: 'row.size',
				caption: 'size',
				columns: [cell('missing', 'missing'), cell('taken', 'taken'), cell('again', 'measured-again'), cell('same-label', 'same-label'), cell('other-label', 'other-label'), values('change', 'change'), cell('players', 'players')],
				says: ['audit.missing.size'],
			},
		],
	},
	{
		head: 'forecast',
		views: [
			{
				table: 'forecast',
				row: 'row.forecast',
				caption: 'forecast',
				columns: [cell('missing', 'missing'), cell('came', 'came'), cell('inside', 'inside'), cell('below', 'below'), cell('above', 'above'), values('error', 'error'), cell('players', 'players')],
				says: [],
			},
		],
	},
	{
		head: 'stage',
		views: [
			{
				table: 'stage',
				row: 'row.stage',
				caption: 'stage',
				columns: [cell('missing', 'missing'), cell('same', 'same'), cell('on', 'on'), cell('back', 'back'), cell('uncertain', 'uncertain'), values('peak-change', 'change'), cell('players', 'players')],
				says: ['audit.missing.stage'],
			},
		],
	},
]
