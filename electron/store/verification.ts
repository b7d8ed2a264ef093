/** Whether the audit trail and the records that it names still agree. */
import type { OpenRow } from './audit-chain.ts'
import { isRecordId } from './record.ts'
import type { Records } from './records.ts'
import type { Trail } from './trail.ts'

/** What leaves a record behind, or gives one out. */
const concernsARecord = [
	'create',
	'update',
	'sign',
	'amend',
	'send',
	'export',
	'print',
	'merge',
	'destroy',
]
interface NamedRecord {
	seq: number
	kind: string
	id: string
}

/**
 * The chain, the records it names, and the records of earlier versions.
 * @param destroyed ids of records that were destroyed by the rule, of which nothing is missing
 * @returns the number of rows and a sentence for each fault
 */
export function verifyTrail(
	{ trail, records }: { trail: Trail; records: Records },
	destroyed: ReadonlySet<string>,
): { rows: number; problems: string[] } {
	const named: NamedRecord[] = []
	const { rows, problems } = trail.verify((row) => {
		named.push(...namedBy(row))
	})
	return {
		rows,
		problems: [
			...problems,
			...named
				.filter(({ kind, id }) => kind !== 'draft' && !destroyed.has(id) && !records.has(id))
				.map(
					({ seq, kind, id }) =>
						`Record ${id} (${kind}), written in row ${seq}, is gone from the records.`,
				),
			...unboundProblems(records, destroyed),
		],
	}
}
function namedBy(row: OpenRow): NamedRecord[] {
	const [kind = '', id = ''] = row.objectRef.split(':')
	return isRecordId(id) && row.outcome === 'done' && concernsARecord.includes(row.function)
		? [{ seq: row.seq, kind, id }]
		: []
}
/** Records of the first form, as the anchor bound them. */
function unboundProblems(records: Records, destroyed: ReadonlySet<string>): string[] {
	const anchorId = records.anchorId()
	if (anchorId === undefined) return []
	const now = new Map(records.unboundDigests())
	const anchor = records.read(anchorId).value as { records: [string, string][] }
	return anchor.records
		.filter(([id, digest]) => !destroyed.has(id) && now.get(id) !== digest)
		.map(([id]) =>
			now.has(id)
				? `Record ${id}, written by an earlier version, was altered.`
				: `Record ${id}, written by an earlier version, is gone from the records.`,
		)
}
