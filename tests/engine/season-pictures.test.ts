/**
 * Twenty seasons of invented players with the plan of each, week by week, kept as readable text
 * beside the visit: read each line as a coach, a parent and a player would.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { planSeason } from '../../electron/solver/plan.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { Plan, PlanSession } from '../../shared/engine/season/plan-file.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { spokenTo } from '../../shared/engine/words/statement.ts'
import { plainCheck } from './plain-plan.ts'
import { mondayOf } from './plain-week.ts'

const folder = new URL('./season-pictures/', import.meta.url)
const names = readdirSync(folder)
	.filter((name) => name.endsWith('.json'))
	.sort()
const visitOf = (name: string): Visit =>
	visitSchema.parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8')))
const isLater = (name: string) => name.endsWith('.then.json')
/** One that goes on from another is planned anew from its own day, with the plan of before. */
async function planned(name: string): Promise<Plan> {
	const earlier = isLater(name) ? await planned(name.replace('.then', '')) : undefined
	return planSeason(visitOf(name), earlier ? { earlier } : {})
}
const day = ({ date, start }: { date: string; start?: string | undefined }) =>
	`${new Date(date).toLocaleDateString('en', { weekday: 'short', timeZone: 'UTC' })} ${start ?? ''}`
const groundOf = ({ surface, ground }: PlanSession) =>
	ground === 'dry' ? surface : `${surface} ${ground}`
function sessionText(plan: Plan, session: PlanSession): string {
	const letter = (id: string) => plan.pairs.find((pair) => pair.id === id)!.letter
	const worn = session.parts
		? session.parts.map(({ pair, minutes }) => `${letter(pair)} ${minutes}`).join(' then ')
		: session.pair && letter(session.pair)
	const full = session.fullMinutes ? ` of ${session.fullMinutes}` : ''
	const what = session.kind === 'match' ? 'MATCH' : 'training'
	return (
		`${day(session)} ${what} ${session.minutes}${full} min, ` +
		`${groundOf(session)}: ${worn ?? 'NO PAIR'}${session.past ? ' (played)' : ''}`
	)
}
/** A line a week: what is worn, and what does not take place. */
function weekLines(plan: Plan): string[] {
	const entries = [
		...plan.sessions.map((one) => ({ ...one, text: sessionText(plan, one) })),
		...plan.off.map((one) => ({ ...one, text: `${day(one)} ${one.kind} off, ${one.status}` })),
	].sort((one, other) => (`${one.date} ${one.start}` < `${other.date} ${other.start}` ? -1 : 1))
	const weeks = Map.groupBy(entries, ({ date }) => mondayOf(date))
	return [...weeks].map(
		([monday, list]) => `  ${monday}  ${list.map(({ text }) => text).join(' | ')}`,
	)
}
const readers = ['player', 'coach'] as const
function findingLines({ findings }: Plan): string[] {
	return findings.flatMap((finding) => [
		`  ${finding.level} ${finding.id}: ${finding.says}`,
		...readers.flatMap((reader) => {
			const said = spokenTo(reader, finding)
			return said ? [`    ${reader}: ${said}`] : []
		}),
	])
}
const sessionLines = (plan: Plan, told: (session: PlanSession) => string[]): string[] => {
	const lines = plan.sessions.flatMap((session) => {
		const list = told(session)
		return list.length > 0 ? [`${session.date} ${session.start} ${list.join('; ')}`] : []
	})
	return lines.map((line) => `  ${line}`)
}
const pairLine = ({ letter, name, sole, minutes, wearFraction, ...pair }: Plan['pairs'][number]) =>
	[
		`  ${letter} ${name}, ${sole}: ${minutes} min at the end, ${Math.round(100 * wearFraction)} %`,
		pair.brokenInBy && `broken in by ${pair.brokenInBy}`,
		pair.checkBy && `check by ${pair.checkBy}`,
		pair.outgrownBy && `outgrown by ${pair.outgrownBy}`,
		pair.replaceBy && `replace by ${pair.replaceBy}`,
	]
		.filter(Boolean)
		.join(', ')
const levelText = ({ level, reached, proven, gap }: NonNullable<Plan['levels']>[number]) =>
	`${level} ${reached}${proven ? '' : ` (not proven, gap ${gap})`}`
const readable = (plan: Plan): string =>
	[
		'PAIRS',
		...plan.pairs.map(pairLine),
		'WEEKS',
		...weekLines(plan),
		'LEVELS',
		`  ${plan.levels?.map(levelText).join(', ') ?? 'none'}`,
		'BUY',
		...plan.purchases.map(({ says }) => `  ${says}`),
		'FINDINGS',
		...findingLines(plan),
		'UNMET',
		...sessionLines(plan, ({ unmet }) => unmet),
		'WHY',
		...sessionLines(plan, ({ reasons }) => reasons),
		'',
	].join('\n')

it('there are twenty and more', () => expect(names.length).toBeGreaterThanOrEqual(20))
it.each(names)('%s', async (name) => {
	const plan = await planned(name)
	const visit = visitOf(name)
	expect(plainCheck(visit, plan, assess(visit).prescription)).toEqual([])
	const text = readable(plan)
	expect(text).not.toMatch(/undefined|NaN|\[object/)
	await expect(text).toMatchFileSnapshot(`./season-pictures/${name.replace('.json', '.txt')}`)
})
