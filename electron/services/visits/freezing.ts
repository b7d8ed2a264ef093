/** What is kept when a visit is signed: every kind of page that then applies to it. */
import {
	kindsAtSigning,
	type ReportValue,
	type SignedPage,
} from '../../../shared/desk/visits/kept-pages.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { keptDigest, keptForm } from '../../../shared/engine/report/kept/keep.ts'
import { type KindInput, type KindName, kinds } from '../../../shared/engine/report/kinds.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import type { Deps } from '../records/deps.ts'
import { draw, sha256Of } from './drawing.ts'
import type { PageCard } from './signed-pages.ts'

/** A page before it is drawn. */
export interface PageToDraw {
	kind: KindName
	document: LwDocument
	/** what a page of a season is made from */
	from?: string
}
/** A page as it is kept, and as the digest of the visit names it. */
export interface DrawnPage {
	value: Omit<ReportValue, 'visitId'>
	named: SignedPage
	from?: string
}
/** The plan of the season that stands when the visit is signed. */
export interface PlanThen extends Pick<KindInput, 'plan' | 'version'> {
	from: string
}

/** A file name without clinical words: date and the first letters, never a diagnosis. */
export const fileNameOf = (visit: Visit, kind: KindName = 'player'): string =>
	`${kind === 'player' ? 'report' : kind}-${visit.visitDate}.pdf`

/**
 * The pages besides the player's report, each where it applies, composed from the same input.
 * @param season the plan that stands, where there is one
 */
export function furtherPages(input: KindInput, season: PlanThen | undefined): PageToDraw[] {
	return kindsAtSigning.flatMap((kind): PageToDraw[] => {
		if (kind === 'player') return []
		const ofSeason = kind === 'season-chart'
		const whole = ofSeason
			? { ...input, ...present({ plan: season?.plan, version: season?.version }) }
			: input
		if (kinds[kind].problems(whole).length > 0) return []
		const document = kinds[kind].compose(whole)
		return [{ kind, document, ...(ofSeason && season && { from: season.from }) }]
	})
}
/** Draws the pages one after another: the player's report first, as it is looked at first. */
export async function drawAll(
	deps: Pick<Deps, 'renderPdf'>,
	visit: Visit,
	pages: readonly PageToDraw[],
): Promise<DrawnPage[]> {
	const drawn: DrawnPage[] = []
	for (const { kind, document, from } of pages) {
		const bytes = await draw(deps, document)
		const sha256 = sha256Of(bytes)
		const kept = keptForm(document)
		drawn.push({
			value: {
				base64: Buffer.from(bytes).toString('base64'),
				sha256,
				fileName: fileNameOf(visit, kind),
				kind,
				document: kept,
			},
			named: { kind, sha256, documentSha256: keptDigest(kept) },
			...(from !== undefined && { from }),
		})
	}
	return drawn
}
/** Keeps the pages of a visit beside its record. The caller's transaction holds them together. */
export function keepPages(
	{ keep }: Deps,
	visit: { record: string; visitId: string; playerId: string; version: number; at: string },
	pages: readonly DrawnPage[],
): void {
	const { record, visitId, playerId, version, at } = visit
	for (const { value, named, from } of pages) {
		const card: PageCard = { visitId, kind: named.kind, version, ...(from && { from }) }
		keep({
			kind: 'report',
			at,
			follows: record,
			value: { visitId, ...value },
			about: playerId,
			thing: visitId,
			card,
			does: 'create',
		})
	}
}
