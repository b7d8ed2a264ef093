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
