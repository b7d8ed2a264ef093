declare module 'pdfmake' {
	interface Printer {
		getBuffer(): Promise<Buffer>
	}
	const pdfmake: {
		virtualfs: { writeFileSync(name: string, bytes: Buffer): void }
		addFonts(fonts: Record<string, Record<string, string>>): void
		setUrlAccessPolicy(allow: (url: string) => boolean): void
		setLocalAccessPolicy(allow: (path: string) => boolean): void
		createPdf(definition: object): Printer
	}
	export default pdfmake
}
declare module 'fontkit' {
	export interface Font {
		hasGlyphForCodePoint(code: number): boolean
	}
	export function openSync(file: string): unknown
	export function registerFormat(format: { probe(bytes: Uint8Array): boolean }): void
}
