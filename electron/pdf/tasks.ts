/** What the workers are asked for, and what they answer. */
import type { LwDocument } from '../../shared/engine/report/document.ts'

export type Task =
	/** `logoMustShow`: a page without its logo will not do */
	| { does: 'draw'; document: LwDocument; password?: string; logoMustShow?: boolean }
	| { does: 'protect'; bytes: Uint8Array; password: string }
	| { does: 'cut'; bytes: Uint8Array }
	| { does: 'read'; bytes: Uint8Array }
/** Bytes of a PDF, or the paragraphs of each page. */
export type TaskResult = { bytes: Uint8Array } | { pages: string[][] }
export type TaskAnswer =
	| { id: number; ok: true; result: TaskResult }
	| { id: number; ok: false; name: string; message: string }
