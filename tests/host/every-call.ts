/**
 * A clinic with something of everything, for walking all calls as each role: signed visits with
 * private entries, drafts, the outbox, a squad day, a season, who is due, packs, backups.
 */
import type { Role } from '../../shared/contract.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { decideAll } from '../decide.ts'
import { clinic, folder, type Opened, open, passphrase, pdf } from './bench-app.ts'
import { back, laptopOf, packed, stick } from './bench-pack.ts'
import { adult, consent, minor } from './outbox-bench.ts'

export const passphrases = {
	owner: passphrase,
	clinician: 'clinician words',
	student: 'student words',
	reception: 'reception words',
} as const
/** What only those who treat may read: measures, what was found, words and private entries. */
export const secrets = {
	heelToToeMm: 271.5,
	lungeCm: 3.35,
	massKg: 83.7,
	notes: 'Sentinel words of the clinician',
	safeguarding: 'Sentinel words of safeguarding',
	condition: 'sesamoid',
	sign: 'Sentinel sent on the same day',
} as const
const day = '2027-01-20'
/** What reception may send: measured and found, nothing private. */
const plainVisit = {
	notes: secrets.notes,
	feet: {
		left: { heelToToeMm: secrets.heelToToeMm },
		right: { heelToToeMm: secrets.heelToToeMm },
	},
	ankles: { left: { lungeCm: secrets.lungeCm }, right: { lungeCm: 9 } },
	footwear: [{ id: 'p1', name: 'boots', sole: 'firm-ground', sizeSystem: 'eu', size: 42 }],
	conditions: [{ condition: 'sesamoid-pain', side: 'left', status: 'current' }],
}
/** The same with a sign that is held on, and with private entries. */
const privateVisit = {
	...plainVisit,
	body: { massKg: secrets.massKg },
	screening: {
		...{ fever: true, anticoagulant: true, unintendedWeightLoss: false },
		safeguardingNote: secrets.safeguarding,
	},
}
/** An open draft with all of that in it, and its answers. */
async function drafted({ ask }: Opened, playerId: string, visit: object): Promise<string> {
	const { draft } = await ask('drafts.open', { playerId, visitDate: day })
	const { content, draftId } = draft
	const decisions = { ...content.decisions, referralDone: secrets.sign }
	await ask('drafts.save', {
		draftId,
		content: { ...content, visit: { ...content.visit, ...visit }, decisions },
	})
	return decideAll(ask, playerId, day)
}
async function signedVisit(app: Opened, playerId: string, visit: object): Promise<string> {
	const draftId = await drafted(app, playerId, visit)
	return (await app.ask('visits.sign', { draftId })).visitId
}
const roster = [
	'Number;Given name;Family name;Birth date;Sex;Guardian;Guardian e-mail;Consents',
	'7;Ambel;Corvin;2012-03-04;f;Ida Corvin;ida@example.org;squad-summary',
	'9;Dorrit;Maywood;2011-08-21;f;Sol Maywood;sol@example.org;',
].join('\r\n')

