/** The player report of a demo visit, for the tests on documents. */
import { assess } from '../../shared/engine/assess.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { clinic } from '../demo.ts'

export const demoNames = ['visit-adolescent.json', 'visit-adult.json'] as const
/** A draft, unless `more` says otherwise. */
export const reportOf = (visit: Visit, decisions: Decisions = noDecisions, more: object = {}) =>
	playerReport({
		visit,
		assessment: assess(visit),
		decisions,
		clinic,
		signedAt: undefined,
		draft: true,
		...more,
	})
