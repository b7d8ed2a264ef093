/**
 * Loaded before the program: makes a later version of it, in which every sentence says something
 * else and no report can be composed.
 */
import { registerHooks } from 'node:module'

/** What stands in place of a file's source. */
const instead: Record<string, (source: string) => string> = {
	'/shared/engine/words/en/documents.table.ts': (source) =>
		source.replace(/^(\t'[^']+': ['"`])/gm, '$1Reworded: '),
	'/shared/engine/report/player.ts': () =>
		"export const playerReport = () => { throw new Error('nothing may be composed') }",
}
registerHooks({
	load(url, context, next) {
		const loaded = next(url, context)
		const found = Object.entries(instead).find(([file]) => url.endsWith(file))
		return found ? { ...loaded, source: found[1](String(loaded.source)) } : loaded
	},
})
