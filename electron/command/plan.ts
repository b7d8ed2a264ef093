/** `plan`: the season's rotation of a visit, and the calendar of it. */
import { writeFileSync } from 'node:fs'
import { need } from '../../shared/engine/plain/need.ts'
import { planSchema } from '../../shared/engine/season/plan-file.ts'
import { writeCalendar } from '../calendar/write.ts'
import { knownZone, zoneHere } from '../calendar/zones.ts'
import { planSeason } from '../solver/plan.ts'
import { BadInput, readArgs } from './args.ts'
import { readAs, readProtocol, readVisit } from './files.ts'

function write(option: string, name: string, text: string): void {
	try {
		writeFileSync(name, text)
	} catch (error) {
		throw new BadInput([
			`--${option}: cannot be written (${(error as NodeJS.ErrnoException).code}), given ` +
				`"${name}", allowed: a file in a folder that exists`,
		])
	}
}
/** What was asked for on the command line. */
interface Wishes {
	visitFile: string
	out: string
	ics: string | undefined
	from: string | undefined
	protocol: string | undefined
	earlier: string | undefined
	zone: string
	timeLimitSeconds: number
}
/** @throws BadInput with a line for each option that cannot be */
function wishesOf(args: string[]): Wishes {
	const text = { type: 'string' } as const
	const { place, option } = readArgs(
		args,
		{
			out: text,
			ics: text,
			protocol: text,
			from: text,
			earlier: text,
			zone: text,
			'time-limit': text,
		},
		['VISIT.json'],
	)
	const given = (name: keyof typeof option): string | undefined => option[name]
	const problems: string[] = []
	const [out, ics, from] = [given('out'), given('ics'), given('from')]
	if (!out)
		problems.push('--out: missing, given nothing, allowed: the name of the plan file to write')
	if (ics === '')
		problems.push('--ics: empty, given "", allowed: the name of the calendar file to write')
	if (from !== undefined && !/^\d{4}-\d\d-\d\d$/.test(from))
		problems.push(`--from: not a date, given "${from}", allowed: YYYY-MM-DD`)
	const limit = given('time-limit')
	const timeLimitSeconds = limit === undefined ? 10 : Number(limit)
	if (!(timeLimitSeconds > 0 && timeLimitSeconds <= 600))
		problems.push(
			`--time-limit: not a number of seconds, given "${limit}", allowed: above 0 to 600`,
		)
	const zone = given('zone') ?? zoneHere()
	if (!knownZone(zone))
		problems.push(
			`--zone: no such time zone, given "${zone}", allowed: a name such as Australia/Melbourne`,
		)
	if (!out || problems.length > 0) throw new BadInput(problems)
	return {
		visitFile: need(place[0], 'the visit file'),
		out,
		ics,
		from,
		protocol: given('protocol'),
		earlier: given('earlier'),
		zone,
		timeLimitSeconds,
	}
}
/**
 * Writes the season's rotation, and the calendar of it where asked. Nothing goes to standard
 * output.
 */
export async function planCommand(args: string[]): Promise<void> {
	const { visitFile, out, ics, from, protocol, earlier, zone, timeLimitSeconds } = wishesOf(args)
	const visit = readVisit(visitFile)
	if (!visit.season)
		throw new BadInput([
			'season: missing, given nothing, allowed: an object with from, to and sessions or a ' +
				'weekly pattern',
		])
	const plan = await planSeason(visit, {
		protocolFile: readProtocol(protocol),
		timeLimitSeconds,
		from,
		earlier: earlier === undefined ? undefined : readAs(planSchema, earlier),
	})
	const held = plan.findings.find(({ code }) => code === 'season.held')
	if (held) throw new BadInput([`season: held. ${held.says}`])
	write('out', out, `${JSON.stringify(plan, null, '\t')}\n`)
	if (ics !== undefined) write('ics', ics, writeCalendar(plan, { zone, stamp: new Date() }))
}
