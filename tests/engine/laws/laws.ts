/** Every law of the plan by its name. */
import { asked } from './asked.ts'
import type { Case, Law } from './case.ts'
import { danger } from './danger.ts'
import { figures } from './figures.ts'
import { printed } from './printed.ts'

export const laws: Readonly<Record<string, Law>> = { ...asked, ...figures, ...danger, ...printed }
/** The laws that a case breaks, with what is wrong. */
export const brokenBy = (one: Case): { law: string; faults: string[] }[] =>
	Object.entries(laws).flatMap(([law, kept]) => {
		const faults = kept(one)
		return faults.length > 0 ? [{ law, faults }] : []
	})
