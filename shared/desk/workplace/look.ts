/** How one PC shows the screens. */
import { z } from 'zod'
import { looks } from './look-choices.ts'

export const lookSchema = z.strictObject({
	colours: z.enum(looks),
	/** Size of all text, in percent of the usual. */
	textPercent: z.int().min(100).max(200),
	/**
	 * Shortcuts of one key without Ctrl or Alt; off unless wanted, since a stray key would move the
	 * screen.
	 */
	singleKeys: z.boolean(),
	/** The first-run tour was finished or skipped. */
	tourSeen: z.boolean(),
})
export type Look = z.infer<typeof lookSchema>
