/**
 * A checkout of Lastwright, of this version or of an earlier one, and its program as the maker of
 * fixtures runs it. What moved between versions is found here, by the places where it was.
 */
import { existsSync, mkdirSync, mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

// biome-ignore lint/suspicious/noExplicitAny: answers of any version are looked at field by field
type Loose = any
type Answer = { ok: true; value: Loose } | { ok: false; message: string; problems?: unknown }
export interface Program {
	root: string
	version: string
	createApp: (options: object) => {
		call: (name: string, input: unknown) => Promise<Answer>
		close: () => void
	}
	renderPdf: (document: object, options?: object) => Promise<Uint8Array>
	assess: (visit: unknown, earlier: unknown, protocol?: unknown, shelf?: unknown) => Loose
	readPack: (...given: Loose[]) => Promise<Loose>
	writePack: (...given: Loose[]) => Promise<Loose>
}
export type Ask = (name: string, input?: unknown) => Promise<Loose>
export interface Opened {
	dataFolder: string
	ask: Ask
	/** the answer as it came, refused or not */
	call: (name: string, input?: unknown) => Promise<Answer>
	close: () => void
}

/** Where a part stands, by version: the first place that is there. */
const places = {
	app: ['electron/app.ts'],
	render: ['electron/pdf/render.ts'],
	assess: ['shared/engine/assess.ts', 'shared/assess.ts'],
	packFile: ['electron/store/pack-file.ts'],
} as const
async function part(root: string, name: keyof typeof places): Promise<Loose> {
	const found = places[name].find((place) => existsSync(join(root, place)))
	if (found === undefined)
		throw new Error(`${root} has none of ${places[name].join(', ')}: it is no checkout known here`)
	return import(pathToFileURL(join(root, found)).href)
}
export async function programAt(root: string): Promise<Program> {
	const { createApp } = await part(root, 'app')
	const { renderPdf } = await part(root, 'render')
	const { assess } = await part(root, 'assess')
	const { readPack, writePack } = await part(root, 'packFile')
	const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
	return { root, version, createApp, renderPdf, assess, readPack, writePack }
}

/** Cheap to stretch: the secrets of fixtures are public. */
export const cheapCost = 1024
/** A world with one clock, which goes on by a second with each call. */
export class World {
	ms: number
	readonly program: Program
	readonly #root: string
	readonly outside: string
	readonly #note: (text: string) => void
	/**
	 * @param outside where the PC keeps what does not belong into the folder of the records
	 * @param note is told of faults of the program
	 */
	constructor(program: Program, start: string, outside?: string, note = (_: string) => {}) {
		this.program = program
		this.ms = Date.parse(start)
		this.#root = mkdtempSync(join(tmpdir(), 'lastwright-made-'))
		this.outside = outside ?? join(this.#root, 'outside')
		mkdirSync(this.outside, { recursive: true })
		this.#note = note
	}
	now = (): Date => new Date(this.ms)
	/** Puts the clock on, never back. */
	until(moment: string): void {
		this.ms = Math.max(this.ms, Date.parse(moment))
	}
	folder(name: string): string {
		const folder = join(this.#root, name)
		mkdirSync(folder, { recursive: true })
		return folder
	}
	/** The program on a data folder. A refusal stops the making, with its words. */
	open(dataFolder: string): Opened {
		const { createApp, renderPdf } = this.program
		const app = createApp({
			dataFolder,
			renderPdf,
			now: this.now,
			scryptCost: cheapCost,
			note: this.#note,
			outside: this.outside,
		})
		const call = (name: string, input: unknown = {}) => {
			this.ms += 1000
			return app.call(name, input)
		}
		const ask: Ask = async (name, input = {}) => {
			const answer = await call(name, input)
			if (answer.ok) return answer.value
			throw new Error(`${name}: ${answer.message} ${JSON.stringify(answer.problems ?? [])}`)
		}
		return { dataFolder, ask, call, close: app.close }
	}
}
