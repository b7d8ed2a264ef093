/** The calls about unlocking, and about who works here. */
import { z } from 'zod'
import { clinicSchema } from '../../engine/report/clinic.ts'
import { personSchema, staffRoles } from '../records/people.ts'
import { anyone, call, owners, staff } from '../workplace/call.ts'
import { leastPassphrase } from '../workplace/passphrase.ts'
import { filePath, id, nothing, reason, secret } from '../workplace/shapes.ts'
import { noticeSchema } from './notices.ts'

/** What who works here should know of the ways in; the screens word it. */
const toldSchema = z.strictObject({
	/** one's own passphrase should be changed: the owner gave it, or it is weak */
	passphraseDue: z.enum(['given', 'weak']).optional(),
	/** for the owner: nobody typed part of the printed recovery key yet */
	recoveryKeyUnconfirmed: z.boolean().optional(),
	/** for the owner: somebody left, and the key of the records could not be changed yet */
	keyChangeDue: z.boolean().optional(),
	/** for the owner: something was found wrong with the records, and nobody has looked into it yet */
	alarms: z.boolean().optional(),
	/** for the owner: so many notices that nobody has marked as seen */
	notices: z.int().min(1).optional(),
})
/** Names of those whose passphrase opens nothing that is written from now on. */
const needNewPassphrase = z.array(z.string()).optional()
const pin = z.string().regex(/^\d{4,10}$/, '4 to 10 digits')

export const peopleCalls = {
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
			told: toldSchema.optional(),
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
	/** Those who can take over at this PC, by PIN or by their passphrase. */
	'session.people': call(
		nothing,
		z.strictObject({
			people: z.array(
				z.strictObject({
					personId: id,
					name: z.string(),
					role: z.enum(staffRoles),
					/** a PIN opens, within the tries that are left for it */
					hasPin: z.boolean(),
				}),
			),
		}),
		staff,
	),
	/** Hands over at this PC: by the PIN of who comes, or by their passphrase. */
	'session.switch': call(
		z
			.strictObject({
				personId: id,
				pin: z.string().max(20).optional(),
				passphrase: z.string().max(200).optional(),
			})
			.refine(({ pin, passphrase }) => (pin === undefined) !== (passphrase === undefined), {
				path: ['pin'],
				message: 'given both or neither, allowed: the PIN, or in its place the passphrase',
			}),
		nothing,
		staff,
	),
	'session.changePassphrase': call(
		z.strictObject({ old: z.string().max(200), passphrase: secret }),
		nothing,
		staff,
	),
	'session.setPin': call(z.strictObject({ passphrase: z.string().max(200), pin }), nothing, staff),
	/**
	 * Another recovery key. It is in force at once where nobody confirmed the one before, otherwise
	 * once it is confirmed; the old paper opens nothing from then on.
	 */
	'session.newRecoveryKey': call(
		z.strictObject({ passphrase: z.string().max(200) }),
		z.strictObject({ recoveryKey: z.string() }),
		owners,
	),
	/** Two groups of the printed key, typed from the paper. */
	'session.confirmRecoveryKey': call(
		z.strictObject({
			groups: z
				.array(z.strictObject({ group: z.int().min(1).max(4), typed: z.string().max(40) }))
				.length(2)
				.refine(([first, second]) => first?.group !== second?.group, 'two different groups'),
		}),
		nothing,
		owners,
	),
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
	/** What a person would leave behind, asked before they are taken off. */
	'people.leaving': call(
		z.strictObject({ personId: id }),
		z.strictObject({
			/** open drafts in which they typed last */
			drafts: z.int().min(0),
			/** visits that they signed as a student and nobody has countersigned */
			theirsToCountersign: z.int().min(0),
			/** visits of students that wait for any clinician, where this one is a clinician */
			waitForAny: z.int().min(0),
			/** documents in the outbox that are theirs to look at */
			outbox: z.int().min(0),
			/** players who are due, and whose last visit they signed */
			recall: z.int().min(0),
			/** who may look after the documents in their place */
			takers: z.array(z.strictObject({ personId: id, name: z.string() })),
		}),
		owners,
	),
	/**
	 * Takes a person's passphrase away and changes the key of the records; what they did stays in the
	 * records. `keyNotChanged`: the recovery key is of an earlier version and must be printed anew first.
	 */
	'people.retire': call(
		z.strictObject({
			personId: id,
			reason,
			/** who looks after their documents in the outbox from now on */
			outboxTo: id.optional(),
		}),
		z.strictObject({
			keyNotChanged: z.boolean().optional(),
			needNewPassphrase,
			/** documents that another person looks after now */
			handedOver: z.int().min(1).optional(),
		}),
		owners,
	),
	/** What each role sees and may do, made of the rights of this contract. */
	'people.rights': call(
		nothing,
		z.strictObject({
			rows: z.array(
				z.strictObject({
					area: z.string(),
					does: z.string(),
					who: z.array(z.enum(staffRoles)),
					/** what of it a role is not told though it may ask */
					but: z.array(z.strictObject({ role: z.enum(staffRoles), says: z.string() })),
				}),
			),
		}),
		owners,
	),
	/** What the owner should hear of, newest first; nothing of a patient in it. */
	'notices.list': call(
		nothing,
		z.strictObject({ notices: z.array(noticeSchema), upTo: z.int().min(0) }),
		owners,
	),
	/** The owner has read all up to a row of the trail: who and when stands in the trail. */
	'notices.seen': call(z.strictObject({ upTo: z.int().min(1) }), nothing, owners),
	/** New records are sealed by a new key; what stands is not sealed anew. */
	'people.changeDataKey': call(nothing, z.strictObject({ needNewPassphrase }), owners),
} as const
