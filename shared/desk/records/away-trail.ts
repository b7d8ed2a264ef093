/**
 * The audit rows of a laptop, brought home: kept as a section of their own beside the clinic's
 * trail, chained row by row, checked in words.
 */
import { z } from 'zod'
import { digestOf } from '../../engine/plain/canonical.ts'
import { type AuditRow, auditRowSchema } from './audit.ts'

export const awayRowSchema = auditRowSchema.extend({
	/** as the laptop's own chain had it */ hash: z.string(),
	/** digest over this row and the link before it */ link: z.string(),
})
export type AwayRow = z.infer<typeof awayRowSchema>
export const awayTrailSchema = z.strictObject({
	packId: z.string(),
	workstationId: z.string(),
	madeAt: z.string(),
	/** what the laptop's own check found when it left, in words */
	problems: z.array(z.string()),
	rows: z.array(awayRowSchema),
})
export type AwayTrail = z.infer<typeof awayTrailSchema>

const firstLink = (packId: string, workstationId: string): string =>
	digestOf({ packId, workstationId })
const linkOf = (before: string, row: Omit<AwayRow, 'link'>): string => digestOf({ before, row })
/** @param rows in order of their numbers, as the laptop's trail holds them */
export function chainAway(
	packId: string,
	workstationId: string,
	rows: readonly (AuditRow & { hash: string })[],
): AwayRow[] {
	let before = firstLink(packId, workstationId)
	return rows.map((row) => {
		const link = linkOf(before, row)
		before = link
		return { ...row, link }
	})
}
/**
 * A sentence for each fault: a row altered, missing or put in, or two files of one laptop that tell
 * different things.
 */
export function awayProblems(trails: readonly AwayTrail[]): string[] {
	const problems: string[] = []
	const seen = new Map<string, string>()
	for (const { packId, workstationId, problems: own, rows } of trails) {
		const name = `Laptop ${workstationId}`
		problems.push(...own.map((one) => `${name}, when it came home: ${one}`))
		let before = firstLink(packId, workstationId)
		let last: AwayRow | undefined
		for (const row of rows) {
			const { link, ...bare } = row
			if (linkOf(before, bare) !== link)
				problems.push(`${name}: row ${row.seq} was altered after it came home.`)
			if (row.seq !== (last?.seq ?? 0) + 1)
				problems.push(`${name}: a row before row ${row.seq} is missing.`)
			else if (last && row.prevHash !== last.hash)
				problems.push(`${name}: row ${row.seq} does not follow from the row before it.`)
			const key = `${workstationId} ${row.seq}`
			if ((seen.get(key) ?? row.hash) !== row.hash)
				problems.push(`${name}: two files of the way back tell row ${row.seq} differently.`)
			seen.set(key, row.hash)
			before = link
			last = row
		}
	}
	return [...new Set(problems)]
}
/** Every row of a laptop once, from whichever file has it, newest first. */
export function awayRows(trails: readonly AwayTrail[], workstationId: string): AwayRow[] {
	const rows = new Map(
		trails
			.filter((trail) => trail.workstationId === workstationId)
			.flatMap((trail) => trail.rows.map((row) => [row.seq, row] as const)),
	)
	return [...rows.values()].sort((a, b) => b.seq - a.seq)
}
