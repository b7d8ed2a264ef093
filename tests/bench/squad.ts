/** 40 reports after a screening day: drawn anew, one after another, in one warm process. */
import { readFileSync } from 'node:fs'
import { renderPdf } from '../../electron/pdf/render.ts'
import { assess } from '../../shared/assess.ts'
import { clinicSchema } from '../../shared/clinic.ts'
import { noDecisions } from '../../shared/decisions.ts'
import { playerReport } from '../../shared/report/player.ts'
import { parseVisit } from '../../shared/visit/parse.ts'

/** s for 40 reports on 2 cores: the budget of the program */
const most = 20
const players = 40
export async function squadBench(): Promise<{ name: string; value: number; unit: string; limit: number }[]> {
	const json = (name: string) => JSON.parse(readFileSync(new URL(`../../assets/demo/${name}`, import.meta.url), 'utf8'))
	const parsed = parseVisit(json('visit-adolescent.json'))
	if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
	const clinic = clinicSchema.parse(json('clinic.json'))
	const from = performance.now()
	for (let at = 0; at < players; at++) {
		const visit = { ...parsed.value, player: { ...parsed.value.player, givenName: `Player ${at + 1}` } }
		await renderPdf(playerReport({ visit, assessment: assess(visit), decisions: noDecisions, clinic, signedAt: '2027-01-20T12:00:00.000Z', draft: false }))
	}
	return [{ name: `squad day: ${players} reports`, value: (performance.now() - from) / 1000, unit: 's', limit: most }]
}
