/** The records behind the window: opened while the window itself comes up. */
import { type App, createApp } from '../app.ts'
import { renderPdf, warmPdf } from '../pdf/render.ts'
import { clockFrom } from './demo/clock.ts'
import { demoPassphrase } from './demo/passphrase.ts'
import { openDemo } from './demo/records.ts'
import { otherPassphrases } from './demo/scenario.ts'

/** By then the window stands; a choice of this program. */
const warmAfterMs = 4000
/** Says what it opened. @throws Error in words where they cannot be opened */
export async function openWorkstation({
	dataFolder,
	demo,
	day,
	tell,
}: {
	dataFolder: string
	demo: boolean
	/** ISO date on which the demo is told; today where absent */
	day?: string | undefined
	tell: (text: string) => void
}): Promise<App> {
	const note = (text: string) => {
		process.stderr.write(`lastwright: ${text}\n`)
	}
	const app = demo
		? await openDemo({ folder: dataFolder, now: clockFrom(day), note, tell })
		: createApp({ dataFolder, renderPdf, note })
	tell(
		demo
			? 'Demo: an invented clinic in a folder of its own, thrown away at the end. Passphrase, ' +
					`if you lock it: ${demoPassphrase} (owner); ${otherPassphrases()}`
			: `Records: ${dataFolder}`,
	)
	// the first page is drawn sooner if its worker is ready, and the window comes sooner if the
	// worker waits for it
	setTimeout(warmPdf, warmAfterMs).unref()
	return app
}
