/**
 * A real input for every call of the contract, in a clinic with something of everything. A call that
 * does not stand here is named by the compiler, and by the test that walks them.
 */
import type { CallName, Role } from '../../shared/contract.ts'
import { defaultBreachClock } from '../../shared/desk/outbox/breach.ts'
import type { Purpose } from '../../shared/desk/places/purposes.table.ts'
import { defaultRecordSettings } from '../../shared/desk/records/settings.ts'
import { defaultLook } from '../../shared/desk/workplace/look-choices.ts'
import { clinic, passphrase } from './bench-app.ts'
import { packPassphrase } from './bench-pack.ts'
import { passphrases, type WholeClinic } from './every-call.ts'
import { adult, consent } from './outbox-bench.ts'

interface Row {
	/** whoever may make it is answered; of others it is only held that it is not for their role */
	answered: boolean
	/** it ends the work of who makes it, or puts other records in place: made last */
	last?: boolean
	/** before anybody is there it is for whoever sets up; afterwards nobody finds the door locked */
	whileNew?: boolean
	input: (here: WholeClinic, as: Role) => unknown
}
type Input = Row['input']
/** It reads, or can be done at any time: it must be answered. */
const yes = (input: Input = () => ({})): Row => ({ answered: true, input })
/** It may be refused for what stands in the records: there is nothing to answer, or no server. */
const may = (input: Input = () => ({})): Row => ({ answered: false, input })
const last = (input: Input = () => ({})): Row => ({ answered: true, last: true, input })
const own = (as: Role): string => (as === 'nobody' ? passphrase : passphrases[as])
const ofPlayer: Input = ({ playerId }) => ({ playerId })
const ofMinor: Input = ({ minorId }) => ({ playerId: minorId })
const ofVisit: Input = ({ visitId }) => ({ visitId })
const ofItem: Input = ({ itemId }) => ({ itemId })
const why = 'asked for in the walk'

