/** What a line of the list after a restore says, and what its choices are called. */
import { kindWords } from '../ledger/words.ts'
import { numberOf, type OutboxItem } from '../outbox/item.ts'
import type { Consent } from '../records/consent.ts'
import { purposes } from '../records/consent.ts'
import type { CameBack, Choice, PersonFacts, Subject } from './came-back.ts'

/** What is known now of what a line names by its id; absent where it is gone from the records. */
export interface Known {
	person?: (PersonFacts & { active: boolean }) | undefined
	/** the name of the player */
	player?: string | undefined
	consent?: Consent | undefined
	item?: OutboxItem | undefined
	/** the name that the register keeps of a player whose records were destroyed */
	destroyed?: string | undefined
	/** a moment as the person reads it */
	time: (at: string) => string
}
const unknownPlayer = 'a player who is not in these records'
const personWords: Record<
	Extract<Subject, { what: 'person' }>['change'],
	(name: string, was: PersonFacts | undefined, is: Known['person']) => string
> = {
	retired: (name) => `${name} was taken off after the backup and stays taken off.`,
	added: (name) => `${name} was added after the backup and stays.`,
	changed: (name, was, is) =>
		`${name} was changed after the backup (${factsWords(was)} then, ${factsWords(is)} now) and ` +
		'stays as now.',
	'came-back': (name) =>
		`${name} is in the backup and was not in the records before the restore: not let in.`,
	opens: (name, was) => `${name} (${was?.role ?? 'unknown role'}) can open these records.`,
}
const factsWords = (facts: PersonFacts | undefined): string =>
	facts ? [facts.name, facts.registration, facts.role].filter(Boolean).join(', ') : 'unknown'

const consentWords: Record<Extract<Subject, { what: 'consent' }>['change'], string> = {
	withdrawn: 'was withdrawn after the backup and stays withdrawn.',
	given: 'was given after the backup and stays.',
	refused: 'was refused after the backup and stays refused.',
}
const stoodWords: Record<Extract<Subject, { what: 'to-check' }>['stood'], string> = {
	ready: 'was released and waited to be sent. It stands in To check.',
	leaving: 'was just being sent: it may have arrived. It stands in To check.',
	uncertain: 'was sent with an unknown end: it may have arrived. It stands in To check.',
}
const itemWords = (itemId: string, { item, player }: Known): string =>
	`${numberOf(itemId)} to ${item?.recipient.name ?? 'an unknown recipient'}, of ` +
	`${player ?? unknownPlayer},`

/** One sentence for a line. */
export function lineWords(subject: Subject, known: Known): string {
	const { person, player = unknownPlayer, consent, time } = known
	switch (subject.what) {
		case 'person':
			return personWords[subject.change](
				person?.name ?? subject.was?.name ?? 'A person',
				subject.was,
				person,
			)
		case 'passphrase':
			return (
				`The passphrase of ${person?.name ?? 'a person'} was changed after the backup. The ` +
				'present one opens; the one of that time does not.'
			)
		case 'consent': {
			const { says = 'an unknown purpose' } = consent ? purposes[consent.purpose] : {}
			const whom = consent?.recipient ? ` for ${consent.recipient}` : ''
			return `Consent of ${player} to ${says}${whom} ${consentWords[subject.change]}`
		}
		case 'destroyed':
			return (
				`${subject.records} records of ${known.destroyed ?? 'a player'} were destroyed by the ` +
				'rule before. The backup still held them: they were destroyed again.'
			)
		case 'sending': {
			const when = subject.at ? ` on ${time(subject.at)}` : ''
			return `${itemWords(subject.itemId, known)} was sent${when}, after the backup. It stays noted as sent.`
		}
		case 'to-check':
			return `${itemWords(subject.itemId, known)} ${stoodWords[subject.stood]}`
	}
}
/** What a choice is called on its line. */
export function choiceWords(subject: Subject, choice: Choice): string {
	if (choice === 'take-off') return 'Take this person off'
	if (choice === 'as-before') return 'As before the restore'
	if (subject.what === 'person' && subject.change === 'added')
		return 'As in the backup: take this person off'
	if (subject.what === 'person' && (subject.change === 'retired' || subject.change === 'came-back'))
		return 'As in the backup: let in again'
	if (subject.what === 'consent') return 'As in the backup: note the consent anew as given'
	return 'As in the backup'
}
/** Whether deciding that way asks for a new passphrase of the person. */
export const asksPassphrase = (subject: Subject, choice: Choice): boolean =>
	choice === 'as-in-backup' &&
	subject.what === 'person' &&
	(subject.change === 'retired' || subject.change === 'came-back')

/** Why an item stands in To check after a restore. */
export function toCheckWords(
	stood: Extract<Subject, { what: 'to-check' }>['stood'],
	{ how, hasDocument }: { how: CameBack['how']; hasDocument: boolean },
): string {
	const came =
		how === 'restore'
			? 'A backup was restored. '
			: 'These records were brought to this PC from a backup or a copy. Whether this was sent ' +
				'since is not known here: ask the recipient, or look at the other PC. '
	const rest: Record<typeof stood, string> = {
		ready: 'It was released and waited. Check it and release it again if it is to leave.',
		leaving: 'It was just being sent and may have arrived: ask the recipient before sending again.',
		uncertain:
			'Its end was unknown and it may have arrived: ask the recipient before sending again.',
	}
	const gone = hasDocument ? '' : ' Its document is not in this backup: close it.'
	return `${came}${rest[stood]}${gone}`
}

/** Something that cannot be opened, or is not as it was written. */
export interface Damage {
	id: string
	/** of the record; 'draft' for a draft */
	kind: string
	/** when it was written, ISO 8601; empty where even that is gone */
	at: string
	what: 'record' | 'gone' | 'short-form' | 'list' | 'draft'
}
const damagedAs: Record<Damage['what'], string> = {
	record: 'is damaged and cannot be read',
	gone: 'is gone',
	'short-form': 'has a damaged short form',
	list: 'stands altered in the list of the records',
	draft: 'is damaged and cannot be read',
}
/** @param day the day it was written, in words; empty where even that is gone */
const subjectOf = ({ id, kind, what }: Damage, day: string): string =>
	what === 'draft'
		? `The draft ${id}`
		: `Record ${id} (${[kindWords(kind), day].filter(Boolean).join(' of ')})`

/** @param older the newest older backup that still has it whole; undefined where none has */
export function damagedHere(damage: Damage, day: string, older: string | undefined): string {
	const says = `${subjectOf(damage, day)} ${damagedAs[damage.what]} here`
	if (damage.what === 'draft') return `${says}. Type it again.`
	return older === undefined
		? `${says}. No older backup of this PC has it whole: look into backups on sticks, or of other PCs.`
		: `${says}; an older backup still has it whole: ${older}.`
}
export const damagedThere = (damage: Damage, day: string): string =>
	`${subjectOf(damage, day)} ${damagedAs[damage.what]} in this backup.`

/** So many are named one by one where there is little room. */
const fewNamed = 3
/** @param names what is damaged in a backup, a sentence each */
export const damagedBackupWords = (names: readonly string[]): string =>
	[
		'This backup holds damage. Nothing was changed.',
		...names.slice(0, fewNamed),
		...(names.length > fewNamed ? [`${names.length - fewNamed} more are damaged.`] : []),
		'Choose an older backup, or say that you read what is damaged and restore it all the same.',
	].join(' ')
