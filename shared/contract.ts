/** Every call a screen can make of the host: name, input, output, and who may. */
import { z } from 'zod'
import { shapes } from './desk/outbox/calls.ts'
import { auditRowSchema } from './desk/records/audit.ts'
import { consentSchema, newConsentSchema, purposeNames } from './desk/records/consent.ts'
import { backupReasons } from './desk/records/keep.ts'
import { personSchema, staffRoles } from './desk/records/people.ts'
import { registerLineSchema } from './desk/records/retention.ts'
import { recordSettingsSchema } from './desk/records/settings.ts'
import type { BoardRow } from './desk/squad/board.ts'
import { stationIds } from './desk/squad/stations.ts'
import { lookSchema } from './desk/workplace/look.ts'
import { leastPassphrase } from './desk/workplace/passphrase.ts'
import { protocolSchema } from './engine/protocol/protocol.ts'
import { clinicSchema } from './engine/report/clinic.ts'
import { planSchema } from './engine/season/plan-file.ts'
import type { ImportPreview } from './engine/season/preview.ts'
import { decisionsSchema } from './engine/visit/decisions.ts'
import { shelfSchema } from './engine/visit/shelf.ts'
import { playerSchema, seasonSchema, visitSchema } from './engine/visit/visit.ts'

export const roles = ['nobody', 'clinician', 'student', 'reception', 'owner'] as const
export type Role = (typeof roles)[number]

const id = z.string().min(1).max(80)
/** A draft holds the visit as far as it is valid, and the raw text of fields that are not yet. */
export const draftContentSchema = z.strictObject({
	visit: visitSchema,
	raw: z.record(z.string(), z.string()),
	decisions: decisionsSchema,
	step: z.string().max(40).optional(),
})
export type DraftContent = z.infer<typeof draftContentSchema>

export const cardSchema = z.strictObject({
	playerId: id,
	givenName: z.string(),
	familyName: z.string(),
	birthDate: z.string(),
	sex: z.string(),
	club: z.string().optional(),
	lastVisit: z.string().optional(),
	openDraft: z.boolean(),
})
export type Card = z.infer<typeof cardSchema>
/** What stands in a signed record. The assessment is the engine's own output, kept as data. */
export const signedVisitSchema = z.strictObject({
	visitId: id,
	playerId: id,
	signedAt: z.string(),
	/**
	 * The day of signing on the clinic's calendar; absent in records of the first version of the
	 * program.
	 */
	signedOn: z.iso.date().optional(),
	signedBy: z.strictObject({ name: z.string(), registration: z.string() }),
	visit: visitSchema,
	assessment: z.unknown(),
	decisions: decisionsSchema,
	protocol: z.strictObject({ id: z.string(), version: z.number(), digest: z.string() }),
	/** SHA-256 of the canonical content. */
	digest: z.string(),
	clinic: clinicSchema,
	reportSha256: z.string(),
	/** Absent in version 1. */
	version: z.int().min(2).optional(),
	amends: z.strictObject({ reason: z.string(), digest: z.string() }).optional(),
	/** Who signed, by the list of people; absent in records of the first version of the program. */
	signer: z.strictObject({ personId: z.string(), role: z.string() }).optional(),
})
export type SignedVisit = z.infer<typeof signedVisitSchema>
const pdf = z.strictObject({ base64: z.string(), sha256: z.string(), fileName: z.string() })
const nothing = z.strictObject({})
const draft = z.strictObject({
	draftId: id,
	playerId: id,
	savedAt: z.string(),
	content: draftContentSchema,
})

