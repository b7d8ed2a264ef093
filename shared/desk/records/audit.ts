/**
 * One row of the audit trail: references only, no clinical value (practice standard 1.7, R[12]).
 */
import { z } from 'zod'

export const auditFunctions = [
	'read',
	'search',
	'create',
	'update',
	'sign',
	'amend',
	'print',
	'export',
	'send',
	'unlock',
	'unlock-failed',
	'lock',
	'switch',
	'merge',
	'destroy',
	'backup',
	'restore',
	'verify',
	'refused',
] as const
export type AuditFunction = (typeof auditFunctions)[number]
export const auditRowSchema = z.strictObject({
	seq: z.int().min(1),
	utcTime: z.string(),
	localOffsetMinutes: z.int(),
	personId: z.string().nullable(),
	role: z.string(),
	workstationId: z.string(),
	playerId: z.string().nullable(),
	function: z.enum(auditFunctions),
	objectRef: z.string(),
	purpose: z.string(),
	outcome: z.enum(['done', 'refused', 'failed']),
	prevHash: z.string(),
})
export type AuditRow = z.infer<typeof auditRowSchema>
export type AuditEntry = Omit<AuditRow, 'seq' | 'prevHash' | 'workstationId'>

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
// a cell that a spreadsheet would run as a formula is marked as text
const cell = (value: unknown) => {
	const text = String(value ?? '')
	const safe = /^[=+\-@\t\r]/.test(text) && typeof value !== 'number' ? `'${text}` : text
	return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
/** The trail as RFC 4180 text: CRLF lines, a header, a byte order mark for spreadsheets. */
export function auditCsv(rows: readonly (AuditRow & { hash: string; person: string })[]): string {
	const lines = rows.map((row) => columns.map((column) => cell(row[column])).join(','))
	return `\uFEFF${[columns.join(','), ...lines].join('\r\n')}\r\n`
}
