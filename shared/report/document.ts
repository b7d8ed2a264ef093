/** A document as data: words, tables and figures, before any renderer. */
export type Block =
	| { kind: 'heading'; text: string }
	| { kind: 'text'; text: string; tone?: 'body' | 'small' | 'strong' }
	| { kind: 'list'; ordered?: boolean; items: string[] }
	| { kind: 'actions'; items: { what: string; when: string; who: string }[] }
	| { kind: 'alert'; title: string; text: string }
	| { kind: 'table'; caption: string; head: string[]; rows: string[][]; widths?: (number | 'auto' | '*')[] }
	| { kind: 'figure'; caption: string; alternative: string; svg: string; widthPt: number; heightPt: number }
	| { kind: 'signature'; name: string; registration: string; date: string }
export interface Letterhead { clinicName: string; address: string[]; phone?: string; email?: string; colour: string; logo?: { mediaType: 'image/png' | 'image/jpeg' | 'image/svg+xml'; base64: string } }
export interface LwDocument {
	title: string
	kind: string
	language: 'en'
	draft: boolean
	letterhead: Letterhead
	/** Label and value pairs under the title. */
	subject: [string, string][]
	blocks: Block[]
	/** Numbered basis notes, printed small at the end. */
	notes: string[]
	footer: string
	/** ISO date-time for the PDF metadata, so that the same input gives the same bytes. */
	createdAt: string
}
