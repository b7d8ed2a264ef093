/** The records behind the window: opened while the window itself comes up. */
import { type App, createApp } from '../app.ts'
import { renderPdf, warmPdf } from '../pdf/render.ts'

/** By then the window stands; a choice of this program. */
const warmAfterMs = 4000
/** Says what it opened. @throws Error in words where they cannot be opened */
export async function openWorkstation({
	dataFolder,
	demo,
	day,
	isFull,
	tell,
}: {
	dataFolder: string
	demo: boolean
	/** ISO date on which the demo is told; today where absent */
	day?: string | undefined
	/** the demo with those who were seen again */
	isFull: boolean
	tell: (text: string) => void
}): Promise<App> {
	const note = (text: string) => {
		process.stderr.write(`lastwright: ${text}\n`)
	}
	const opened = async (): Promise<App> => {
		// real records never wait for what the demo is made of
		if (demo)
			return (await import('./demo/open.ts')).openToldOn(day, {
				folder: dataFolder,
				isFull,
				note,
				tell,
			})
		const app = createApp({ dataFolder, renderPdf, note })
		tell(`Records: ${dataFolder}`)
		return app
	}
	const app = await opened()
	// the first page is drawn sooner if its worker is ready, and the window comes sooner if the
	// worker waits for it
	setTimeout(warmPdf, warmAfterMs).unref()
	return app
}
