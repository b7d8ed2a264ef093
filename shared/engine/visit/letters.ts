/**
 * What the clinician puts into the letter to the doctor and into the order of an insert beyond what
 * was found: it is written before signing and stays as it was. All optional.
 */
import { z } from 'zod'
import { choice, text } from './fields.ts'

/** How soon the doctor is asked to act, the least urgent first. */
export const urgencies = ['letter', 'imaging', 'same-day', 'emergency'] as const
export type Urgency = (typeof urgencies)[number]

export const letterSchema = z.strictObject({
	urgency: choice('Urgency', urgencies).optional(),
	question: text('Question', 600).optional(),
	/** A paragraph before the question. */
	words: text('In your own words', 1500).optional(),
	enclosures: text('Enclosures', 300).optional(),
	copyTo: text('Copy to', 300).optional(),
})
export const orderSchema = z.strictObject({
	number: text('Order number', 60).optional(),
	laboratory: text('Laboratory', 160).optional(),
	neededBy: text('Needed by', 60).optional(),
	/** A scan, a cast, a file: what goes with the order. */
	sent: text('Scan or cast sent along', 160).optional(),
	shipTo: text('Send to', 300).optional(),
})
