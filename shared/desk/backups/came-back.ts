/**
 * What a restore brought back or kept: a list that the owner decides line by line. It names records
 * by their ids alone, so that nothing of a person stays in it once their records are destroyed.
 */
import { z } from 'zod'
import { staffRoles } from '../records/people.ts'

/**
 * `as-before`: as it stood before the restore. `as-in-backup`: as the backup has it. `take-off`: a
 * person who could open the backup is let in no more.
 */
export const choices = ['as-before', 'as-in-backup', 'take-off'] as const
export type Choice = (typeof choices)[number]

const id = z.string().min(1).max(80)
const personFacts = z.strictObject({
	name: z.string(),
	registration: z.string(),
	role: z.enum(staffRoles),
})
export type PersonFacts = z.infer<typeof personFacts>
const subjects = z.discriminatedUnion('what', [
	z.strictObject({
		what: z.literal('person'),
		personId: id,
		/**
		 * since the backup. 'came-back': the backup knows somebody whom the records before did not;
		 * 'opens': nothing is known of what came after the backup
		 */
		change: z.enum(['retired', 'added', 'changed', 'came-back', 'opens']),
		/** as the backup has them; absent where it does not know them */
		was: personFacts.optional(),
	}),
	z.strictObject({ what: z.literal('passphrase'), personId: id }),
	z.strictObject({
		what: z.literal('consent'),
		consentId: id,
		playerId: id,
		change: z.enum(['withdrawn', 'given', 'refused']),
		/** the record of the consent as the backup has it */
		wasRecord: id.optional(),
	}),
	/** `playerId` is absent where only the ids of the destroyed records were known */
	z.strictObject({
		what: z.literal('destroyed'),
		playerId: id.optional(),
		records: z.int().min(0),
	}),
	z.strictObject({ what: z.literal('sending'), itemId: id, playerId: id, at: z.string() }),
	z.strictObject({
		what: z.literal('to-check'),
		itemId: id,
		playerId: id,
		/** how it stood: released and waiting, perhaps just leaving, or of unknown outcome */
		stood: z.enum(['ready', 'leaving', 'uncertain']),
	}),
])
export type Subject = z.infer<typeof subjects>

export const cameBackLineSchema = z.strictObject({
	lineId: z.string().min(1).max(200),
	subject: subjects,
	/** what may be decided; the first stands already */
	allowed: z.array(z.enum(choices)).min(1),
	decided: z.strictObject({ choice: z.enum(choices), by: z.string(), at: z.string() }).optional(),
})
export type CameBackLine = z.infer<typeof cameBackLineSchema>
/** A list as a record of the kind 'restored' holds it; a decision is its next version. */
export const cameBackSchema = z.strictObject({
	restoreId: id,
	/** when the restored records were first opened, ISO 8601 */
	at: z.string(),
	/**
	 * 'restore': on the PC of these records; 'move': brought to a PC that had none; 'copy': the folder
	 * was copied, or put back by another program
	 */
	how: z.enum(['restore', 'move', 'copy']),
	/** the file name of the backup, or the folder that was copied */
	backup: z.string(),
	/** the last record in the backup, ISO 8601; empty where it held none */
	backupAt: z.string(),
	/** what stood before, kept as this backup; absent after a move */
	before: z.string().optional(),
	lines: z.array(cameBackLineSchema),
})
export type CameBack = z.infer<typeof cameBackSchema>

/** A line that nobody decided yet. */
export function lineOf(subject: Subject, others: readonly Choice[] = []): CameBackLine {
	return { lineId: keyOf(subject), subject, allowed: [appliedTo(subject), ...others] }
}
/** What stands already: what is known of the time before the restore; else what the backup has. */
const appliedTo = (subject: Subject): Choice =>
	subject.what === 'person' && subject.change === 'opens' ? 'as-in-backup' : 'as-before'
function keyOf(subject: Subject): string {
	switch (subject.what) {
		case 'person':
		case 'passphrase':
			return `${subject.what}:${subject.personId}`
		case 'consent':
			return `consent:${subject.consentId}`
		case 'destroyed':
			return `destroyed:${subject.playerId ?? 'others'}`
		case 'sending':
		case 'to-check':
			return `${subject.what}:${subject.itemId}`
	}
}
/** The lines that nobody decided yet. */
export const openLines = ({ lines }: Pick<CameBack, 'lines'>): CameBackLine[] =>
	lines.filter((line) => line.decided === undefined)
/**
 * The list with one line decided.
 * @throws RangeError in words where there is no such line, it is decided, or may not go that way
 */
export function decideLine(
	list: CameBack,
	lineId: string,
	decided: { choice: Choice; by: string; at: string },
): CameBack {
	const line = list.lines.find((known) => known.lineId === lineId)
	if (!line) throw new RangeError('This line is not in the list any more. Open the list again.')
	if (line.decided) throw new RangeError('This line was decided already. Open the list again.')
	if (!line.allowed.includes(decided.choice))
		throw new RangeError('This line cannot be decided that way. Open the list again.')
	return {
		...list,
		lines: list.lines.map((known) => (known === line ? { ...line, decided } : known)),
	}
}
