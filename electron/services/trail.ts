import type { InputOf, OutputOf } from '../../shared/contract.ts'
import { auditCsv } from '../../shared/records/audit.ts'
import { destroyedLines } from './retention.ts'
import type { Deps, State } from './state.ts'

const named = (state: State) => <T extends { personId: string | null }>(row: T) => ({ ...row, person: row.personId === null ? '' : (state.people.get(row.personId)?.name ?? row.personId) })
export function auditPage(state: State, { store }: Deps, { before, limit, playerId, function: wanted }: InputOf<'audit.page'>): OutputOf<'audit.page'> {
	const ids = playerId === undefined ? undefined : state.idsOf(playerId)
	return { rows: store.auditPage(before ?? Number.MAX_SAFE_INTEGER, limit, (row) => (ids === undefined || (row.playerId !== null && ids.includes(row.playerId))) && (wanted === undefined || row.function === wanted)).map(named(state)) }
}
export function verifyTrail({ store }: Deps): OutputOf<'audit.verify'> {
	const result = store.verify(new Set(destroyedLines(store).flatMap((one) => one.recordIds)))
	store.audit({ function: 'verify', objectRef: `rows:${result.rows}`, outcome: result.problems.length ? 'failed' : 'done' })
	return result
}
export function exportTrail(state: State, { store }: Deps): OutputOf<'audit.export'> {
	const rows = store.auditPage(Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER).reverse()
	store.audit({ function: 'export', objectRef: `audit:${rows.length}` })
	return { csv: auditCsv(rows.map(named(state))), rows: rows.length }
}
