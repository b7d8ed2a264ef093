/** What the services work with besides what is remembered: store, clock, pages, settings. */
import type { Purpose } from '../../../shared/desk/places/purposes.table.ts'
import type { Look } from '../../../shared/desk/workplace/look.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import type { Store } from '../../store/store.ts'
import type { Keeper } from './keep.ts'
import type { Opener } from './open.ts'

/** The settings of this PC: nothing personal in them. */
export interface Settings {
	backupFolder?: string | undefined
	look?: Look | undefined
	/** by purpose the folder in which the last choice was made */
	lastPlaces?: LastPlaces | undefined
}
type LastPlaces = Readonly<Partial<Record<Purpose, string>>>
/**
 * Draws a document as PDF bytes; with a password they open by it alone. A logo that cannot be drawn
 * is left out, or refused where it must show.
 */
export type RenderPdf = (
	document: LwDocument,
	options?: { password?: string; logoMustShow?: boolean },
) => Promise<Uint8Array>
/** Puts a PDF that exists under a password; its pages stay as they are. */
type ProtectPdf = (bytes: Uint8Array, password: string) => Promise<Uint8Array>
/** The first page of a PDF that exists, as a file of its own. */
type FirstPagePdf = (bytes: Uint8Array) => Promise<Uint8Array>
/** The text of a PDF that exists: the paragraphs of each page. */
type TextOfPdf = (bytes: Uint8Array) => Promise<string[][]>
export interface Deps extends Keeper, Opener {
	store: Store
	renderPdf: RenderPdf
	protectPdf: ProtectPdf
	firstPagePdf: FirstPagePdf
	textOfPdf: TextOfPdf
	now: () => Date
	demo: boolean
	version: string
	/** bytes that are free where the records lie, and those of the records; undefined where not told */
	room: () => { free: number; records: number } | undefined
	saveSettings: (settings: Settings) => void
	lastPlaces: { get: () => LastPlaces; keep: (purpose: Purpose, folder: string) => void }
}
