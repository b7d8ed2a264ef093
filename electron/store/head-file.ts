/** A small file that is written over in place, two places in turn: a torn one leaves the other. */
import {
	closeSync,
	existsSync,
	ftruncateSync,
	mkdirSync,
	openSync,
	readFileSync,
	writeSync,
} from 'node:fs'
import { dirname } from 'node:path'

/** bytes of each of the two places, however long the text in it is */
const placeLong = 1024
const places = 2

export class HeadFile {
	readonly #file: string
	#handle: number | undefined
	constructor(file: string) {
		this.#file = file
	}
	get isThere(): boolean {
		return existsSync(this.#file)
	}
	/** The texts of the two places; none where there is no file. */
	texts(): string[] {
		const bytes = this.#bytes()
		return Array.from({ length: places }, (_, place) =>
			bytes
				.subarray(place * placeLong, (place + 1) * placeLong)
				.toString('utf8')
				.trim(),
		).filter(Boolean)
	}
	/** The whole text as the first versions wrote it; undefined where there is no file. */
	firstText(): string | undefined {
		return this.isThere ? this.#bytes().toString('utf8').trim() : undefined
	}
	#bytes(): Buffer {
		try {
			return readFileSync(this.#file)
		} catch {
			return Buffer.alloc(0)
		}
	}
	/** @param number grows by one with each writing: it tells the place. Never throws */
	write(number: number, text: string): void {
		try {
			this.#handle ??= this.#open()
			writeSync(this.#handle, text.padEnd(placeLong), (number % places) * placeLong)
		} catch {
			// a head that lags is no fault: what comes after it is sealed all the same
			this.close()
		}
	}
	#open(): number {
		mkdirSync(dirname(this.#file), { recursive: true, mode: 0o700 })
		const handle = openSync(this.#file, this.isThere ? 'r+' : 'w+', 0o600)
		ftruncateSync(handle, places * placeLong)
		return handle
	}
	close(): void {
		if (this.#handle !== undefined) closeSync(this.#handle)
		this.#handle = undefined
	}
}
