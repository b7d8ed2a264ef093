/** The audit trail for the screens: the clinic's own, and beside it what laptops brought home. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { readValue } from '../../../shared/desk/ledger/ledger.ts'
import { unreadableWords } from '../../../shared/desk/ledger/words.ts'
import type { AuditRow } from '../../../shared/desk/records/audit.ts'
import {
	type AwayRow,
	type AwayTrail,
	awayProblems,
	awayRows,
} from '../../../shared/desk/records/away-trail.ts'
import { destroyedLines } from '../backups/retention.ts'
import { auditCsv } from './audit-csv.ts'
import type { Deps } from './deps.ts'
import type { Memory } from './memory.ts'
import { readRecord } from './open.ts'

const named =
	({ people }: Pick<Memory, 'people'>) =>
	<Row extends { personId: string | null }>(row: Row) => ({
		...row,
		person: people.nameOf(row.personId) ?? row.personId ?? '',
	})
const bare = ({ link: _, ...row }: AwayRow): Omit<AwayRow, 'link'> => row
const sectionsOf = ({ openAll }: Deps): AwayTrail[] =>
	openAll('trail').records.map((record) => record.value)
const laptopsOf = (trails: readonly AwayTrail[]): string[] =>
	[...new Set(trails.map((trail) => trail.workstationId))].sort()
function placesOf(trails: readonly AwayTrail[]) {
	return laptopsOf(trails).map((workstation) => {
		const rows = awayRows(trails, workstation)
		return {
			workstation,
			rows: rows.length,
			from: rows.at(-1)?.utcTime ?? '',
			to: rows[0]?.utcTime ?? '',
		}
	})
}
export function auditPage(
	memory: Pick<Memory, 'people' | 'players'>,
	deps: Deps,
	{
		before = Number.MAX_SAFE_INTEGER,
		limit,
		playerId,
		function: wanted,
		workstation,
	}: InputOf<'audit.page'>,
): OutputOf<'audit.page'> {
	const ids = playerId === undefined ? undefined : memory.players.idsOf(playerId)
	const fits = (row: AuditRow) =>
		(ids === undefined || (row.playerId !== null && ids.includes(row.playerId))) &&
		(wanted === undefined || row.function === wanted)
	const trails = sectionsOf(deps)
	const gaps = gapsOf()
	const rows =
		workstation === undefined
			? deps.store.auditPage(before, limit, { wanted: fits, leftOut: gaps.add })
			: awayRows(trails, workstation)
					.filter((row) => row.seq < before && fits(row))
					.slice(0, limit)
					.map(bare)
	return { rows: rows.map(named(memory)), places: placesOf(trails), ...gaps.words() }
}
/** most gaps that a page names one by one */
const mostNamed = 20
/** Rows that a page had to leave out, and the sentence about them. */
function gapsOf() {
	const gaps: string[] = []
	return {
		add: (from: number, to: number): void => {
			gaps.push(from === to ? String(from) : `${from} to ${to}`)
		},
		words: (): { leftOut?: string } => {
			if (gaps.length === 0) return {}
			const more = gaps.length - mostNamed
			const named = gaps.slice(0, mostNamed).join(', ')
			return {
				leftOut:
					`Rows that are missing or cannot be read, and are left out here: ${named}` +
					`${more > 0 ? ` and ${more} more` : ''}. Have the trail checked, and compare with a backup.`,
			}
		},
	}
}
export function verifyTrail(deps: Deps): OutputOf<'audit.verify'> {
	const { store } = deps
	const { rows, problems } = store.verify(
		new Set(destroyedLines(store).flatMap((line) => line.recordIds)),
	)
	const trails = sectionsOf(deps)
	const result = {
		rows,
		awayRows: placesOf(trails).reduce((sum, place) => sum + place.rows, 0),
		problems: [...new Set([...problems, ...unreadProblems(store), ...awayProblems(whole(store))])],
	}
	store.audit({
		function: 'verify',
		objectRef: `rows:${rows}`,
		outcome: result.problems.length ? 'failed' : 'done',
	})
	return result
}
/** A sentence for each record that is damaged, or that this version cannot read. */
function unreadProblems(store: Deps['store']): string[] {
	const problems: string[] = []
	store.each(
		store.kinds(),
		(record) => {
			const reading = readValue(record.kind, record.version, record.value)
			if (reading.state !== 'read') problems.push(unreadableWords(record, reading))
		},
		problems,
	)
	return problems
}
/** The sections whose links can be checked: each link is made over all that its row says. */
const whole = (store: Deps['store']): AwayTrail[] =>
	store.load(['trail']).records.flatMap((record) => {
		const reading = readRecord('trail', record)
		return reading.state === 'read' && reading.unknown.length === 0 ? [reading.value] : []
	})
export function exportTrail(memory: Pick<Memory, 'people'>, deps: Deps): OutputOf<'audit.export'> {
	const { store } = deps
	const trails = sectionsOf(deps)
	const gaps = gapsOf()
	const all = { leftOut: gaps.add }
	const rows = [
		...store.auditPage(Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER, all).reverse(),
		...laptopsOf(trails).flatMap((laptop) => awayRows(trails, laptop).reverse().map(bare)),
	]
	store.audit({ function: 'export', objectRef: `audit:${rows.length}` })
	return { csv: auditCsv(rows.map(named(memory))), rows: rows.length, ...gaps.words() }
}
