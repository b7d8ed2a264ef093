/** Whether the records are whole: trail, heads, roll, every record, card, draft and setting. */
import { readAs } from '../../shared/desk/ledger/ledger.ts'
import type { OpenRow } from './audit-chain.ts'
import { isSignedBy } from './author.ts'
import type { Parts } from './parts.ts'
import { isRecordId, type StoredRecord } from './record.ts'
import { type RollFault, walkRoll } from './roll-repair.ts'
import { installationIn } from './signatures.ts'

/** What leaves a record behind; what is given out or printed names other things as well. */
const leavesARecord = ['create', 'update', 'sign', 'amend', 'merge']
interface NamedRecord {
	seq: number
	kind: string
	id: string
}
/** the most records that are named one by one */
const mostNamed = 100

/**
 * @param destroyed ids of records that were destroyed by the rule, of which nothing is missing
 * @returns the number of rows of the trail and a sentence for each fault
 */
export function verifyAll(parts: Parts, destroyed: ReadonlySet<string>): Verified {
	const [answer] = [...verifySteps(parts, destroyed)].slice(-1)
	if (answer === undefined) throw new Error('the last step of a verification is its answer')
	return answer
}
export interface Verified {
	rows: number
	problems: string[]
}
/** A step for each record that is opened; the last one is the answer. */
export function* verifySteps(
	parts: Parts,
	destroyed: ReadonlySet<string>,
): Generator<Verified | undefined> {
	const { trail, roll, keeper, alarms } = parts
	const named: NamedRecord[] = []
	const { rows, problems } = trail.verify((row) => {
		named.push(...namedBy(row))
	})
	const missing = named
		.filter(({ kind, id }) => !notRecords.has(kind) && !destroyed.has(id) && !roll.byId(id))
		.map(
			({ seq, kind, id }) =>
				`Record ${id} (${kind}), written in row ${seq}, is gone from the records.`,
		)
	const all = [
		...problems,
		...alarms.fresh(keeper.differences()).map(({ says }) => says),
		...alarms.open().map(({ says }) => says),
		...missing,
		...(yield* recordProblems(parts)),
		...draftProblems(parts),
		...unboundProblems(parts, destroyed),
	]
	yield { rows, problems: [...new Set(all)] }
}
/** What is changed or removed without a record of its own: a draft, an access of a person. */
const notRecords: ReadonlySet<string> = new Set(['draft', 'staff'])
/** Until 0.5.0 such a row named the person as if it named a record. */
const ofNoRecord = 'passphrase changed'
function namedBy(row: OpenRow): NamedRecord[] {
	const [kind = '', id = ''] = row.objectRef.split(':')
	return row.purpose !== ofNoRecord &&
		isRecordId(id) &&
		row.outcome === 'done' &&
		leavesARecord.includes(row.function)
		? [{ seq: row.seq, kind, id }]
		: []
}
const faultWords: Record<RollFault['what'], string> = {
	'record-damaged': 'is damaged and cannot be read. Restore it from a backup.',
	'record-gone': 'is gone from the records. Restore it from a backup.',
	'row-gone': 'is missing in the list of the records.',
	'row-other': 'stands altered in the list of the records.',
	'row-stray': 'stands twice in the list of the records.',
	'card-damaged': 'has a damaged short form; the record itself is whole.',
}
function* recordProblems(parts: Parts): Generator<undefined, string[]> {
	const signatures = new Signatures()
	const faults: RollFault[] = []
	for (const fault of walkRoll(parts, (record) => signatures.look(record))) {
		if (fault) faults.push(fault)
		yield undefined
	}
	const said = faults.map(
		({ id, kind, at, what }) => `Record ${id} (${kind}, written ${at}) ${faultWords[what]}`,
	)
	return [...said, ...signatures.problems()].slice(0, mostNamed)
}
/** Records are signed by whoever wrote them; the authors' keys are records themselves. */
class Signatures {
	readonly #keys = new Map<string, string>()
	readonly #waiting: { record: StoredRecord; signature: string }[] = []
	readonly #problems: string[] = []
	look(record: StoredRecord): void {
		const installation = installationIn(record)
		if (installation) this.#keys.set(installation.origin, installation.publicKey)
		const { signature } = record
		if (signature === undefined) return
		const key = this.#keys.get(record.origin)
		if (key === undefined) this.#waiting.push({ record, signature })
		else this.#check(record, signature, key)
	}
	#check(record: StoredRecord, signature: string, key: string): void {
		if (!isSignedBy(key, record, signature))
			this.#problems.push(
				`Record ${record.id} (${record.kind}, written ${record.at}) was not written by the ` +
					'installation that it names.',
			)
	}
	problems(): string[] {
		for (const { record, signature } of this.#waiting) {
			const key = this.#keys.get(record.origin)
			if (key !== undefined) this.#check(record, signature, key)
		}
		return this.#problems
	}
}
function draftProblems({ drafts }: Parts): string[] {
	return drafts.ids().flatMap((id) => {
		try {
			drafts.read(id)
			return []
		} catch {
			return [`The draft ${id} is damaged and cannot be read. Restore it from a backup.`]
		}
	})
}
function anchorIn({ version, value }: StoredRecord) {
	const read = readAs('anchor', version, value)
	return read.state === 'read' ? read.value : undefined
}
/** Records of the first form, as the anchor bound them. */
function unboundProblems({ records }: Parts, destroyed: ReadonlySet<string>): string[] {
	const anchorId = records.anchorId()
	if (anchorId === undefined) return []
	// a damaged anchor is named with the other records
	const anchor = records.isReadable(anchorId) ? anchorIn(records.read(anchorId)) : undefined
	if (anchor === undefined)
		return [
			'The record that binds the records of the first version cannot be read: whether those were ' +
				'altered cannot be told. Compare with a backup.',
		]
	const now = new Map(records.unboundDigests())
	return anchor.records
		.filter(([id, digest]) => !destroyed.has(id) && now.get(id) !== digest)
		.map(([id]) =>
			now.has(id)
				? `Record ${id}, written by an earlier version, was altered.`
				: `Record ${id}, written by an earlier version, is gone from the records.`,
		)
}
