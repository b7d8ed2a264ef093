/**
 * 40 reports after a screening day, drawn anew by one lane and by as many as the batch uses; both
 * give the same bytes.
 */
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { pdfLanes } from '../../electron/pdf/lanes.ts'
import { renderPdf } from '../../electron/pdf/render.ts'
import { assess } from '../../shared/engine/assess.ts'
import { clinicSchema } from '../../shared/engine/report/clinic.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { parseVisit } from '../../shared/engine/visit/parse.ts'

/** s for 40 reports on 2 cores: the budget of the program */
const most = 20
const players = 40
export async function squadBench(): Promise<
	{ name: string; value: number; unit: string; limit: number }[]
> {
	const json = (name: string) =>
		JSON.parse(readFileSync(new URL(`../../assets/demo/${name}`, import.meta.url), 'utf8'))
	const parsed = parseVisit(json('visit-adolescent.json'))
	if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
	const clinic = clinicSchema.parse(json('clinic.json'))
	const report = async (at: number): Promise<string> => {
		const visit = {
			...parsed.value,
			player: { ...parsed.value.player, givenName: `Player ${at + 1}` },
		}
		const bytes = await renderPdf(
			playerReport({
				visit,
				assessment: assess(visit),
				decisions: noDecisions,
				clinic,
				signedAt: '2027-01-20T12:00:00.000Z',
				draft: false,
			}),
		)
		return createHash('sha256').update(bytes).digest('hex')
	}
	/**
	 * Draws every report, `lanes` at a time. @returns seconds, and the digests in the order of the
	 * players
	 */
	const draw = async (lanes: number): Promise<{ seconds: number; digests: string[] }> => {
		const digests: string[] = []
		const from = performance.now()
		let at = 0
		await Promise.all(
			Array.from({ length: lanes }, async () => {
				while (at < players) {
					const own = at++
					digests[own] = await report(own)
				}
			}),
		)
		return { seconds: (performance.now() - from) / 1000, digests }
	}
	const alone = await draw(1)
	const together = await draw(pdfLanes)
	if (together.digests.join() !== alone.digests.join())
		throw new Error('Reports drawn by two threads differ from those drawn by one.')
	return [
		{
			name: `squad day: ${players} reports, ${pdfLanes} at a time`,
			value: together.seconds,
			unit: 's',
			limit: most,
		},
		{
			name: `squad day: ${players} reports, one after another (for comparison, no limit)`,
			value: alone.seconds,
			unit: 's',
			limit: Number.POSITIVE_INFINITY,
		},
	]
}
