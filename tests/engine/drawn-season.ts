/** Seasons drawn for the property tests, and the problems that they make. */
import fc from 'fast-check'
import { addDays } from '../../shared/engine/plain/days.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import type { SeasonProblem } from '../../shared/engine/season/problem/problem.ts'
import { soles } from '../../shared/engine/visit/terms.ts'
import type { Pair, Session, Visit } from '../../shared/engine/visit/visit.ts'
import { seasonVisit } from './random-season.ts'

const protocol = openProtocol()
const session = (days: number) =>
	fc.record(
		{
			date: fc.integer({ min: 0, max: days }).map((day) => addDays('2027-01-04', day)),
			start: fc.constantFrom('09:00', '14:00', '18:00'),
			minutes: fc.constantFrom(45, 60, 75, 90, 110),
			kind: fc.constantFrom('training' as const, 'training' as const, 'match' as const),
			surface: fc.constantFrom(
				'natural-soft' as const,
				'natural-firm' as const,
				'artificial-3g' as const,
				'hall' as const,
			),
			ground: fc.constantFrom('dry' as const, 'damp' as const, 'wet' as const),
			pinned: fc.constantFrom('p1', 'p2'),
			worn: fc.constantFrom('p1', 'p3'),
			code: fc.constantFrom('rugby-union' as const, 'association' as const),
			status: fc.constantFrom('injured' as const),
		},
		{ requiredKeys: ['date', 'start', 'minutes', 'kind', 'surface'] },
	)
const pair = fc.record(
	{
		sole: fc.constantFrom(...soles.slice(0, 5)),
		minutesWorn: fc.constantFrom(0, 100, 3000, 6900, 7300),
		heelToForefootOffsetMm: fc.constantFrom(0, 8),
		weeklyMinutesMax: fc.constantFrom(80, 150),
		shareMinPercent: fc.constantFrom(20, 40),
		shareMaxPercent: fc.constantFrom(30, 60),
		studHeightMm: fc.constantFrom(12, 23),
		dryingHours: fc.constantFrom(0, 30),
		newFrom: fc.constantFrom('2027-01-05', '2027-01-20'),
		brokenIn: fc.constantFrom(true, false),
		damage: fc.constantFrom(['stud-sharp' as const], ['studs-worn' as const]),
		insideLengthMm: fc.constantFrom(265, 274, 280),
		unavailable: fc.constantFrom([{ from: '2027-01-10', to: '2027-01-17' }]),
	},
	{ requiredKeys: ['sole'] },
)
/** Random seasons: at most so many sessions and pairs, within so many days. */
export const season = (sessions: number, pairs: number, days: number): fc.Arbitrary<Visit> =>
	fc
		.record({
			sessions: fc.uniqueArray(session(days), {
				minLength: 1,
				maxLength: sessions,
				selector: ({ date, start }) => `${date}${start}`,
			}),
			pairs: fc.array(pair, { minLength: 1, maxLength: pairs }),
			condition: fc.option(
				fc.constantFrom('calcaneal-apophysitis' as const, 'navicular-stress-fracture' as const),
			),
		})
		.map((drawn) =>
			seasonVisit(
				drawn.pairs.map((shoes, index) => ({ ...shoes, id: `p${index + 1}` }) as Pair),
				drawn.sessions as Session[],
				drawn.condition
					? { conditions: [{ condition: drawn.condition, side: 'left', status: 'recovering' }] }
					: {},
			),
		)
/** The problem of a visit under the shipped protocol. */
export const problemOf = (visit: Visit, from?: string): SeasonProblem =>
	buildProblem({ visit, protocol, suitability, ...(from === undefined ? {} : { from }) }).problem
