/** Shapes whose size is bounded, so that no input can be larger than a person ever needs. */
import { z } from 'zod'

/**
 * Values by a key of the person's own: at most `most` of them, each key at most `keyLength`
 * characters. The bound stands in the JSON Schema too.
 */
export function boundedRecord<Value extends z.ZodType>(
	keyLength: number,
	value: Value,
	most: number,
) {
	return z
		.record(z.string().max(keyLength), value)
		.check(({ value: given, issues }) => {
			if (Object.keys(given).length > most)
				issues.push({ code: 'too_big', origin: 'record', maximum: most, input: given })
		})
		.meta({ maxProperties: most })
}
/** An e-mail address, no longer than mail allows (RFC 5321, 4.5.3.1.3: 256 with its brackets). */
export const emailAddress = () => z.email().max(254)
