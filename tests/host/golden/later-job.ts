/** The later version at work on a folder: answers the calls that its parent sends. */
import { createApp } from '../../../electron/app.ts'
import { sentences } from '../../../shared/engine/words/en/documents.table.ts'

const [dataFolder = '', at = ''] = process.argv.slice(2)
const app = createApp({
	dataFolder,
	scryptCost: 1024,
	now: () => new Date(at),
	renderPdf: async () => {
		throw new Error('nothing may be drawn')
	},
})
process.on('message', async ({ id, name, input }: { id: number; name: string; input: unknown }) =>
	process.send?.({ id, answer: await app.call(name, input) }),
)
process.on('disconnect', () => {
	app.close()
	process.exit()
})
process.send?.({ ready: sentences['page.notes'] })
