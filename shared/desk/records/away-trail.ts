/**
 * The audit rows of a laptop, brought home: kept as a section of their own beside the clinic's
 * trail, chained row by row, checked in words.
 */
import { z } from 'zod'
import { digestOf } from '../../engine/plain/canonical.ts'
import { type AuditRow, auditRowSchema } from './audit.ts'

const awayRowSchema = auditRowSchema.extend({
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
/**
 * Chains a laptop's rows by links that home can check without its key.
 * @param rows in order of their numbers, as the laptop's trail holds them
 */
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
	const seen = new Map<string, string>()
	const problems = trails.flatMap((trail) => {
		const name = `Laptop ${trail.workstationId}`
		return [
			...trail.problems.map((problem) => `${name}, when it came home: ${problem}`),
			...rowProblems(trail, seen).map((problem) => `${name}: ${problem}`),
		]
	})
	return [...new Set(problems)]
}
/** @param seen the hash of each laptop's rows, as any file told them; this trail's are added */
function rowProblems(
	{ packId, workstationId, rows }: AwayTrail,
	seen: Map<string, string>,
): string[] {
	const problems: string[] = []
	let link = firstLink(packId, workstationId)
	let before: AwayRow | undefined
	for (const row of rows) {
		if (wasAltered(row, link)) problems.push(`row ${row.seq} was altered after it came home.`)
		problems.push(...orderProblems(row, before))
		const key = `${workstationId} ${row.seq}`
		if ((seen.get(key) ?? row.hash) !== row.hash)
			problems.push(`two files of the way back tell row ${row.seq} differently.`)
		seen.set(key, row.hash)
		link = row.link
		before = row
	}
	return problems
}
function wasAltered({ link, ...row }: AwayRow, linkBefore: string): boolean {
	return linkOf(linkBefore, row) !== link
}
function orderProblems(row: AwayRow, before: AwayRow | undefined): string[] {
	if (row.seq !== (before?.seq ?? 0) + 1) return [`a row before row ${row.seq} is missing.`]
	if (before && row.prevHash !== before.hash)
		return [`row ${row.seq} does not follow from the row before it.`]
	return []
}
/** Every row of a laptop once, from whichever file has it, newest first. */
export function awayRows(trails: readonly AwayTrail[], workstationId: string): AwayRow[] {
	const rows = new Map(
		trails
			.filter((trail) => trail.workstationId === workstationId)
			.flatMap((trail) => trail.rows.map((row) => [row.seq, row] as const)),
	)
	return [...rows.values()].sort((earlier, later) => later.seq - earlier.seq)
}
