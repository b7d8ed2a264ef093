/** Reading a visit: the schema, then what no single field can say of itself. */
import { type Problem, problemsOf } from './problems.ts'
import { type Visit, visitSchema } from './visit.ts'

export type Parsed<T> = { ok: true; value: T } | { ok: false; problems: Problem[] }

/** Checks that span fields. Used by the file reader, by the host at signing and by the screens. */
export function crossProblems(visit: Visit): Problem[] {
	const problems: Problem[] = []
	const { statureCm, sittingHeightCm } = visit.body ?? {}
	if (statureCm !== undefined && sittingHeightCm !== undefined && sittingHeightCm >= statureCm)
		problems.push({
			path: 'body.sittingHeightCm',
			message:
				`not below stature, given ${sittingHeightCm}, allowed: less than the stature of ` +
				`${statureCm} cm (take off the height of the stool)`,
		})
	if (visit.player.birthDate >= visit.visitDate)
		problems.push({
			path: 'player.birthDate',
			message:
				`not before the visit, given "${visit.player.birthDate}", allowed: a date before ` +
				`${visit.visitDate}`,
		})
	else if (Number(visit.visitDate.slice(0, 4)) - Number(visit.player.birthDate.slice(0, 4)) > 110)
		problems.push({
			path: 'player.birthDate',
			message:
				`more than 110 years before the visit, given "${visit.player.birthDate}", ` +
				`allowed: a birth date within 110 years of ${visit.visitDate}`,
		})
	for (const side of ['left', 'right'] as const) {
		const foot = visit.feet?.[side]
		for (const [index, length] of [foot?.heelToToeMm ?? []].flat().entries())
			for (const ball of [foot?.heelToBallMm ?? []].flat())
				if (ball >= length)
					problems.push({
						path: `feet.${side}.heelToBallMm`,
						message:
							`not below heel to toe (reading ${index + 1}), given ${ball}, allowed: ` +
							`less than ${length} mm`,
					})
	}
	const { season } = visit
	if (season && season.to < season.from)
		problems.push({
			path: 'season.to',
			message: `before the start, given "${season.to}", allowed: ${season.from} or later`,
		})
	for (const [index, session] of (season?.sessions ?? []).entries())
		if (season && (session.date < season.from || session.date > season.to))
			problems.push({
				path: `season.sessions.${index}.date`,
				message:
					`outside the season, given "${session.date}", allowed: ${season.from} to ` +
					`${season.to}`,
			})
	const seen = new Set<string>()
	for (const [index, pair] of (visit.footwear ?? []).entries()) {
		if (seen.has(pair.id))
			problems.push({
				path: `footwear.${index}.id`,
				message: `used twice, given "${pair.id}", allowed: an id of its own for each pair`,
			})
		seen.add(pair.id)
		if (pair.acquired !== undefined && pair.acquired > visit.visitDate)
			problems.push({
				path: `footwear.${index}.acquired`,
				message: `after the visit, given "${pair.acquired}", allowed: ${visit.visitDate} or earlier`,
			})
	}
	return problems
}

/** Reads a visit from JSON data. Never throws for bad data: each problem is named with its path. */
export function parseVisit(input: unknown): Parsed<Visit> {
	if (input === null || typeof input !== 'object' || Array.isArray(input))
		return {
			ok: false,
			problems: [
				{
					path: '(file)',
					message:
						`not a visit, given ${Array.isArray(input) ? 'a list' : String(input)}, ` +
						'allowed: an object with format "lastwright-visit"',
				},
			],
		}
	const { format, version } = input as { format?: unknown; version?: unknown }
	if (format === 'lastwright-visit' && typeof version === 'number' && version > 1)
		return {
			ok: false,
			problems: [
				{
					path: 'version',
					message:
						`a version of the future, given ${version}, allowed: 1 (open this file with ` +
						'a newer Lastwright)',
				},
			],
		}
	const result = visitSchema.safeParse(input)
	if (!result.success) return { ok: false, problems: problemsOf(result.error, input) }
	const problems = crossProblems(result.data)
	return problems.length > 0 ? { ok: false, problems } : { ok: true, value: result.data }
}