/** Everybody who works there, and those who are added for the walk. */
async function people({ ask }: Opened): Promise<Record<Exclude<Role, 'nobody'>, string>> {
	const add = async (role: 'clinician' | 'student' | 'reception') =>
		(
			await ask('people.save', {
				name: `Invented ${role}`,
				registration: role === 'clinician' ? 'X2' : '',
				role,
				passphrase: passphrases[role],
			})
		).personId
	const clinician = await add('clinician')
	const student = await add('student')
	return { owner: 'owner', clinician, student, reception: await add('reception') }
}
async function players({ ask }: Opened) {
	const save = async (player: object): Promise<string> =>
		(await ask('players.save', { player })).playerId
	const other = (familyName: string) => save({ ...adult, familyName, email: undefined })
	return {
		...{ playerId: await save(adult), minorId: await save(minor) },
		...{ openId: await other('Openwick'), toSignId: await other('Signwell') },
		...{ studentsId: await other('Learnfield'), goneId: await other('Gonefar') },
		...{ fromId: await other('Joinfrom'), intoId: await other('Joininto') },
	}
}
/** What waits in the outbox, and what left it and was noted as sent in error. */
async function outbox({ ask }: Opened, visitId: string) {
	const item = { visitId, kind: 'guardian', recipientId: 'guardian', channel: 'print' }
	const due = '2027-01-25'
	const { itemId } = await ask('outbox.add', { ...item, due })
	const { itemId: givenId } = await ask('outbox.add', { ...item, due, again: 'once more' })
	const { sha256 } = await ask('outbox.look', { itemId: givenId })
	await ask('outbox.release', { itemId: givenId, sha256, compared: true, warningsRead: true })
	await ask('outbox.take', { itemId: givenId })
	const { breachId } = await ask('outbox.sentInError', {
		...{ itemId: givenId, what: 'put into the wrong envelope' },
		noticedAt: '2027-01-20T08:00:00.000Z',
	})
	return { itemId, givenId, breachId }
}
async function squadDay(app: Opened) {
	const { ask } = app
	const { squadId } = await ask('squad.create', { text: roster, day, same: {}, team: 'Juniors' })
	const { rows } = await ask('squad.open', { squadId })
	await signedVisit(app, rows[1].playerId, plainVisit)
	return { squadId: squadId as string, squadPlayerId: rows[0].playerId as string }
}
async function cameHome(app: Opened, playerId: string): Promise<string> {
	const laptop = await laptopOf(await packed(app, [playerId]))
	const file = await back(laptop.app)
	laptop.app.close()
	return file
}
/** @param renderPdf draws the pages; an empty page where it is not given */
export async function wholeClinic(renderPdf?: (document: LwDocument) => Promise<Uint8Array>) {
	const app = open(folder(), undefined, renderPdf ?? (async () => pdf))
	const { ask } = app
	const { recoveryKey } = await ask('session.setUp', { clinic, passphrase })
	const ids = await people(app)
	const all = await players(app)
	const { playerId } = all
	await workAs(app, 'student')
	const studentVisit = await signedVisit(app, all.studentsId, plainVisit)
	await workAs(app, 'owner')
	const visitId = await signedVisit(app, playerId, privateVisit)
	const plainId = await signedVisit(app, all.minorId, plainVisit)
	const draftId = await drafted(app, all.openId, privateVisit)
	const signId = await drafted(app, all.toSignId, plainVisit)
	const doctor = { role: 'doctor', name: 'Dr Invented', email: '', emailAgain: '' }
	const { contactId } = await ask('outbox.addContact', { playerId, ...doctor, warningsRead: true })
	const given = consent('email', 'Owain Trescott')
	const { consentId } = await ask('consents.record', { playerId, consent: given })
	const { noteId } = await ask('outbox.addNote', { playerId, text: 'Ring first' })
	const said = { what: 'late-entry', text: secrets.notes, occurredOn: day }
	await ask('visits.addNote', { visitId, ...said })
	const { file: backup } = await ask('backups.make')
	const [due] = (await ask('recall.list', { limit: 50 })).lines
	return {
		...{ app, ids, ...all, visitId, plainId, studentVisit, draftId, signId, due, stick: stick() },
		...{ contactId, consentId, noteId, backup, day, recoveryKey: recoveryKey as string },
		...{ ...(await outbox(app, plainId)), ...(await squadDay(app)) },
		cameHome: await cameHome(app, all.minorId),
		content: (await ask('drafts.open', { playerId: all.openId, visitDate: day })).draft.content,
	}
}
export type WholeClinic = Awaited<ReturnType<typeof wholeClinic>>

/** Unlocks as the role, or locks for nobody, where it is not so already. */
export async function workAs({ ask }: Opened, role: Role): Promise<void> {
	const { state, person } = await ask('session.status')
	const now = state === 'locked' ? 'nobody' : person.role
	if (now === role) return
	if (now !== 'nobody') await ask('session.lock')
	if (role !== 'nobody') await ask('session.unlock', { passphrase: passphrases[role] })
}
