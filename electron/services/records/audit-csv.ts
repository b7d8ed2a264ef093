/** The audit trail as a table that a spreadsheet opens. */
import Papa from 'papaparse'
import type { AuditRow } from '../../../shared/desk/records/audit.ts'

const columns = [
	'seq',
	'utcTime',
	'localOffsetMinutes',
	'personId',
	'person',
	'role',
	'workstationId',
	'playerId',
	'function',
	'objectRef',
	'purpose',
	'outcome',
	'prevHash',
	'hash',
] as const
type CsvRow = AuditRow & { hash: string; person: string }

/** Text that a spreadsheet would run as a formula is marked as text; numbers are none. */
const asText = (value: string | number | null): string | number | null =>
	typeof value === 'string' && /^[=+\-@\t\r]/.test(value) ? `'${value}` : value

/** The trail as RFC 4180 text: CRLF lines, a header, a byte order mark for spreadsheets. */
export function auditCsv(rows: readonly CsvRow[]): string {
	const cells = rows.map((row) => columns.map((column) => asText(row[column])))
	return `\uFEFF${Papa.unparse([[...columns], ...cells], { newline: '\r\n' })}\r\n`
}
