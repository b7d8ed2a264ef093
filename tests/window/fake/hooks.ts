/** Loaded before the shell: its `electron` is the stand-in. */
import { readFileSync } from 'node:fs'
import { registerHooks, stripTypeScriptTypes } from 'node:module'
import { fileURLToPath } from 'node:url'
import { asMutated, isMutated } from './mutant.ts'

const standIn = new URL('./electron.ts', import.meta.url).href
registerHooks({
	resolve: (specifier, context, next) =>
		specifier === 'electron' && context.parentURL?.includes('/electron/window/')
			? { url: standIn, shortCircuit: true }
			: next(specifier, context),
	load(url, context, next) {
		if (!isMutated(url)) return next(url, context)
		const source = asMutated(readFileSync(fileURLToPath(url), 'utf8'), url)
		return { format: 'module', shortCircuit: true, source: stripTypeScriptTypes(source) }
	},
})
