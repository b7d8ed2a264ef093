/** The calls about packs that go out and come home. */
import { z } from 'zod'
import { boundedRecord } from '../../engine/plain/bounded.ts'
import { anyone, call, clinicians, treating } from '../workplace/call.ts'
import { filePath, id, nothing, secret } from '../workplace/shapes.ts'
import { playerChangesSchema } from './changes.ts'
import { asideWhys, mergeCountsSchema } from './merge-counts.ts'
import { workKinds, workSteps } from './work.ts'

const mergeDuplicates = z.array(
	z.strictObject({
		playerId: z.string(),
		name: z.string(),
		like: z.string(),
		likeName: z.string(),
		why: z.enum(['same-person', 'twin']),
		/** the join in force between the two */
		joined: z.string().optional(),
	}),
)
const mergeQuarantined = z.array(
	z.strictObject({
		record: z.string(),
		kind: z.string(),
		says: z.string(),
		/** absent in merges of program 0.1.0, which put beside only what clashed */
		why: z.enum(asideWhys).optional(),
	}),
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
	counts: mergeCountsSchema,
	receipt: z.string(),
	drafts: z.number(),
	draftsBoth: mergeDraftsBoth,
	duplicates: mergeDuplicates,
	quarantined: mergeQuarantined,
	heldBack: z.array(z.string()),
	/** rows of the laptop's audit trail */
	trailRows: z.number(),
	notices: z.array(z.string()),
	questions: z.number(),
	/** what it changes, player by player, in words */
	changes: z.array(playerChangesSchema),
	/** players whose changes are not told */
	morePlayers: z.number(),
})

/** When an entry was typed, by the clock of that PC, and whether it was this one. */
const typed = z.strictObject({ at: z.string(), here: z.boolean() })

export const outreachCalls = {
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
					counts: mergeCountsSchema,
					trailRows: z.number(),
					receipt: z.string(),
					duplicates: mergeDuplicates,
					quarantined: mergeQuarantined,
					draftsBoth: mergeDraftsBoth,
					changes: z.array(playerChangesSchema),
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
									/** where and by whom it was written, as far as it is known */
									from: z
										.strictObject({
											home: z.boolean(),
											by: z.string().optional(),
											/** when the pack of that laptop was made */
											packOf: z.string().optional(),
										})
										.optional(),
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
			/** what is damaged and stays here, in words */
			left: z.array(z.string()),
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
			/** what is damaged and stays here, in words */
			left: z.array(z.string()),
		}),
		treating,
	),
	/**
	 * How far the work with a pack is that who asks has begun; on a PC without records a pack is
	 * opened by nobody yet.
	 */
	'outreach.progress': call(
		nothing,
		z.strictObject({
			running: z.boolean(),
			what: z.enum(workKinds).optional(),
			step: z.enum(workSteps).optional(),
			/** 0 of 0 where a step is not counted */
			done: z.number().optional(),
			total: z.number().optional(),
			/** not any more in the last step, nor once it was cancelled */
			mayCancel: z.boolean().optional(),
		}),
		anyone,
	),
	/** Stops the work with a pack; nothing half is left, and nothing of it is noted. */
	'outreach.cancel': call(nothing, z.strictObject({ cancelled: z.boolean() }), anyone),
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
			choices: boundedRecord(60, id, 100),
		}),
		nothing,
		clinicians,
	),
	'outreach.compareDrafts': call(
		z.strictObject({ drafts: z.array(id).length(2) }),
		z.strictObject({
			savedAt: z.array(z.string()),
			/** where each stands as it was written; two laptops may both be away */
			places: z.array(z.enum(['here', 'away'])),
			/** who wrote each; empty where it is not known */
			by: z.array(z.string()),
			differences: z.array(
				z.strictObject({ path: z.string(), first: z.string(), second: z.string() }),
			),
			/** those that a person must choose, with what is known of their typing */
			asked: z.array(
				z.strictObject({ path: z.string(), first: typed.optional(), second: typed.optional() }),
			),
		}),
		treating,
	),
	/** Joins two drafts of one visit; `choices` by path the draft whose value stands. */
	'outreach.joinDrafts': call(
		z.strictObject({ drafts: z.array(id).length(2), choices: boundedRecord(200, id, 5000) }),
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
} as const
