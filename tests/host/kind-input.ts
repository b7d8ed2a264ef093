/** The demo visits as input of every kind of document. */
import { assess } from '../../shared/engine/assess.ts'
import { settleAll } from '../../shared/engine/prescription/answers.ts'
import type { KindInput, KindName } from '../../shared/engine/report/kinds.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { agreed } from '../agreed.ts'
import { clinic, json, read } from '../demo.ts'

const on = '2027-03-01'
export const demoNames = ['visit-adolescent.json', 'visit-adult.json']
/** A demo visit with the heel widths that a true-size page needs. */
export const measured = (name: string): Visit => {
	const raw = json(name)
	return read({
		...raw,
		feet: {
			...raw.feet,
			left: { ...raw.feet.left, heelWidthMm: 62 },
			right: { ...raw.feet.right, heelWidthMm: 63 },
		},
	})
}
const plan = {
	sessions: Array.from({ length: 40 }, (_, at) => ({
		date: new Date(Date.UTC(2027, 2, 2 + at * 3)).toISOString().slice(0, 10),
		start: '18:00',
		kind: at % 3 === 2 ? ('match' as const) : ('training' as const),
		surface: 'natural-firm',
		...(at % 7 === 6 ? {} : { pair: at % 2 ? 'p1' : 'p2' }),
	})),
	pairs: [
		{ id: 'p1', name: 'match boots', sole: 'firm-ground', replaceBy: '2027-04-10' },
		{ id: 'p2', name: 'trainers', sole: 'road' },
	],
}
export const decisions: Decisions = {
	...noDecisions,
	reviewDate: '2027-05-05',
	referralDone: 'The family doctor was called.',
	...agreed,
}
/** What a kind is composed of: settled as proposed and signed, with consents and a plan. */
export const inputOf = (visit: Visit, kind: KindName, more: Partial<KindInput> = {}): KindInput => {
	const assessment = assess(visit)
	return {
		visit,
		assessment,
		decisions: settleAll(decisions, assessment.prescription, 'asked elsewhere'),
		clinic,
		signedAt: '2027-03-01T09:00:00.000Z',
		draft: false,
		on,
		plan,
		consents: [
			{
				id: 'C-7',
				purpose: kind === 'coach' ? 'coach' : 'squad-club',
				decision: 'permit',
				given: '2027-01-20',
			},
		],
		...more,
	}
}
