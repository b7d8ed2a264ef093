/**
 * The SHA-256 of every kind of document for the demo and for the twelve clinical pictures.
 * A change that only moves or rewords code leaves this list alone; one that changes a page renews
 * it with `vitest run tests/host/document-digests.test.ts -u`, and says in its commit which pages
 * and why.
 */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { planSeason } from '../../electron/solver/plan.ts'
import { assess } from '../../shared/engine/assess.ts'
import { openProtocol, shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import { reportCss } from '../../shared/engine/report/html/style.ts'
import { toHtml } from '../../shared/engine/report/html.ts'
import { type KindInput, kindNames, kinds } from '../../shared/engine/report/kinds.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { parseShelf } from '../../shared/engine/visit/shelf.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { clinic, json, read } from '../demo.ts'

const pictures = new URL('../engine/pictures/', import.meta.url)
const pictureNames = readdirSync(pictures)
	.filter((name) => name.endsWith('.json'))
	.sort()
const demoNames = ['visit-adolescent.json', 'visit-adult.json', 'season-visit.json']
const sha256 = (content: string | Uint8Array): string =>
	createHash('sha256').update(content).digest('hex')

/**
 * What the command line would compose from the visit alone, with the consents that club documents
 * ask for.
 */
async function inputOf(visit: Visit, audience: 'clinician' | 'club'): Promise<KindInput> {
	const purpose = audience === 'club' ? 'squad-club' : 'coach'
	const input: KindInput = {
		visit,
		earlier: [],
		decisions: noDecisions,
		signedAt: undefined,
		draft: true,
		on: visit.visitDate,
		protocol: openProtocol(shippedProtocol),
		assessment: assess(visit),
		clinic,
		consents: [{ id: 'consent-1', purpose, decision: 'permit', given: visit.visitDate }],
		audience,
	}
	if (visit.season && (visit.footwear?.length ?? 0) > 0) input.plan = await planSeason(visit)
	return input
}

/**
 * One line a document: its kind, the digest of its PDF and of its page, or why it does not apply.
 */
async function documentLines(visit: Visit): Promise<string[]> {
	const lines: string[] = []
	for (const kind of kindNames) {
		for (const audience of kind === 'squad'
			? (['clinician', 'club'] as const)
			: (['clinician'] as const)) {
			const input = await inputOf(visit, audience)
			const name = kind === 'squad' ? `${kind} for the ${audience}` : kind
			const problems = kinds[kind].problems(input)
			if (problems.length > 0) {
				lines.push(`  ${name}: does not apply`)
				continue
			}
			const document = kinds[kind].compose(input)
			const page = toHtml(document, { css: reportCss(document.letterhead.colour) })
			lines.push(`  ${name}: pdf ${sha256(await renderPdf(document))} page ${sha256(page)}`)
		}
	}
	return lines
}

const byteForByte =
	'every kind of document of the demo and of the twelve pictures is byte for byte what it was'
it(byteForByte, async () => {
	const visits = [
		...demoNames.map((name) => ({ name, visit: read(json(name)) })),
		...pictureNames.map((name) => ({
			name,
			visit: read(JSON.parse(readFileSync(new URL(name, pictures), 'utf8'))),
		})),
	]
	const shelf = parseShelf(json('shelf.json'))
	if (!shelf.ok) throw new Error('the demo shelf does not parse')
	const lines: string[] = []
	for (const { name, visit } of visits) {
		const assessment = JSON.stringify(assess(visit, [], shippedProtocol, shelf.value))
		lines.push(name, `  assessment: ${sha256(assessment)}`, ...(await documentLines(visit)))
	}
	for (const name of pictureNames) {
		const picture = name.replace('.json', '.txt')
		lines.push(`${picture}: ${sha256(readFileSync(new URL(picture, pictures)))}`)
	}
	await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('./fixtures/document-digests.txt')
}, 300_000)
