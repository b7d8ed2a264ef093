/** Which change or lacing an id of the prescription means. Pure. */
import type { FootwearWork } from '../../../../shared/engine/findings/assessment.ts'
import { workKey } from '../../../../shared/engine/report/marked.ts'

/** By its id alone, or by its id and side. */
export const isWork = (work: FootwearWork, id: string): boolean =>
	work.id === id || workKey(work) === id
