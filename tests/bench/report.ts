/** The player report against the bare text in pdfmake, in one warm process. */
import { readFileSync } from 'node:fs'
import pdfmake from 'pdfmake'
import { fontFiles } from '../../electron/pdf/fonts.ts'
import { textsOfDocument } from '../../electron/pdf/glyphs.ts'
import { renderPdf } from '../../electron/pdf/render.ts'
import { assess } from '../../shared/engine/assess.ts'
import { clinicSchema } from '../../shared/engine/report/clinic.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { parseVisit } from '../../shared/engine/visit/parse.ts'

/** Times the bare text; own budget of the program. */
const mostRatio = 3
const runs = 15
const json = (name: string) =>
	JSON.parse(readFileSync(new URL(`../../assets/demo/${name}`, import.meta.url), 'utf8'))
/** Median time of a call, ms, after five to warm it. */
async function median(run: () => Promise<unknown>): Promise<number> {
	for (let at = 0; at < 5; at++) await run()
	const times: number[] = []
	for (let at = 0; at < runs; at++) {
		const from = performance.now()
		await run()
		times.push(performance.now() - from)
	}
	return times.toSorted((a, b) => a - b)[Math.floor(runs / 2)] ?? Number.NaN
}
export async function reportBench(): Promise<
	{ name: string; value: number; unit: string; limit: number }[]
> {
	const parsed = parseVisit(json('visit-adolescent.json'))
	if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
	const document = playerReport({
		visit: parsed.value,
		assessment: assess(parsed.value),
		decisions: noDecisions,
		clinic: clinicSchema.parse(json('clinic.json')),
		signedAt: undefined,
		draft: true,
	})
	const allowed = new Set<string>(Object.values(fontFiles))
	pdfmake.setUrlAccessPolicy(() => false)
	pdfmake.setLocalAccessPolicy((path) => allowed.has(path))
	pdfmake.addFonts({ Noto: fontFiles })
	const bare = () =>
		pdfmake
			.createPdf({
				content: textsOfDocument(document),
				defaultStyle: { font: 'Noto', fontSize: 10 },
				info: { creationDate: new Date(document.createdAt) },
			})
			.getBuffer()
	const bareMs = await median(bare)
	const reportMs = await median(() => renderPdf(document))
	return [
		{
			name: 'player report, warm, against its bare text in pdfmake',
			value: reportMs / bareMs,
			unit: 'times',
			limit: mostRatio,
		},
		{
			name: 'player report, warm (for comparison)',
			value: reportMs,
			unit: 'ms',
			limit: Number.POSITIVE_INFINITY,
		},
	]
}
