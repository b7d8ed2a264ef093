/** The preload as it stands, run once; what it gives to the page is put into each page. */
import { readFileSync } from 'node:fs'
import vm from 'node:vm'
import type { Page } from '@playwright/test'
import { toShell } from './addresses.ts'
import { invoke, type Sender } from './messages.ts'
import { asMutated } from './mutant.ts'

type Functions = Readonly<Record<string, (...given: unknown[]) => unknown>>

export class Bridge {
	readonly #given = new Map<string, Functions>()
	/** Of the call that is being handed over; only one is at a time, since handing over is at once. */
	#sender: Sender = null

	/** @param preload the file; it may require nothing but the runtime, as in a sandbox */
	constructor(preload: string) {
		const electron = {
			contextBridge: {
				exposeInMainWorld: (key: string, given: Functions) => {
					this.#given.set(key, given)
				},
			},
			ipcRenderer: {
				invoke: (channel: string, ...given: unknown[]) => invoke(this.#sender, channel, given),
			},
		}
		const require = (name: string) => {
			if (name !== 'electron') throw new Error(`A sandboxed preload may not require ${name}`)
			return electron
		}
		vm.runInNewContext(asMutated(readFileSync(preload, 'utf8'), preload), { require, console })
	}
	async putInto(page: Page): Promise<void> {
		for (const [key, functions] of this.#given) {
			for (const [name, run] of Object.entries(functions))
				await page.exposeBinding(`fake_${key}_${name}`, ({ frame }, ...given) => {
					this.#sender = { url: toShell(frame.url()), parent: frame.parentFrame() }
					return run(...given)
				})
			await page.addInitScript(defineBridge, { key, names: Object.keys(functions) })
		}
	}
}
/** Runs in the page. */
function defineBridge({ key, names }: { key: string; names: string[] }): void {
	const bindings = globalThis as unknown as Functions
	const functions = names.map((name) => [
		name,
		(...given: unknown[]) => bindings[`fake_${key}_${name}`]?.(...given),
	])
	Object.defineProperty(globalThis, key, { value: Object.freeze(Object.fromEntries(functions)) })
}
