/** Random values of every kind of record, drawn from its own schema; and keys of a newer version. */
import fc from 'fast-check'
import { type KindName, kinds } from '../../shared/desk/ledger/ledger.ts'
import { rows } from '../../shared/engine/protocol/rows.ts'
import { valuesOf, type Weights } from './from-schema.ts'

const shortId = fc.stringMatching(/^[a-z0-9]{1,12}$/)
const thresholds = Object.entries(rows)
/** A few thresholds as they are shipped: what the rules cannot work with is not read. */
const shippedValues = fc
	.subarray(thresholds, { maxLength: 4 })
	.map((chosen) => Object.fromEntries(chosen.map(([key, { value }]) => [key, value])))
const digest = fc.stringMatching(/^[0-9a-f]{64}$/)
/** Fields stand with what is changed, a reason with what is set aside. */
const answers = fc.array(
	fc.oneof(
		fc.record({
			question: shortId,
			choice: fc.constantFrom('as-proposed' as const, 'unchanged' as const),
			of: digest,
			read: fc.array(shortId, { maxLength: 3 }),
		}),
		fc.record({
			question: shortId,
			choice: fc.constant('changed' as const),
			fields: fc.record({ buy: fc.boolean(), keep: fc.array(shortId, { maxLength: 3 }) }),
			of: digest,
		}),
		fc.record({
			question: shortId,
			choice: fc.constant('set-aside' as const),
			why: shortId,
			of: digest,
		}),
	),
	{ maxLength: 4 },
)
/** What the schemas cannot know, or what would only be more of the same. */
const weights: Weights = {
	plain: true,
	own: {
		// words of the catalogue's own sentences are tried where the catalogue is
		texts: fc.constant({}),
		'clinic.texts': fc.constant({}),
		'file.values': shippedValues,
		'plan.findings': fc.constant([]),
		layout: fc.constant({ title: 'Report', blocks: [] }),
		record: fc.record({ id: shortId, kind: shortId }),
		'models.id': shortId,
		// whether a choice needs a reason hangs on the other entries
		'decisions.insert.*': fc.constant([]),
		'decisions.answers': answers,
	},
	most: { models: 2, 'models.sizes': 2, 'models.studs': 2, 'plan.sessions': 2 },
}
export const recordOf = (kind: KindName): fc.Arbitrary<unknown> =>
	valuesOf(kinds[kind].schema, '', weights)

/** A key that no schema has, with a value of any form. */
const newEntry = fc.record({
	key: fc.stringMatching(/^[a-z]{1,6}$/).map((word) => `newer-${word}`),
	value: fc.jsonValue({ maxDepth: 2 }),
	/** chooses the group it is put into */
	where: fc.nat(),
})
export type NewEntry = { key: string; value: unknown; where: number }
export const newEntries: fc.Arbitrary<NewEntry[]> = fc.array(newEntry, {
	minLength: 1,
	maxLength: 5,
})
