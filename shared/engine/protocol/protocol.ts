/** Looking up a threshold by its key; the rows are in the table files beside this one. */
import { z } from 'zod'
import { boundedRecord } from '../plain/bounded.ts'
import { digestOf } from '../plain/canonical.ts'
import { dayInWords } from '../plain/days.ts'
import type { Basis } from './basis.ts'
import { protocolProblems } from './check.ts'
import { holdRows } from './holds.table.ts'
import { isReadable, retiredProblems, withCurrentKeys } from './retired.ts'
import type { ThresholdRow } from './row.ts'
import { rows } from './rows.ts'
import { settlingOrder } from './settling.table.ts'

export type ThresholdKey = keyof typeof rows

/** Values that the rules cannot work with; a key that no row has is told elsewhere. */
export function refuseLimits(values: Readonly<Record<string, number>>, context: z.RefinementCtx) {
	const known = protocolProblems(values).filter(({ key }) => Object.hasOwn(rows, key))
	for (const { key, message, code, params } of [...known, ...retiredProblems(values)])
		context.addIssue({
			code: 'custom',
			path: [key],
			message,
			params: { whole: true, stated: { code, params } },
		})
}
/** Values that the rules can work with; a key that no row has counts as unknown. */
const ownValues = boundedRecord(80, z.number(), 1000)
	.superRefine((values, context) => {
		const unknown = Object.keys(values).filter((key) => !isReadable(key))
		if (unknown.length > 0)
			context.addIssue({ code: 'unrecognized_keys', keys: unknown, input: values })
		refuseLimits(values, context)
	})
	.transform(withCurrentKeys)
/** How a value was counted from the clinic's own records: so many forecasts, of visits of these days. */
const countedSchema = z.strictObject({
	forecasts: z.int().min(1),
	from: z.iso.date(),
	to: z.iso.date(),
})
type CountedFrom = z.infer<typeof countedSchema>
/** A clinic's protocol: identity and the values it set differently from the shipped table. */
export const protocolSchema = z.strictObject({
	format: z.literal('lastwright-protocol'),
	version: z.literal(1),
	id: z.string().min(1).max(80),
	revision: z.int().min(1),
	fpiScheme: z.enum(['raw', 'trial']).optional(),
	values: ownValues.optional(),
	/** By the key of a value that was counted in this clinic, and not typed. */
	counted: boundedRecord(80, countedSchema, 20).optional(),
})
export type ProtocolFile = z.infer<typeof protocolSchema>
export const shippedProtocol: ProtocolFile = {
	format: 'lastwright-protocol',
	version: 1,
	id: 'shipped',
	revision: 1,
}

/**
 * Which protocol was in force: the digest covers shipped rows, what is held and until when, the
 * order of settling, and what the clinic set.
 */
interface ProtocolIdentity {
	id: string
	version: number
	digest: string
}
export interface Protocol {
	file: ProtocolFile
	/** Worked out when it is first asked for, once for each opened protocol. */
	identity(): ProtocolIdentity
	/** The value in force for a key. */
	value(key: ThresholdKey): number
	/** The basis line of a finding that used this key. */
	basis(rule: string, key: ThresholdKey): Basis
	row(key: ThresholdKey): ThresholdRow
}
function ownSource(counted: CountedFrom | undefined): string {
	if (!counted) return 'set by the clinic'
	const { forecasts, from, to } = counted
	return `this clinic, ${forecasts} forecasts, ${dayInWords(from)} to ${dayInWords(to)}`
}
/** Opens a protocol file over the shipped rows. @throws RangeError naming a key that no row has. */
export function openProtocol(file: ProtocolFile = shippedProtocol): Protocol {
	const set = file.values ?? {}
	for (const key of Object.keys(set))
		if (!(key in rows))
			throw new RangeError(
				`values.${key}: no such threshold, given ${set[key]}, allowed: a key of the protocol ` +
					'table',
			)
	const row = (key: ThresholdKey): ThresholdRow => {
		const shipped = rows[key]
		const changed = set[key]
		if (changed === undefined) return { key, ...shipped }
		const { value, unit, source } = shipped
		return {
			key,
			...shipped,
			value: changed,
			source: `${ownSource(file.counted?.[key])} (shipped: ${value} ${unit}, ${source})`,
			strength: 'clinic',
		}
	}
	let known: ProtocolIdentity | undefined
	const identity = (): ProtocolIdentity => {
		known ??= {
			id: file.id,
			version: file.revision,
			digest: digestOf({ rows, holdRows, settlingOrder, file }),
		}
		return known
	}
	return {
		file,
		identity,
		row,
		value: (key) => set[key] ?? rows[key].value,
		basis: (rule, key) => {
			const { value, unit, source, surety, strength } = row(key)
			return {
				rule,
				threshold: key,
				limit: { value, unit },
				source: surety === 'from memory' ? `${source} (from memory)` : source,
				strength,
				...(strength === 'practice' && surety === 'common practice' ? { unsourced: true } : {}),
			}
		},
	}
}
/** A protocol as it is kept open, or a file that is opened now. */
export const opened = (given: Protocol | ProtocolFile): Protocol =>
	'row' in given ? given : openProtocol(given)
