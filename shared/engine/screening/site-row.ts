import type { BoneSite } from '../visit/terms.ts'
import { type BoneSiteRow, boneSiteRows } from './bone-sites.table.ts'

/** What is held of a site; undefined where none was named. */
export const siteRow = (site: BoneSite | undefined): BoneSiteRow | undefined =>
	boneSiteRows.find((boneSiteRow) => boneSiteRow.site === site)