function call<I extends z.ZodType, O extends z.ZodType>(input: I, output: O, who: readonly Role[]) {
	return { input, output, who }
}
const anyone: readonly Role[] = roles
const staff: readonly Role[] = ['clinician', 'student', 'reception', 'owner']
const clinicians: readonly Role[] = ['clinician', 'owner']
/** Students write and sign under countersignature. */
const treating: readonly Role[] = ['clinician', 'student', 'owner']
const desk: readonly Role[] = ['clinician', 'reception', 'owner']
const owners: readonly Role[] = ['owner']
const reason = z.string().trim().min(3).max(500)
const secret = z.string().min(leastPassphrase).max(200)
const pin = z.string().regex(/^\d{4,10}$/, '4 to 10 digits')
const thresholds = z.record(z.string().max(80), z.number().min(-1_000_000).max(1_000_000))
const filePath = z.string().trim().min(1).max(1000)
const difference = z.strictObject({ path: z.string(), before: z.string(), after: z.string() })
const handed = z.strictObject({
	recipient: z.string(),
	channel: z.string(),
	version: z.number(),
	at: z.string(),
})
const noteSchema = z.strictObject({
	what: z.enum(['in-error', 'late-entry', 'countersign', 'statement']),
	text: z.string(),
	by: z.string(),
	at: z.string(),
	occurredOn: z.string().optional(),
	version: z.number(),
})
export type VisitNote = z.infer<typeof noteSchema>
const backupSchema = z.strictObject({
	file: z.string(),
	folder: z.string(),
	at: z.string(),
	reason: z.enum(backupReasons),
	bytes: z.number(),
})
const auditRow = auditRowSchema.extend({ hash: z.string(), person: z.string() })
const previewSchema = z.strictObject({
	records: z.number(),
	visits: z.number(),
	lastAt: z.string().optional(),
	sameClinic: z.boolean().optional(),
	players: z.number().optional(),
	/** players that stand now and not in the backup, and the reverse */ onlyNow: z.array(z.string()),
	onlyThen: z.array(z.string()),
})

const mergeCounts = z.strictObject({
	in: z.number(),
	added: z.number(),
	already: z.number(),
	quarantined: z.number(),
	heldBack: z.number(),
	before: z.number(),
	after: z.number(),
})
const mergeDuplicates = z.array(
	z.strictObject({
		playerId: z.string(),
		name: z.string(),
		like: z.string(),
		likeName: z.string(),
		why: z.enum(['same-person', 'twin']),
		/** the join in force between the two */ joined: z.string().optional(),
	}),
)
const mergeQuarantined = z.array(
	z.strictObject({ record: z.string(), kind: z.string(), says: z.string() }),
)
const mergeDraftsBoth = z.array(
	z.strictObject({ playerId: z.string(), name: z.string(), drafts: z.array(z.string()) }),
)
const mergeResult = z.strictObject({
	again: z.boolean(),
	madeAt: z.string(),
	madeBy: z.string(),
	players: z.array(
		z.strictObject({
			playerId: z.string(),
			name: z.string(),
			birthDate: z.string(),
			visits: z.number(),
		}),
	),
	counts: mergeCounts,
	receipt: z.string(),
	drafts: z.number(),
	draftsBoth: mergeDraftsBoth,
	duplicates: mergeDuplicates,
	quarantined: mergeQuarantined,
	heldBack: z.array(z.string()),
	/** rows of the laptop's audit trail */ trailRows: z.number(),
	notices: z.array(z.string()),
	questions: z.number(),
})

