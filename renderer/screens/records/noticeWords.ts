/** The notices of the owner in words; nothing of a patient is in them. */
import type { Notice, NoticeKind } from '../../../shared/desk/people/notices.ts'
import { timeInWords } from '../../parts/dates.ts'

const times = (count: number, one: string, many: string): string =>
	count === 1 ? `1 ${one}` : `${count} ${many}`
interface Named {
	whom: string
	by: string
	count: number
}
const says: Record<NoticeKind, (named: Named) => string> = {
	unlock: ({ count }) =>
		`${times(count, 'wrong passphrase', 'wrong passphrases')} at the locked workstation`,
	pin: ({ count, whom }) => `${times(count, 'wrong PIN', 'wrong PINs')} for ${whom}`,
	'own-passphrase': ({ count, whom }) =>
		`${times(count, 'wrong present passphrase', 'wrong present passphrases')} while ${whom} worked here`,
	'hand-over': ({ count, whom }) =>
		`${times(count, 'wrong passphrase', 'wrong passphrases')} for ${whom} at a hand-over`,
	'person-added': ({ whom, by }) => `${whom} was added by ${by}`,
	'passphrase-given': ({ whom, by }) => `${whom} was given a new passphrase by ${by}`,
	'person-off': ({ whom, by }) => `${whom} was taken off by ${by}`,
	'recovery-key-issued': ({ by }) =>
		`A new recovery key was issued by ${by}; the paper before it opens nothing any more`,
	'recovery-key-used': () =>
		"The recovery key was used: the owner's passphrase was replaced by another one",
	restored: () => 'A backup was put in the place of the records',
	'sent-in-error': ({ by }) => `${by} noted that a document was sent in error: a clock runs`,
	'backup-late': () => 'The backup is late',
	'disk-nearly-full': () => 'The disk is nearly full: soon nothing more can be saved',
}
/** Where the owner looks into it, and what the way there is called. */
export const wayOf: Partial<Record<NoticeKind, readonly [to: string, title: string]>> = {
	restored: ['#/records/after-restore', 'After the restore'],
	'sent-in-error': ['#/outbox', 'Outbox'],
	'backup-late': ['#/records/backups', 'Backups'],
}
export const noticeWords = ({ what, whom = 'somebody', by = 'somebody', times: count }: Notice) =>
	says[what]({ whom, by, count })
export function whenWords({ first, last }: Notice): string {
	const [from, to] = [timeInWords(first), timeInWords(last)]
	return from === to ? to : `${from} to ${to}`
}
export const seenWords = ({ seen }: Notice): string =>
	seen ? `${seen.by}, ${timeInWords(seen.at)}` : 'New'
