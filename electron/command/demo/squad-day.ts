/** The screening day of today, half done: who is expected, who stands where, who is signed. */
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { type Ask, actingAs } from './asking.ts'
import { demoPassphrase } from './passphrase.ts'
import type { OnBoard, Scenario } from './scenario.ts'
import { writeOpen, writeSigned } from './visits.ts'

/** Players of the list who are on record already, by row. */
async function sameRows(
	ask: Ask,
	{ text, team, day }: { text: string; team: string; day: string },
): Promise<Record<string, string>> {
	const { rows } = await ask('squad.previewRoster', { text, team, day })
	return Object.fromEntries(
		rows.flatMap(({ row, known: [first] }) => (first ? [[String(row), first.playerId]] : [])),
	)
}
/** Takes the team in. @returns the player of each number */
async function takeTeamIn(
	ask: Ask,
	{ today: day, rooms: { squad } }: Scenario,
): Promise<{ squadId: string; numbers: Map<string, string> }> {
	const list = { text: squad.roster.join('\n'), team: squad.team, day }
	const { squadId } = await ask('squad.create', { ...list, same: await sameRows(ask, list) })
	const { rows } = await ask('squad.open', { squadId })
	return { squadId, numbers: new Map(rows.map(({ number, playerId }) => [number, playerId])) }
}
async function enterVisit(
	ask: Ask,
	{ today, rooms, shelf }: Scenario,
	playerId: string,
	{ visit: measured, signedBy, consentNoted }: OnBoard,
): Promise<void> {
	if (!measured) return
	const { player } = await ask('players.open', { playerId })
	const visit: Visit = {
		format: 'lastwright-visit',
		version: 1,
		player,
		visitDate: today,
		...measured,
	}
	if (signedBy === undefined) {
		const decisions = { ...noDecisions, ...(consentNoted && { consentNoted }) }
		await writeOpen(ask, { playerId, visit }, decisions)
		return
	}
	const sign = () => writeSigned(ask, { playerId, visit, earlier: [], shelf })
	const other = rooms.people.find(({ name }) => name === signedBy)
	if (other) await actingAs(ask, { other: other.passphrase, back: demoPassphrase }, sign)
	else await sign()
}
export async function enterSquadDay(ask: Ask, scenario: Scenario): Promise<void> {
	const { squad } = scenario.rooms
	const { squadId, numbers } = await takeTeamIn(ask, scenario)
	for (const onBoard of squad.board) {
		const { number, presence, at, reason } = onBoard
		const playerId = numbers.get(number)
		if (playerId === undefined) throw new Error(`demo: nobody wears number ${number}`)
		await enterVisit(ask, scenario, playerId, onBoard)
		await ask('squad.mark', {
			squadId,
			playerId,
			presence,
			...(at && { at }),
			...(reason && { reason }),
		})
	}
}
