/** How many pages the papers of other readers take, whoever the player is. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { settledAsProposed } from '../../electron/command/demo/visits.ts'
import { renderPdf } from '../../electron/pdf/render.ts'
import { assess } from '../../shared/engine/assess.ts'
import { isHeld } from '../../shared/engine/facts/held.ts'
import { type KindName, kinds } from '../../shared/engine/report/kinds.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { clinic, json, read } from '../demo.ts'
import { openPdf } from './read-pages.ts'

const folder = new URL('../engine/pictures/', import.meta.url)
const pictures = readdirSync(folder)
	.filter((name) => name.endsWith('.json'))
	.map((name): [string, Visit] => [
		name,
		visitSchema.parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8'))),
	])
const tui = read(json('visit-adolescent.json'))
const footwear = tui.footwear ?? []
const twelve: Visit = {
	...tui,
	footwear: Array.from({ length: 12 }, (_, at) => ({
		...footwear[at % footwear.length]!,
		id: `p${at}`,
		name: `pair number ${at} of the boots`,
	})),
}
const long: Visit = {
	...tui,
	player: {
		...tui.player,
		givenName: 'Maximiliana-Theodora',
		familyName: 'Wolfeschlegelsteinhausenbergerdorff-Featherstonehaugh',
	},
	footwear: footwear.map((pair) => ({
		...pair,
		name: 'the very long and winding name of a pair of boots kept in the hall cupboard',
	})),
}
const everybody: [string, Visit][] = [
	...pictures,
	['the demo', tui],
	['twelve pairs', twelve],
	['long names', long],
]
async function pagesOf(kind: KindName, visit: Visit): Promise<number> {
	const assessment = assess(visit)
	const input = {
		visit: { ...visit, player: { ...visit.player, guardian: { name: 'Rae Ashdown' } } },
		assessment,
		decisions: settledAsProposed(assessment),
		clinic,
		signedAt: '2027-01-20T09:00:00.000Z',
		draft: false,
		on: visit.visitDate,
		consents: [
			{ id: 'C', purpose: 'coach' as const, decision: 'permit' as const, given: '2026-01-20' },
		],
	}
	return (await openPdf(await renderPdf(kinds[kind].compose(input)))).numPages
}

describe.each(everybody)('%s', (_name, visit) => {
	it('takes one page for the guardian while sport is held, never more than two', async () => {
		const { gate } = assess(visit).prescription
		const pages = await pagesOf('guardian', visit)
		expect(pages).toBeLessThanOrEqual(isHeld(gate, 'sport') ? 1 : 2)
	})
	it('takes one page for the coach and one for the appointment', async () => {
		expect([await pagesOf('coach', visit), await pagesOf('appointment', visit)]).toEqual([1, 1])
	})
})
