/** A season with its plan and calendar, and a screening day with one player signed. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Home } from './home.ts'
import type { Ask, World } from './program.ts'
import { drafted, measured, signDraft } from './visits.ts'

const day = '2027-01-20'
const roster = [
	'Number;Given name;Family name;Birth date;Sex;Guardian;Guardian e-mail;Consents',
	'7;Ida;Fenwick;2012-03-14;f;Rue Fenwick;rue@guardian.example;squad-summary',
	'9;Noor;Haldane;2012-08-02;f;Kit Haldane;kit@guardian.example;',
	'11;Wren;Solberg;2011-11-30;m;Ada Solberg;ada@guardian.example;squad-summary',
].join('\r\n')

export async function planSeason({ program }: World, ask: Ask, { playerIds }: Home): Promise<void> {
	const playerId = playerIds.season
	const file = join(program.root, 'assets/demo/season-visit.json')
	const { season, footwear } = JSON.parse(readFileSync(file, 'utf8'))
	await drafted(ask, playerId, day, { ...measured(238), footwear })
	const to = '2027-03-28'
	const sessions = season.sessions.filter((one: { date: string }) => one.date <= to)
	await ask('season.save', { playerId, season: { ...season, to, sessions } })
	await ask('season.plan', { playerId, from: '2027-02-01' })
	await ask('season.ics', { playerId })
}
export async function screenSquad({ program }: World, ask: Ask): Promise<void> {
	const { squadId } = await ask('squad.create', {
		text: roster,
		team: 'Saltmarsh Rovers U15',
		day,
		same: {},
	})
	const { rows } = await ask('squad.open', { squadId })
	const [first, second, third] = rows.map((row: { playerId: string }) => row.playerId)
	for (const playerId of [first, second])
		await ask('squad.mark', { squadId, playerId, presence: 'here', at: 'measures' })
	await ask('squad.mark', { squadId, playerId: third, presence: 'refused', reason: 'felt ill' })
	await drafted(ask, first, day, { notes: 'seen at the stations' })
	await signDraft(program, ask, first, day)
	await drafted(ask, second, day, measured(240))
}
