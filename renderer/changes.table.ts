/** Which answers a change makes old: pages that show them ask again. */
import type { CallName } from '../shared/contract.ts'

const ofRecall = ['recall.list', 'recall.referrals'] as const
const ofVisit = [...ofRecall, 'visits.open', 'visits.history', 'reports.sheet', 'players.open', 'players.summary', 'players.course'] as const
/** The page of an item is asked anew by what happened to the item, which its list says. */
const ofOutbox = [...ofRecall, 'outbox.list', 'outbox.tell', 'breaches.list', 'players.summary'] as const
/** What is put there, or given up before it left, changes what nobody was given yet. */
const ofPut = [...ofOutbox, 'outbox.unsent'] as const
const ofOutreach = [...ofRecall, 'outreach.list', 'players.open', 'players.search', 'players.summary', 'players.course'] as const

/**
 * By the call that changes. A draft is saved each second while somebody types, and a season with
 * each change; their pages keep them: drafts.save and season.save make nothing old. Nor do
 * session.setUp and session.moveHere: the recovery key stays on the screen until the person goes on.
 */
export const makesOld: Readonly<Partial<Record<CallName, readonly CallName[]>>> = {
	'session.unlock': ['session.status'],
	'session.unlockWithRecoveryKey': ['session.status'],
	'session.lock': ['session.status'],
	'session.switch': ['session.status'],
	'session.setPin': ['session.people'],
	'session.changePassphrase': ['session.status'],
	'notices.seen': ['notices.list', 'session.status'],
	'session.newRecoveryKey': ['session.status'],
	'session.confirmRecoveryKey': ['session.status', 'notices.list'],
	'people.save': ['people.list', 'session.people', 'session.status', 'notices.list'],
	'people.retire': ['people.list', 'session.people', 'session.status', 'notices.list', ...ofOutbox],
	'people.changeDataKey': ['people.list', 'session.status'],
	'audit.settle': ['audit.alarms', 'session.status'],
	'recordSettings.save': ['recordSettings.get', 'retention.due'],
	'clinic.save': ['clinic.get', 'session.status'],
	'protocol.save': ['protocol.get', 'protocol.versions', 'clinicAudit.read', 'clinicAudit.forecast'],
	'players.save': ['players.open', 'players.search'],
	'players.merge': ofOutreach,
	'players.unmerge': ofOutreach,
	'visits.sign': ofVisit,
	'visits.amend': ofVisit,
	'visits.markInError': ofVisit,
	'visits.addNote': ofVisit,
	'visits.countersign': ofVisit,
	'reports.handedOver': ofVisit,
	'consents.record': ['consents.list', 'consents.check'],
	'consents.withdraw': ['consents.list', 'consents.check'],
	'retention.hold': ['retention.due'],
	'retention.destroy': ['retention.due', 'retention.register', 'backups.list'],
	'backups.make': ['backups.list', 'session.status'],
	'backups.setFolder': ['backups.list'],
	'backups.restore': ['session.status'],
	'backups.decide': ['backups.cameBack', 'session.status', 'people.list', 'session.people', ...ofOutbox],
	'shelf.save': ['shelf.get', 'shelf.toLearn'],
	'shelf.learn': ['shelf.get', 'shelf.toLearn'],
	'season.plan': ['season.open'],
	'season.take': ['season.open'],
	'squad.create': ['squad.list', 'squad.open'],
	'squad.importPlayers': ['players.search'],
	'squad.mark': ['squad.open'],
	'squad.toFamilies': ofPut,
	'squad.reports': ['squad.progress'],
	'squad.cancel': ['squad.progress'],
	'outreach.makePack': ['outreach.list'],
	'outreach.makeReturn': ['outreach.list'],
	'outreach.merge': ofOutreach,
	'outreach.answer': ofOutreach,
	'outreach.joinDrafts': ['outreach.list', 'players.open'],
	'outreach.putDraftAway': ['outreach.list', 'players.open'],
	'outreach.remove': ofOutreach,
	'outbox.addContact': ['outbox.recipients'],
	'outbox.removeContact': ['outbox.recipients'],
	'outbox.add': ofPut,
	'outbox.release': ofOutbox,
	'outbox.compared': ['outbox.list'],
	'outbox.many': ofPut,
	'outbox.putMany': ofPut,
	'outbox.print': ofOutbox,
	'outbox.back': ofOutbox,
	'outbox.take': ofOutbox,
	'outbox.confirm': ofOutbox,
	'outbox.close': ofPut,
	'outbox.mine': ofOutbox,
	'outbox.resend': ofOutbox,
	'outbox.sentInError': ofOutbox,
	'outbox.readReport': ofOutbox,
	'outbox.sendNow': ofOutbox,
	'outbox.addNote': ['outbox.notes'],
	'outbox.removeNote': ['outbox.notes'],
	'recall.answer': ofRecall,
	'recall.followUp': ofRecall,
	'recall.remind': ofOutbox,
	'clinicAudit.adopt': ['clinicAudit.read', 'clinicAudit.forecast', 'protocol.get', 'protocol.versions'],
	'clinicAudit.setBack': ['clinicAudit.read', 'clinicAudit.forecast', 'protocol.get', 'protocol.versions'],
	'mail.save': ['mail.get', 'outbox.list'],
	'breaches.step': ['breaches.list', 'outbox.list'],
}
