/** A visit in which every private field is answered. */
import { privatePaths } from '../../shared/engine/visit/private.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'

export const massKg = 83.7
const note = 'zq note of concern'
/** What a private field is answered with, where it is no yes. */
const answers: Readonly<Record<string, unknown>> = {
	'screening.lowEnergy.periodsMissed': 6,
	'screening.safeguardingNote': note,
}
/** The same visit with private fields answered, all unless given, and a body mass to be found again. */
export function planted(visit: Visit, paths: readonly { path: string }[] = privatePaths): Visit {
	const { screening } = visit
	const whole = structuredClone({
		...visit,
		player: { ...visit.player, sex: 'female' },
		body: { ...visit.body, massKg, growthOrHormoneTreatment: true },
		screening: {
			...screening,
			injury: { side: 'left', ...screening?.injury },
			limp: { side: 'left', days: 9, ...screening?.limp },
			lowEnergy: { ...screening?.lowEnergy },
		},
	})
	for (const { path } of paths) {
		const keys = path.split('.')
		const last = keys.pop()!
		let part = whole as unknown as Record<string, unknown>
		for (const key of keys) part = part[key] as Record<string, unknown>
		part[last] ??= answers[path] ?? true
		if (part[last] === false) part[last] = true
	}
	return visitSchema.parse(whole)
}
/** A minor with a guardian. */
export const young = (visit: Visit): Visit => ({
	...visit,
	player: { ...visit.player, birthDate: '2013-05-02', guardian: { name: 'Rae Ashdown' } },
})