/** What each may choose a folder or a file for. */
const purposeOf: Record<Role, Purpose> = {
	nobody: 'move-here',
	owner: 'reports',
	clinician: 'reports',
	reception: 'reports',
	student: 'way-back',
}
export const everyCall: Record<CallName, Row> = {
	'session.status': yes(),
	'session.setUp': may(() => ({ clinic, passphrase })),
	'session.unlock': yes((_, as) => ({ passphrase: own(as) })),
	'session.unlockWithRecoveryKey': last(({ recoveryKey }) => ({
		recoveryKey,
		newPassphrase: passphrase,
	})),
	'session.lock': last(),
	'session.alive': yes(),
	'session.people': yes(),
	'session.switch': yes(({ ids }, as) => ({
		personId: as === 'nobody' ? 'owner' : ids[as],
		passphrase: own(as),
	})),
	'session.changePassphrase': yes((_, as) => ({ old: own(as), passphrase: own(as) })),
	'session.setPin': yes((_, as) => ({ passphrase: own(as), pin: '7391' })),
	'session.newRecoveryKey': last((_, as) => ({ passphrase: own(as) })),
	'session.confirmRecoveryKey': may(() => ({
		groups: [
			{ group: 1, typed: 'AAAA' },
			{ group: 2, typed: 'BBBB' },
		],
	})),
	'session.moveHere': may(({ backup }) => ({ file: `/nowhere/${backup}` })),
	'people.list': yes(),
	'people.save': yes(() => ({ name: 'Invented newcomer', registration: '', role: 'reception', passphrase: 'quite other words' })),
	'people.leaving': yes(({ ids }) => ({ personId: ids.student })),
	'people.retire': last(({ ids }) => ({ personId: ids.student, reason: why, outboxTo: 'owner' })),
	'people.changeDataKey': yes(),
	'people.rights': yes(),
	'notices.list': yes(),
	'notices.seen': yes(() => ({ upTo: 20 })),
	'audit.page': yes(() => ({ limit: 500 })),
	'audit.verify': yes(),
	'audit.alarms': yes(),
	'audit.settle': may(() => ({ reason: why })),
	'audit.export': yes(),
	'recordSettings.get': yes(),
	'recordSettings.save': yes(() => defaultRecordSettings),
	'consents.list': yes(ofPlayer),
	'consents.record': yes(({ playerId }) => ({ playerId, consent: consent('email', 'Dr Invented', 'Owain Trescott') })),
	'consents.withdraw': yes(({ playerId, consentId, day }) => ({ playerId, consentId, withdrawn: day, withdrawnBy: 'Owain Trescott' })),
	'consents.check': yes(({ playerId }) => ({ playerId, purpose: 'email', recipient: 'Owain Trescott' })),
	'retention.due': yes(() => ({ on: '2060-01-01' })),
	'retention.hold': yes(({ playerId }) => ({ playerId, reason: why, on: true })),
	'retention.destroy': may(({ goneId }) => ({ playerId: goneId, reason: why, name: 'Owain Gonefar', alsoBackups: false })),
	'retention.register': yes(),
	'clinic.get': yes(),
	'clinic.save': yes(() => ({ ...clinic, phone: '555 0101' })),
	'protocol.get': yes(),
	'protocol.versions': yes(),
	'protocol.preview': yes(() => ({ values: {} })),
	'protocol.save': yes(() => ({ values: {}, why })),
	'look.get': yes(),
	'look.save': yes(() => defaultLook),
	'players.search': yes(() => ({ query: '', limit: 50 })),
	'players.save': yes(({ playerId }) => ({ playerId, player: adult })),
	'players.open': yes(ofPlayer),
	'players.summary': yes(ofPlayer),
	'players.course': yes(ofPlayer),
	'players.typed': yes(ofPlayer),
	'players.keepTyped': yes(({ playerId }) => ({ playerId, typed: { club: 'Invented Rovers' } })),
	'players.merge': yes(({ fromId, intoId }) => ({ from: fromId, into: intoId, reason: why })),
	'players.unmerge': may(({ fromId }) => ({ mergeId: fromId, reason: why })),
	'drafts.open': yes(({ openId, day }) => ({ playerId: openId, visitDate: day })),
	'drafts.save': yes(({ draftId, content }) => ({ draftId, content })),
	'drafts.look': yes(({ draftId }) => ({ draftId, window: 'window of the walk' })),
	'drafts.preview': yes(({ draftId }) => ({ draftId })),
	'visits.sign': yes(({ signId }) => ({ draftId: signId })),
	'visits.open': yes(ofVisit),
	'visits.amend': yes(({ visitId }) => ({ visitId, reason: why })),
	'visits.history': yes(ofVisit),
	'visits.markInError': last(({ plainId }) => ({ visitId: plainId, reason: why })),
	'visits.addNote': yes(({ visitId, day }) => ({ visitId, what: 'late-entry', text: why, occurredOn: day })),
	'visits.countersign': yes(({ studentVisit }) => ({ visitId: studentVisit, text: 'read' })),
	'reports.handedOver': yes(({ visitId }) => ({ visitId, recipient: 'Owain Trescott', channel: 'by-hand' })),
	'reports.open': yes(ofVisit),
	'reports.sheet': yes(ofVisit),
	'reports.page': yes(ofVisit),
	'reports.sheetPage': yes(ofVisit),
	'backups.list': yes(),
	'backups.make': yes(),
	'backups.setFolder': yes(({ stick }) => ({ folder: stick })),
	'backups.preview': yes(({ backup }) => ({ file: backup })),
	'backups.restore': last(({ backup }) => ({ file: backup })),
	'backups.cameBack': yes(),
	'backups.decide': may(() => ({ restoreId: 'r1', decisions: [{ lineId: 'l1', choice: 'as-before' }] })),
	'shelf.get': yes(),
	'shelf.save': yes(() => ({ shelf: { format: 'lastwright-shelf', version: 1, models: [] } })),
	'shelf.previewCsv': yes(() => ({ text: 'name;sole\nBoot;firm-ground' })),
	'shelf.toLearn': yes(),
	'shelf.learn': may(() => ({ of: 'a'.repeat(64), answer: 'count-only' })),
	'shelf.exportCsv': yes(),
	'season.open': yes(ofMinor),
	'season.save': yes(({ minorId }) => ({ playerId: minorId, season: { from: '2027-02-01', to: '2027-02-28', sessions: [{ date: '2027-02-02', start: '18:00', minutes: 75, kind: 'training', surface: 'natural-firm', ground: 'damp' }] } })),
	'season.previewImport': yes(({ minorId }) => ({ playerId: minorId, text: 'Date;Kind\n2027-02-02;training', kind: 'csv', answers: {} })),
	'season.plan': yes(ofMinor),
	'season.take': may(ofMinor),
	'season.leave': yes(ofMinor),
	'season.cancel': yes(ofMinor),
	'season.progress': yes(ofMinor),
	'season.chart': yes(({ minorId }) => ({ playerId: minorId, paper: 'A4' })),
	'season.page': yes(({ minorId }) => ({ playerId: minorId, paper: 'A4' })),
	'season.ics': yes(ofMinor),
	'places.look': { ...may((_, as) => ({ purpose: purposeOf[as] })), whileNew: true },
	'places.newFolder': { ...may(({ stick }, as) => ({ purpose: purposeOf[as], at: stick, name: 'made in the walk' })), whileNew: true },
	'places.choose': { ...may(({ stick }, as) => ({ purpose: purposeOf[as], path: stick, written: true })), whileNew: true },
	'squad.list': yes(),
	'squad.previewRoster': yes(({ day }) => ({ text: 'Given name;Family name;Birth date;Sex\nBo;Quill;2012-03-04;m', team: 'Juniors', day })),
	'squad.create': yes(({ day }) => ({ text: 'Given name;Family name;Birth date;Sex\nBo;Quill;2012-03-04;m', team: 'Seniors', day, same: {} })),
	'squad.importPlayers': yes(({ day }) => ({ text: 'Given name;Family name;Birth date;Sex\nAda;Quell;2012-03-05;f', team: '', day, same: {} })),
	'squad.open': yes(({ squadId }) => ({ squadId })),
	'squad.mark': yes(({ squadId, squadPlayerId }) => ({ squadId, playerId: squadPlayerId, presence: 'here' })),
	'squad.reports': yes(({ squadId, stick }) => ({ squadId, folder: stick })),
	'squad.toFamilies': yes(({ squadId }) => ({ squadId })),
	'squad.progress': yes(({ squadId }) => ({ squadId })),
	'squad.cancel': yes(({ squadId }) => ({ squadId })),
	'squad.summary': yes(({ squadId }) => ({ squadId, version: 'clinician' })),
	'squad.summaryPage': yes(({ squadId }) => ({ squadId, version: 'clinician' })),
	'outreach.list': yes(),
	'outreach.makePack': yes(({ minorId, stick }) => ({ playerIds: [minorId], history: 'all', folder: stick, passphrase: packPassphrase, expires: '2027-02-10' })),
	'outreach.makeReturn': may(({ stick }) => ({ folder: stick, passphrase: packPassphrase })),
	'outreach.previewMerge': yes(({ cameHome }) => ({ file: cameHome, passphrase: packPassphrase })),
	'outreach.merge': yes(({ cameHome }) => ({ file: cameHome, passphrase: packPassphrase })),
	'outreach.progress': yes(),
	'outreach.cancel': yes(),
	'outreach.answer': may(({ playerId }) => ({ what: 'details', id: playerId, choices: {} })),
	'outreach.compareDrafts': may(({ draftId, signId }) => ({ drafts: [draftId, signId] })),
	'outreach.joinDrafts': may(({ draftId, signId }) => ({ drafts: [draftId, signId], choices: {} })),
	'outreach.putDraftAway': may(({ draftId }) => ({ draftId })),
	'outreach.remove': may(() => ({ receipt: 'none' })),
	'outbox.recipients': yes(({ plainId }) => ({ visitId: plainId })),
	'outbox.addContact': yes(({ playerId }) => ({ playerId, role: 'coach', name: 'Coach Invented', email: '', emailAgain: '', warningsRead: true })),
	'outbox.removeContact': yes(({ playerId, contactId }) => ({ playerId, contactId })),
	'outbox.add': yes(({ plainId }) => ({ visitId: plainId, kind: 'guardian', recipientId: 'guardian', channel: 'hand-over', due: '2027-01-25', again: why })),
	'outbox.list': yes(),
	'outbox.unsent': yes(({ day }) => ({ from: day, limit: 20 })),
	'outbox.putMany': yes(({ plainId }) => ({ rows: [{ visitId: plainId, kind: 'guardian', recipientId: 'guardian', channel: 'hand-over' }], due: '2027-01-25' })),
	'outbox.compared': may(({ itemId }) => ({ itemId, sha256: '00', warningsRead: true })),
	'outbox.many': yes(({ itemId }) => ({ act: 'release', itemIds: [itemId], note: '' })),
	'outbox.print': may(({ givenId }) => ({ itemId: givenId })),
	'outbox.look': yes(ofItem),
	'outbox.release': may(({ itemId }) => ({ itemId, sha256: '00', compared: true, warningsRead: true })),
	'outbox.back': may(({ itemId }) => ({ itemId, reason: why })),
	'outbox.take': yes(({ givenId }) => ({ itemId: givenId })),
	'outbox.confirm': yes(({ givenId }) => ({ itemId: givenId, what: 'sent', note: '' })),
	'outbox.close': last(({ itemId }) => ({ itemId, note: '' })),
	'outbox.mine': yes(({ itemId }) => ({ itemId, due: '2027-01-26' })),
	'outbox.password': may(ofItem),
	'outbox.notes': yes(ofPlayer),
	'outbox.addNote': yes(({ playerId }) => ({ playerId, text: 'Ring twice' })),
	'outbox.removeNote': yes(({ playerId, noteId }) => ({ playerId, noteId, reason: why })),
	'outbox.tell': yes(ofPlayer),
	'outbox.sheet': yes(({ givenId }) => ({ itemId: givenId })),
	'outbox.resend': yes(({ givenId }) => ({ itemId: givenId, version: 'same', reason: why })),
	'outbox.sentInError': may(({ givenId }) => ({ itemId: givenId, what: why, noticedAt: '2027-01-20T08:00:00.000Z' })),
	'outbox.readReport': may(() => ({ text: 'no report at all' })),
	'outbox.sendNow': yes(),
	'mail.get': yes(),
	'mail.save': yes(() => ({ clock: defaultBreachClock })),
	'mail.test': may(),
	'breaches.list': yes(),
	'breaches.step': yes(({ breachId }) => ({ breachId, step: 'contain', note: why })),
	'recall.list': yes(() => ({ limit: 50 })),
	'recall.answer': yes(({ due }) => ({ playerId: due.playerId, items: [{ kind: due.items[0].kind, from: due.items[0].from, on: due.items[0].on, ...(due.items[0].pair && { pair: due.items[0].pair }) }], answer: { what: 'booked', on: '2027-02-01' } })),
	'recall.referrals': yes(),
	'recall.followUp': may(({ playerId, visitId }) => ({ playerId, visitIds: [visitId], entry: { what: 'try', says: 'rang, no answer' } })),
	'clinicAudit.read': yes(() => ({ days: { from: '2026-01-01', to: '2027-12-31' } })),
	'clinicAudit.print': yes(() => ({ from: '2026-01-01', to: '2027-12-31' })),
	'clinicAudit.export': yes(() => ({ from: '2026-01-01', to: '2027-12-31' })),
	'clinicAudit.adopt': may(() => ({ from: '2026-01-01', to: '2027-12-31', band: { low: 0.5, high: 1.5 } })),
	'clinicAudit.setBack': may(),
	'clinicAudit.forecast': yes(),
	'recall.remind': yes(({ playerId }) => ({ playerIds: [playerId], way: 'letter' })),
}
