/** What is kept when a visit is signed: every kind of page that then applies to it. */
import { z } from 'zod'
import {
	type FurtherPage,
	kindsAtSigning,
	type ReportValue,
	type SignedPage,
} from '../../../shared/desk/visits/kept-pages.ts'
import { need } from '../../../shared/engine/plain/need.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { keptDigest, keptForm } from '../../../shared/engine/report/kept/keep.ts'
import { type KindInput, type KindName, kinds } from '../../../shared/engine/report/kinds.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import type { Deps } from '../records/deps.ts'
import { draw, sha256Of } from './drawing.ts'

/** A page before it is drawn. */
export interface PageToDraw {
	kind: KindName
	document: LwDocument
	/** what a page of a season is made from */
	from?: string
}
/** A page as it is kept, and as the digest of the visit names it. */
export interface DrawnPage {
	kept: FurtherPage
	named: SignedPage
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
		const form = keptForm(document)
		drawn.push({
			kept: {
				kind,
				base64: Buffer.from(bytes).toString('base64'),
				sha256,
				fileName: fileNameOf(visit, kind),
				document: form,
				...(from !== undefined && { from }),
			},
			named: { kind, sha256, documentSha256: keptDigest(form) },
		})
	}
	return drawn
}
/**
 * The pages of a visit as one record holds them.
 * @param pages the player's report first
 */
export function reportOf(visitId: string, pages: readonly DrawnPage[]): ReportValue {
	const [report, ...further] = pages.map(({ kept }) => kept)
	const { kind: _, from: __, ...player } = need(report, "the player's report")
	return { visitId, ...player, ...(further.length > 0 && { further }) }
}
/** What lists know of the pages of a visit without opening them. */
export const reportCardSchema = z.object({
	visitId: z.string(),
	/** what the page of a season was made from */
	from: z.string().optional(),
})
export function reportCard({
	visitId,
	further = [],
}: ReportValue): z.infer<typeof reportCardSchema> {
	const from = further.find((page) => page.from !== undefined)?.from
	return { visitId, ...(from !== undefined && { from }) }
}
