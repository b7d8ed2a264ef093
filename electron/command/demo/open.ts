/** Opens the demo, told on a day, and says how it is unlocked. */
import type { App } from '../../app.ts'
import { clockFrom } from './clock.ts'
import { demoPassphrase } from './passphrase.ts'
import { openDemo } from './records.ts'
import { otherPassphrases } from './scenario.ts'

export async function openToldOn(
	/** ISO date; today where absent */
	day: string | undefined,
	{
		folder,
		isFull,
		note,
		tell,
	}: {
		folder: string
		isFull: boolean
		note: (text: string) => void
		tell: (text: string) => void
	},
): Promise<App> {
	const app = await openDemo({ folder, now: clockFrom(day), isFull, note, tell })
	tell(
		'Demo: an invented clinic in a folder of its own, thrown away at the end. Passphrase, ' +
			`if you lock it: ${demoPassphrase} (owner); ${otherPassphrases()}`,
	)
	return app
}