export const contract = {
	'session.status': call(
		nothing,
		z.strictObject({
			state: z.enum(['needs-setup', 'locked', 'open']),
			demo: z.boolean(),
			clinicName: z.string().optional(),
			version: z.string(),
			warnings: z.array(z.string()),
			person: z
				.strictObject({ personId: z.string(), name: z.string(), role: z.enum(staffRoles) })
				.optional(),
		}),
		anyone,
	),
	'session.setUp': call(
		z.strictObject({ clinic: clinicSchema, passphrase: z.string().min(leastPassphrase).max(200) }),
		z.strictObject({ recoveryKey: z.string() }),
		anyone,
	),
	'session.unlock': call(z.strictObject({ passphrase: z.string().max(200) }), nothing, anyone),
	'session.unlockWithRecoveryKey': call(
		z.strictObject({
			recoveryKey: z.string().max(200),
			newPassphrase: z.string().min(leastPassphrase).max(200),
		}),
		nothing,
		anyone,
	),
	'session.lock': call(nothing, nothing, staff),
	/** A key was pressed or the mouse moved: the records stay open. */
	'session.alive': call(nothing, nothing, staff),
	/** Those who can take over at this PC by PIN. */
	'session.people': call(
		nothing,
		z.strictObject({
			people: z.array(z.strictObject({ personId: id, name: z.string(), role: z.enum(staffRoles) })),
		}),
		staff,
	),
	'session.switch': call(z.strictObject({ personId: id, pin: z.string().max(20) }), nothing, staff),
	'session.changePassphrase': call(
		z.strictObject({ old: z.string().max(200), passphrase: secret }),
		nothing,
		staff,
	),
	'session.setPin': call(z.strictObject({ passphrase: z.string().max(200), pin }), nothing, staff),
	/** A move to a new PC: a backup becomes the records of a PC that has none. */
	/**
	 * With a passphrase the file is a pack, which becomes a store of its own under that passphrase.
	 */
	'session.moveHere': call(
		z.strictObject({ file: filePath, passphrase: z.string().max(200).optional() }),
		z.strictObject({ records: z.number(), visits: z.number(), recoveryKey: z.string().optional() }),
		anyone,
	),
	'people.list': call(nothing, z.strictObject({ people: z.array(personSchema) }), owners),
	'people.save': call(
		z.strictObject({
			personId: id.optional(),
			name: z.string().trim().min(1).max(120),
			registration: z.string().trim().max(60),
			role: z.enum(['clinician', 'student', 'reception']),
			passphrase: secret.optional(),
		}),
		z.strictObject({ personId: id }),
		owners,
	),
	/** Takes a person's passphrase away; what they did stays in the records. */
	'people.retire': call(z.strictObject({ personId: id, reason }), nothing, owners),
	/** `workstation` asks for the rows a laptop brought home, by the name `places` gives it. */
	'audit.page': call(
		z.strictObject({
			before: z.int().min(1).optional(),
			limit: z.int().min(1).max(500),
			playerId: id.optional(),
			function: z.string().max(40).optional(),
			workstation: id.optional(),
		}),
		z.strictObject({
			rows: z.array(auditRow),
			places: z.array(
				z.strictObject({
					workstation: z.string(),
					rows: z.number(),
					from: z.string(),
					to: z.string(),
				}),
			),
		}),
		owners,
	),
	'audit.verify': call(
		nothing,
		z.strictObject({
			rows: z.number(),
			/** of laptops, checked too */ awayRows: z.number(),
			problems: z.array(z.string()),
		}),
		owners,
	),
	'audit.export': call(nothing, z.strictObject({ csv: z.string(), rows: z.number() }), owners),
	'recordSettings.get': call(nothing, recordSettingsSchema, staff),
	'recordSettings.save': call(recordSettingsSchema, nothing, owners),
	'clinic.get': call(nothing, clinicSchema, staff),
	'clinic.save': call(clinicSchema, nothing, clinicians),
	/** The thresholds in force; without `savedAs` the shipped ones. */
	'protocol.get': call(
		nothing,
		z.strictObject({ file: protocolSchema, savedAs: id.optional() }),
		staff,
	),
	/** Newest first. */
	'protocol.versions': call(
		nothing,
		z.strictObject({
			versions: z.array(
				z.strictObject({
					savedAs: id,
					file: protocolSchema,
					why: z.string(),
					by: z.string(),
					at: z.string(),
				}),
			),
		}),
		staff,
	),
	/** What the findings of the demo visits would say; nothing is saved. */
	'protocol.preview': call(
		z.strictObject({ values: thresholds, fpiScheme: z.enum(['raw', 'trial']).optional() }),
		z.strictObject({
			visits: z.number(),
			changes: z.array(
				z.strictObject({
					name: z.string(),
					visitDate: z.string(),
					gone: z.array(z.string()),
					added: z.array(z.string()),
				}),
			),
		}),
		clinicians,
	),
	/**
	 * All values the clinic sets; a key left out has the shipped value. `follows` is the version it
	 * was changed from.
	 */
	'protocol.save': call(
		z.strictObject({
			values: thresholds,
			fpiScheme: z.enum(['raw', 'trial']).optional(),
			why: reason,
			follows: id.optional(),
		}),
		z.strictObject({ file: protocolSchema, savedAs: id }),
		clinicians,
	),
	/** How this PC shows the screens; nothing personal in it. */
	'look.get': call(nothing, lookSchema, anyone),
	'look.save': call(lookSchema, nothing, staff),
	'players.search': call(
		z.strictObject({ query: z.string().max(200), limit: z.int().min(1).max(500) }),
		z.strictObject({ total: z.number(), cards: z.array(cardSchema) }),
		staff,
	),
	/** Without playerId a new player; possible duplicates are returned, never merged. */
	'players.save': call(
		z.strictObject({ playerId: id.optional(), player: playerSchema }),
		z.strictObject({ playerId: id, similar: z.array(cardSchema) }),
		staff,
	),
	'players.open': call(
		z.strictObject({ playerId: id }),
		z.strictObject({
			player: playerSchema,
			visits: z.array(
				z.strictObject({
					visitId: id,
					visitDate: z.string(),
					signedAt: z.string(),
					version: z.number().optional(),
					inError: z.boolean().optional(),
					awaitsCountersign: z.boolean().optional(),
				}),
			),
			merged: z.array(z.strictObject({ mergeId: id, playerId: id, name: z.string() })).optional(),
			drafts: z.array(
				z.strictObject({
					draftId: id,
					visitDate: z.string(),
					savedAt: z.string(),
					/** the signed visit it will be the next version of */ amends: z
						.strictObject({ visitId: id, visitDate: z.string(), version: z.number() })
						.optional(),
				}),
			),
		}),
		staff,
	),
	/** Resumes the player's open draft, or starts one dated `visitDate`. */
	'drafts.open': call(
		z.strictObject({ playerId: id, visitDate: z.iso.date() }),
		z.strictObject({ draft, earlier: z.array(visitSchema) }),
		treating,
	),
	'drafts.save': call(
		z.strictObject({ draftId: id, content: draftContentSchema }),
		z.strictObject({ savedAt: z.string() }),
		treating,
	),
	'drafts.preview': call(z.strictObject({ draftId: id }), pdf, treating),
	'visits.sign': call(z.strictObject({ draftId: id }), z.strictObject({ visitId: id }), treating),
	'visits.open': call(z.strictObject({ visitId: id }), signedVisitSchema, treating),
	/**
	 * Opens a draft that becomes the next version when it is signed. The signed version stays as it
	 * is.
	 */
	'visits.amend': call(
		z.strictObject({ visitId: id, reason }),
		z.strictObject({ draftId: id }),
		clinicians,
	),
	'visits.history': call(
		z.strictObject({ visitId: id }),
		z.strictObject({
			versions: z.array(
				z.strictObject({
					version: z.number(),
					signedAt: z.string(),
					by: z.string(),
					reason: z.string().optional(),
					differences: z.array(difference),
				}),
			),
			notes: z.array(noteSchema),
			handedOver: z.array(handed),
			tell: z.array(handed),
		}),
		treating,
	),
	'visits.markInError': call(z.strictObject({ visitId: id, reason }), nothing, clinicians),
	/**
	 * Words added afterwards, with their own author and time; a refused correction keeps the person's
	 * own statement.
	 */
	'visits.addNote': call(
		z.strictObject({
			visitId: id,
			what: z.enum(['late-entry', 'statement']),
			text: z.string().trim().min(1).max(4000),
			occurredOn: z.iso.date(),
		}),
		nothing,
		clinicians,
	),
	'visits.countersign': call(
		z.strictObject({ visitId: id, text: z.string().max(500) }),
		nothing,
		clinicians,
	),
	/** Notes that a report left the records: whom to tell after an amendment hangs on it. */
	'reports.handedOver': call(
		z.strictObject({
			visitId: id,
			recipient: z.string().trim().min(1).max(160),
			channel: z.enum(['print', 'export', 'send', 'by-hand']),
		}),
		nothing,
		desk,
	),
	'players.merge': call(
		z.strictObject({ from: id, into: id, reason }),
		z.strictObject({ mergeId: id }),
		clinicians,
	),
	'players.unmerge': call(z.strictObject({ mergeId: id, reason }), nothing, clinicians),
	'consents.list': call(
		z.strictObject({ playerId: id }),
		z.strictObject({ consents: z.array(consentSchema) }),
		staff,
	),
	'consents.record': call(
		z.strictObject({ playerId: id, consent: newConsentSchema }),
		z.strictObject({ consentId: id }),
		desk,
	),
	'consents.withdraw': call(
		z.strictObject({
			playerId: id,
			consentId: id,
			withdrawn: z.iso.date(),
			withdrawnBy: z.string().trim().min(1).max(160),
		}),
		nothing,
		desk,
	),
	/** Asked at the moment of use. */
	'consents.check': call(
		z.strictObject({ playerId: id, purpose: z.enum(purposeNames), recipient: z.string().max(160) }),
		z.strictObject({
			inForce: z.boolean(),
			because: z.string(),
			consentId: z.string().optional(),
			expires: z.string().optional(),
		}),
		staff,
	),
	'retention.due': call(
		z.strictObject({ on: z.iso.date().optional() }),
		z.strictObject({
			rule: z.string(),
			due: z.array(
				z.strictObject({
					playerId: id,
					name: z.string(),
					birthDate: z.string(),
					lastEntry: z.string(),
					keepUntil: z.string(),
				}),
			),
			held: z.array(z.strictObject({ playerId: id, name: z.string(), reason: z.string() })),
		}),
		owners,
	),
	'retention.hold': call(
		z.strictObject({ playerId: id, reason, on: z.boolean() }),
		nothing,
		clinicians,
	),
	/** Removes the bytes and keeps a register line. */
	'retention.destroy': call(
		z.strictObject({ playerId: id, reason, name: z.string().max(200), alsoBackups: z.boolean() }),
		z.strictObject({ records: z.number(), backupsThatStillHold: z.array(z.string()) }),
		owners,
	),
	'retention.register': call(
		nothing,
		z.strictObject({ lines: z.array(registerLineSchema.omit({ recordIds: true })) }),
		owners,
	),
	'backups.list': call(
		nothing,
		z.strictObject({
			folder: z.string(),
			ageDays: z.number().optional(),
			nag: z.string(),
			backups: z.array(backupSchema),
		}),
		staff,
	),
	'backups.make': call(z.strictObject({ folder: filePath.optional() }), backupSchema, staff),
	'backups.setFolder': call(z.strictObject({ folder: filePath }), nothing, owners),
	'backups.preview': call(z.strictObject({ file: filePath }), previewSchema, owners),
	'backups.restore': call(
		z.strictObject({ file: filePath }),
		z.strictObject({ before: z.string() }),
		owners,
	),
	'reports.open': call(
		z.strictObject({
			visitId: id,
			/** an earlier version; absent: the latest */ version: z.number().int().min(1).optional(),
		}),
		pdf,
		staff,
	),
	/**
	 * The latest report as one page for a screen reader, from the very description its pages were
	 * drawn from.
	 */
	'reports.page': call(
		z.strictObject({ visitId: id }),
		z.strictObject({ html: z.string(), fileName: z.string() }),
		staff,
	),
	/** Without `shelf` none was ever saved. `savedAs` names the record it stands in. */
	'shelf.get': call(
		nothing,
		z.strictObject({ shelf: shelfSchema.optional(), savedAs: id.optional() }),
		staff,
	),
	/**
	 * The whole shelf. `follows` is the record it was changed from: refused where another one was
	 * saved meanwhile.
	 */
	'shelf.save': call(
		z.strictObject({ shelf: shelfSchema, follows: id.optional() }),
		z.strictObject({ savedAs: id }),
		desk,
	),
	/**
	 * Reads a table and changes nothing: the models that can be taken in, and each bad cell by line
	 * and column.
	 */
	'shelf.previewCsv': call(
		z.strictObject({ text: z.string() }),
		z.strictObject({
			shelf: shelfSchema,
			good: z.number(),
			problems: z.array(
				z.strictObject({ row: z.number(), column: z.string(), message: z.string() }),
			),
		}),
		desk,
	),
	/**
	 * The season with its last plan. `blocked` says why no rotation may be given out; `from` is the
	 * first day that is not the past.
	 */
	'season.open': call(
		z.strictObject({ playerId: id }),
		z.strictObject({
			name: z.string(),
			from: z.string(),
			running: z.boolean(),
			/** under the age from which feet count as grown */ young: z.boolean(),
			season: seasonSchema.optional(),
			savedAs: id.optional(),
			blocked: z.string().optional(),
			basis: z.strictObject({ from: z.enum(['draft', 'visit']), visitDate: z.string() }).optional(),
			pairs: z.array(
				z.strictObject({
					id: z.string(),
					letter: z.string(),
					name: z.string(),
					sole: z.string().optional(),
				}),
			),
			planned: z
				.strictObject({
					plan: planSchema,
					changes: z.array(z.strictObject({ date: z.string(), says: z.string() })),
					at: z.string(),
					version: z.number(),
					/** record of the season it was made of */ season: id,
					basisChanged: z.boolean(),
				})
				.optional(),
		}),
		treating,
	),
	/**
	 * The whole season. `follows` is the record it was changed from: refused where another one was
	 * saved meanwhile.
	 */
	'season.save': call(
		z.strictObject({ playerId: id, season: seasonSchema, follows: id.optional() }),
		z.strictObject({ savedAs: id }),
		treating,
	),
	/**
	 * Reads a fixture list and changes nothing. `answers` by the keys of the questions, and `source`,
	 * the name of the list.
	 */
	'season.previewImport': call(
		z.strictObject({
			playerId: id,
			text: z.string().max(5_000_000),
			kind: z.enum(['ics', 'csv']),
			answers: z.record(z.string().max(400), z.string().max(200)),
		}),
		z.custom<ImportPreview>(),
		treating,
	),
	/**
	 * Sessions before `from` stay as they were. The change against the last plan is told in words.
	 */
	'season.plan': call(
		z.strictObject({ playerId: id, from: z.iso.date().optional() }),
		z.strictObject({
			plan: planSchema,
			changes: z.array(z.strictObject({ date: z.string(), says: z.string() })),
			first: z.boolean(),
		}),
		treating,
	),
	'season.cancel': call(
		z.strictObject({ playerId: id }),
		z.strictObject({ cancelled: z.boolean() }),
		treating,
	),
	'season.progress': call(
		z.strictObject({ playerId: id }),
		z.strictObject({
			running: z.boolean(),
			pass: z.number().optional(),
			seconds: z.number().optional(),
			gap: z.number().optional(),
		}),
		treating,
	),
	'season.chart': call(
		z.strictObject({ playerId: id, paper: z.enum(['A4', 'A3', 'pocket']) }),
		pdf,
		treating,
	),
	'season.ics': call(
		z.strictObject({ playerId: id }),
		z.strictObject({ text: z.string(), fileName: z.string() }),
		treating,
	),
	'squad.list': call(
		nothing,
		z.strictObject({
			days: z.array(
				z.strictObject({
					squadId: z.string(),
					team: z.string(),
					day: z.string(),
					players: z.number(),
				}),
			),
		}),
		staff,
	),
	/** Reads a roster and changes nothing. */
	'squad.previewRoster': call(
		z.strictObject({ text: z.string(), team: z.string().trim().max(120), day: z.iso.date() }),
		z.strictObject({
			problems: z.array(
				z.strictObject({ row: z.number(), column: z.string(), message: z.string() }),
			),
			rows: z.array(
				z.strictObject({
					row: z.number(),
					number: z.string(),
					name: z.string(),
					birthDate: z.string(),
					guardian: z.string().optional(),
					consents: z.array(z.string()),
					known: z.array(
						z.strictObject({
							playerId: z.string(),
							name: z.string(),
							birthDate: z.string(),
							why: z.enum(['same-person', 'twin']),
						}),
					),
				}),
			),
		}),
		staff,
	),
	/**
	 * `same` by row number: a player on record, or `new`. With `squadId` late arrivals join that day.
	 */
	'squad.create': call(
		z.strictObject({
			text: z.string(),
			team: z.string().trim().min(1).max(120),
			day: z.iso.date(),
			same: z.record(z.string().max(10), id),
			squadId: id.optional(),
		}),
		z.strictObject({ squadId: z.string(), players: z.number() }),
		desk,
	),
	'squad.open': call(
		z.strictObject({ squadId: id }),
		z.strictObject({
			squadId: z.string(),
			team: z.string(),
			day: z.string(),
			rows: z.array(z.custom<BoardRow>()),
			doubled: z.array(z.strictObject({ number: z.string(), names: z.array(z.string()) })),
			stations: z.array(z.strictObject({ id: z.enum(stationIds), name: z.string() })),
		}),
		staff,
	),
	'squad.mark': call(
		z.strictObject({
			squadId: id,
			playerId: id,
			presence: z.enum(['expected', 'here', 'absent', 'refused']),
			at: z.enum(stationIds).optional(),
			reason: z.string().trim().max(300).optional(),
		}),
		nothing,
		staff,
	),
	/**
	 * Starts writing the signed reports of the day; progress is asked, and it can be cancelled
	 * between two players.
	 */
	'squad.reports': call(
		z.strictObject({ squadId: id, folder: filePath }),
		z.strictObject({ total: z.number() }),
		desk,
	),
	'squad.progress': call(
		z.strictObject({ squadId: id }),
		z.strictObject({
			running: z.boolean(),
			done: z.number(),
			total: z.number(),
			files: z.number(),
			failed: z.array(z.string()),
			said: z.string(),
		}),
		staff,
	),
	'squad.cancel': call(
		z.strictObject({ squadId: id }),
		z.strictObject({ cancelled: z.boolean() }),
		desk,
	),
	'squad.summary': call(
		z.strictObject({ squadId: id, version: z.enum(['club', 'clinician']) }),
		z.strictObject({ pdf, leftOut: z.array(z.string()) }),
		clinicians,
	),
	/**
	 * Packs that went out, what came home, what is still to be answered; on a laptop what it carries.
	 */
	'outreach.list': call(
		nothing,
		z.strictObject({
			carries: z
				.strictObject({
					packId: z.string(),
					madeAt: z.string(),
					by: z.string(),
					expires: z.string(),
					ranOut: z.boolean(),
					players: z.array(
						z.strictObject({
							playerId: z.string(),
							name: z.string(),
							birthDate: z.string(),
							visits: z.number(),
						}),
					),
					counts: z.record(z.string(), z.number()),
					shelf: z.boolean(),
					protocol: z.strictObject({ id: z.string(), version: z.number(), digest: z.string() }),
					removedAt: z.string().optional(),
					newHere: z.strictObject({ records: z.number(), drafts: z.number() }),
				})
				.optional(),
			out: z.array(
				z.strictObject({
					packId: z.string(),
					madeAt: z.string(),
					by: z.string(),
					expires: z.string(),
					file: z.string(),
					players: z.array(z.string()),
					home: z.boolean(),
				}),
			),
			merged: z.array(
				z.strictObject({
					packId: z.string(),
					at: z.string(),
					by: z.string(),
					counts: mergeCounts,
					trailRows: z.number(),
					receipt: z.string(),
					duplicates: mergeDuplicates,
					quarantined: mergeQuarantined,
					draftsBoth: mergeDraftsBoth,
				}),
			),
			questions: z.array(
				z.strictObject({
					what: z.enum(['details', 'consent', 'version']),
					id: z.string(),
					playerId: z.string().optional(),
					name: z.string(),
					says: z.string(),
					fields: z.array(
						z.strictObject({
							field: z.string(),
							values: z.array(
								z.strictObject({
									record: z.string(),
									at: z.string(),
									place: z.string(),
									shown: z.string(),
								}),
							),
						}),
					),
				}),
			),
		}),
		treating,
	),
	'outreach.makePack': call(
		z.strictObject({
			playerIds: z.array(id).max(2000),
			history: z.enum(['none', 'last', 'all']),
			folder: filePath,
			passphrase: secret,
			expires: z.iso.date(),
		}),
		z.strictObject({
			file: z.string(),
			bytes: z.number(),
			packId: z.string(),
			players: z.number(),
			records: z.number(),
			drafts: z.number(),
		}),
		clinicians,
	),
	'outreach.makeReturn': call(
		z.strictObject({ folder: filePath, passphrase: z.string().max(200) }),
		z.strictObject({
			file: z.string(),
			bytes: z.number(),
			records: z.number(),
			drafts: z.number(),
		}),
		treating,
	),
	/** The merge as it would be; nothing is changed. */
	'outreach.previewMerge': call(
		z.strictObject({ file: filePath, passphrase: z.string().max(200) }),
		mergeResult,
		clinicians,
	),
	'outreach.merge': call(
		z.strictObject({ file: filePath, passphrase: z.string().max(200) }),
		mergeResult,
		clinicians,
	),
	/** `choices` name for each field the record whose value stands. */
	'outreach.answer': call(
		z.strictObject({
			what: z.enum(['details', 'consent', 'version']),
			id,
			playerId: id.optional(),
			choices: z.record(z.string().max(60), id),
		}),
		nothing,
		clinicians,
	),
	'outreach.compareDrafts': call(
		z.strictObject({ drafts: z.array(id).length(2) }),
		z.strictObject({
			savedAt: z.array(z.string()),
			differences: z.array(
				z.strictObject({ path: z.string(), first: z.string(), second: z.string() }),
			),
		}),
		treating,
	),
	/** Joins two drafts of one visit; `choices` by path the draft whose value stands. */
	'outreach.joinDrafts': call(
		z.strictObject({ drafts: z.array(id).length(2), choices: z.record(z.string().max(200), id) }),
		nothing,
		clinicians,
	),
	'outreach.putDraftAway': call(z.strictObject({ draftId: id }), nothing, clinicians),
	/**
	 * On the laptop: with the receipt of home its copy goes, and a register line for each player
	 * stays.
	 */
	'outreach.remove': call(
		z.strictObject({ receipt: z.string().max(40) }),
		z.strictObject({ records: z.number(), lines: z.number() }),
		clinicians,
	),
	'outbox.recipients': call(shapes.recipients.in, shapes.recipients.out, desk),
	/** A typed address is put on record: twice, and with its warnings read. */
	'outbox.addContact': call(shapes.addContact.in, shapes.addContact.out, desk),
	'outbox.removeContact': call(shapes.removeContact.in, shapes.nothing.out, desk),
	/**
	 * Composes a document of a signed visit for one recipient and puts it into the queue, to be
	 * checked.
	 */
	'outbox.add': call(shapes.add.in, shapes.add.out, desk),
	'outbox.list': call(shapes.list.in, shapes.list.out, desk),
	/** The stored bytes with what must be compared; nothing is released without it. */
	'outbox.look': call(shapes.look.in, shapes.look.out, desk),
	'outbox.release': call(shapes.release.in, shapes.nothing.out, desk),
	'outbox.back': call(shapes.back.in, shapes.nothing.out, desk),
	/** The bytes for the printer, the hand or the mail program. */
	'outbox.take': call(shapes.take.in, shapes.take.out, desk),
	'outbox.confirm': call(shapes.confirm.in, shapes.nothing.out, desk),
	'outbox.close': call(shapes.close.in, shapes.nothing.out, desk),
	'outbox.mine': call(shapes.mine.in, shapes.nothing.out, desk),
	'outbox.password': call(shapes.password.in, shapes.password.out, desk),
	/** What must be read before anything of a player leaves. */
	'outbox.notes': call(shapes.notes.in, shapes.notes.out, desk),
	'outbox.addNote': call(shapes.addNote.in, shapes.addNote.out, desk),
	'outbox.removeNote': call(shapes.removeNote.in, shapes.nothing.out, desk),
	/** Who still holds an earlier version. */
	'outbox.tell': call(shapes.tell.in, shapes.tell.out, desk),
	/** A cover page and proof of sending, without clinical words. */
	'outbox.sheet': call(shapes.sheet.in, shapes.sheet.out, desk),
	'outbox.resend': call(shapes.resend.in, shapes.resend.out, desk),
	'outbox.sentInError': call(shapes.sentInError.in, shapes.sentInError.out, desk),
	/** A delivery report of the mail system (RFC 3464), pasted. */
	'outbox.readReport': call(shapes.readReport.in, shapes.readReport.out, desk),
	'outbox.sendNow': call(shapes.nothing.in, shapes.nothing.out, desk),
	'mail.get': call(shapes.mailGet.in, shapes.mailGet.out, desk),
	'mail.save': call(shapes.mailSave.in, shapes.nothing.out, owners),
	'mail.test': call(shapes.mailTest.in, shapes.mailTest.out, owners),
	'breaches.list': call(shapes.breaches.in, shapes.breaches.out, desk),
	'breaches.step': call(shapes.breachStep.in, shapes.nothing.out, desk),
	'shelf.exportCsv': call(nothing, z.strictObject({ csv: z.string(), models: z.number() }), staff),
} as const
export type Contract = typeof contract
export type CallName = keyof Contract
export type InputOf<N extends CallName> = z.input<Contract[N]['input']>
export type OutputOf<N extends CallName> = z.output<Contract[N]['output']>
/** Every answer crosses as one of these; a refusal is words for the person, never a stack. */
export type Answer<T> =
	| { ok: true; value: T }
	| { ok: false; message: string; problems?: { path: string; message: string }[] }
