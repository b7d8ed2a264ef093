/** The pairs at home with which something is to be done and the new ones, each with why and by when. */
import type { SettledPlan } from '../../prescription/settled.ts'
import { capital } from '../../words/words.ts'
import { heading } from '../base.ts'
import { fitIn } from '../fit.ts'
import { untilFootReview, untils } from '../page-one/your-pairs.ts'
import { planOf } from '../plan-of.ts'
import { pairRows } from '../player/pairs.ts'
import { isKeptFrom } from '../reader.ts'
import { waits } from '../waits.ts'
import type { Part } from './part.ts'

/** None while sport is held: the facts under the head name what is not worn. */
export const pairs: Part = (input, reader, t) => {
	const plan = planOf(input)
	if (isKeptFrom(reader, input, 'footwear') || waits(plan.gate, 'sport')) return []
	const isTold = (pair: SettledPlan['owned'][number]) =>
		pair.verdict !== 'keep' || fitIn(pair, input.visit, plan) !== undefined
	const rows = pairRows(reader, input, t, isTold)
	if (rows.length === 0) return []
	const items = rows.map(({ name, verdict, whole }) =>
		[t('guardian.pair', { name: capital(name), verdict }), whole].filter(Boolean).join(' '),
	)
	return [heading(t('guardian.pairs')), { kind: 'list', items }]
}
export const untilReview: Part = (input, reader, t) =>
	isKeptFrom(reader, input, 'footwear') ? [] : untilFootReview(input, t, untils.guardian)
