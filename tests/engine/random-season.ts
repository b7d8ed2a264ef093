/** Seasons made by a small generator of pseudo-random numbers, so that a seed names one. */

import { addDays } from '../../shared/engine/plain/days.ts'
import type { Pair, Session, Visit } from '../../shared/engine/visit/visit.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'

/** Numerical Recipes' linear congruential generator, 0 to 1. */
function generator(seed: number): () => number {
	let state = seed >>> 0
	return () => {
		state = (Math.imul(state, 1664525) + 1013904223) >>> 0
		return state / 4294967296
	}
}
const pick = <T>(next: () => number, list: readonly T[]): T =>
	list[Math.floor(next() * list.length)]!
export const seasonVisit = (
	footwear: Pair[],
	sessions: Session[],
	more: Partial<Visit> = {},
): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate: '2000-01-01', sex: 'male' },
		visitDate: '2027-01-04',
		footwear,
		season: { from: '2027-01-04', to: '2027-12-31', sessions },
		...more,
	})
const week = [
	{ day: 0, kind: 'training' },
	{ day: 1, kind: 'training' },
	{ day: 3, kind: 'training' },
	{ day: 4, kind: 'training' },
	{ day: 5, kind: 'match' },
] as const
/** A quarter of the sessions on wet ground, a quarter on damp. */
function groundBy(chance: number): Session['ground'] {
	if (chance < 0.25) return 'wet'
	return chance < 0.5 ? 'damp' : 'dry'
}
/**
 * 40 weeks of four trainings and a match, four pairs of which one is new, one limited week by week.
 */
export function bigSeason(seed: number, weeks = 40): Visit {
	const next = generator(seed)
	const days = Array.from({ length: weeks }, (_, number) =>
		week.map(({ day, kind }) => ({ date: addDays('2027-01-04', 7 * number + day), kind })),
	).flat()
	const sessions = days.map(({ date, kind }): Session => {
		const wet = next()
		return {
			date,
			start: kind === 'match' ? '14:00' : '18:00',
			minutes: kind === 'match' ? 80 : pick(next, [60, 75, 90]),
			kind,
			surface: pick(next, [
				'natural-firm',
				'natural-soft',
				'natural-hard',
				'artificial-3g',
				'hybrid',
			]),
			ground: groundBy(wet),
		}
	})
	return seasonVisit(
		[
			{
				id: 'p1',
				sole: 'firm-ground',
				minutesWorn: 600,
				lifeMinutes: 7200,
				price: 180,
				weeklyMinutesMax: 200,
			},
			{ id: 'p2', sole: 'artificial-ground', minutesWorn: 1200, lifeMinutes: 7200, price: 120 },
			{ id: 'p3', sole: 'turf', minutesWorn: 300, lifeMinutes: 9000, price: 80 },
			{
				id: 'p4',
				sole: 'firm-ground',
				minutesWorn: 0,
				lifeMinutes: 7200,
				price: 200,
				newFrom: '2027-03-01',
			},
		],
		sessions,
	)
}
/** 24 weeks of five sessions with twelve pairs of four soles, some limited and two of them new. */
export function wideSeason(seed: number): Visit {
	const { season } = bigSeason(seed, 24)
	const kinds = ['firm-ground', 'artificial-ground', 'turf', 'soft-ground'] as const
	const footwear = Array.from({ length: 12 }, (_, place): Pair => {
		const isNew = place > 9
		return {
			id: `p${String(place + 1).padStart(2, '0')}`,
			sole: kinds[place % kinds.length] ?? 'turf',
			minutesWorn: isNew ? 0 : 400 * place,
			price: 60 + 15 * place,
			...(place % 5 === 0 ? { weeklyMinutesMax: 180 } : {}),
			...(isNew ? { newFrom: addDays('2027-01-18', 14 * (place - 10)) } : {}),
		}
	})
	return seasonVisit(footwear, season?.sessions ?? [])
}
