declare module '@neslinesli93/qpdf-wasm/dist/qpdf.js' {
	/** Takes a byte of what is printed; null ends a line. */
	type Print = (byte: number | null) => void
	interface Qpdf {
		/** The command line. @returns its exit code: 0, 2 where it failed, 3 with warnings */
		callMain(words: string[]): number
		FS: {
			init(read: () => null, print: Print, printError: Print): void
			writeFile(path: string, bytes: Uint8Array): void
			readFile(path: string): Uint8Array
		}
	}
	const start: (options: {
		/** where the compiled program is */
		locateFile: () => string
		preRun: ((qpdf: Qpdf) => void)[]
	}) => Promise<Qpdf>
	export default start
}
