/**
 * The tables of the audit: which cells add up to which, and which values are told of the players of a
 * cell. Within a row each player counts once.
 */
import { troubles } from '../../engine/visit/terms.ts'
import type { Sum } from './cells.ts'
import type { TableId } from './seen.ts'

interface TableShape {
	sums: readonly Sum[]
	/** cells that are hidden last */
	keep?: readonly string[]
	/** by the name of the values, the cell whose players they are of */
	values: Readonly<Record<string, string>>
}
/** Not seen again since: not due yet, or missing. */
const seenAgain: readonly Sum[] = [
	['players', ['gone', 'again']],
	['gone', ['missing', 'not-due']],
]
const told: readonly Sum[] = [
	['again', ['pain-missing', 'pain-told']],
	['again', ['sessions-missing', 'sessions-told']],
]
const toldValues = {
	'pain-before': 'pain-told',
	'pain-after': 'pain-told',
	'sessions-before': 'sessions-told',
	'sessions-after': 'sessions-told',
} as const
export const shapes: Readonly<Record<TableId, TableShape>> = {
	condition: { sums: [...seenAgain, ...told], values: toldValues },
	// advice and harm of one measure are about the same players: one system, so that no table tells
	// what another hides
	measure: {
		sums: [...seenAgain, ...told, ['again', ['unasked', 'answered']], ['answered', ['worn', 'not-worn']], ['worn', ['done', 'in-part']], ['not-worn', ['not-done', 'not-wanted']], ...troubles.map((trouble): Sum => ['worn', [`told.${trouble}`, `not.${trouble}`]])],
		values: toldValues,
	},
	advice: {
		sums: [...seenAgain, ['again', ['unasked', 'answered']], ['answered', ['done', 'in-part', 'not-done', 'not-wanted']]],
		values: {},
	},
	reason: { sums: [['players', ['named']]], values: {} },
	referral: {
		sums: [['players', ['missing', 'nothing', 'answered', 'excluded', 'recovered', 'confirmed']]],
		values: {},
	},
	label: {
		sums: [['players', ['missing', 'measured']]],
		values: { difference: 'measured' },
	},
	forecast: {
		sums: [
			['players', ['missing', 'came']],
			['came', ['inside', 'outside']],
			['outside', ['below', 'above']],
		],
		// how many came is what a band is held against
		keep: ['came'],
		values: { error: 'came', ratio: 'came', expected: 'came', grown: 'came' },
	},
	stage: {
		sums: [
			['players', ['missing', 'again']],
			['again', ['same', 'on', 'back', 'uncertain']],
			['players', ['peak-missing', 'peak-told']],
		],
		values: { 'peak-change': 'peak-told' },
	},
	size: {
		sums: [
			['players', ['missing', 'taken', 'again']],
			['again', ['same-label', 'other-label']],
		],
		values: { change: 'again' },
	},
}
