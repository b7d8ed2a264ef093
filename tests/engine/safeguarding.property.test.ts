/** The safeguarding note is in no document, and no answer that others than those who lead are given. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { contract } from '../../shared/contract.ts'
import { differences } from '../../shared/desk/records/amendment.ts'
import { printedChanges, toldDifferences } from '../../shared/desk/records/told.ts'
import { keepingRestricted, withoutRestricted } from '../../shared/desk/visits/restricted.ts'
import { assess } from '../../shared/engine/assess.ts'
import { toHtml } from '../../shared/engine/report/html.ts'
import { type KindInput, kindNames, kinds } from '../../shared/engine/report/kinds.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { demoNames, inputOf, measured } from '../host/kind-input.ts'
import { wholeVisit } from './random-visit.ts'

const mark = 'Zq-marked-note-Zq'
const noted = (visit: Visit, note = mark): Visit => ({
	...visit,
	screening: { ...visit.screening, safeguardingNote: note },
})
/** Every document that the input can make, as data and as a page. */
const written = (input: KindInput): string[] =>
	kindNames.flatMap((kind) =>
		(kind === 'squad' ? (['clinician', 'club'] as const) : [undefined]).flatMap((audience) => {
			const asked: KindInput = audience ? { ...input, audience } : input
			if (kinds[kind].problems(asked).length > 0) return []
			const document = kinds[kind].compose(asked)
			return [JSON.stringify(document), toHtml(document, { css: '' })]
		}),
	)
describe('no document', () => {
	it.each(demoNames)('of %s has it, and every kind was made', (name) => {
		const visit = noted(measured(name))
		const before = noted(measured(name), `${mark} before`)
		const changes = printedChanges(
			{ visit: before, decisions: noDecisions },
			{ visit, decisions: noDecisions },
		)
		const made = kindNames.flatMap((kind) => written(inputOf(visit, kind, { version: 2, changes })))
		expect(changes).toHaveLength(1)
		const told = toldDifferences(differences({ visit: before }, { visit }))
		expect(told).toHaveLength(1)
		expect(JSON.stringify(told)).not.toContain(mark)
		expect(made.length).toBeGreaterThan(2 * kindNames.length)
		for (const page of [...changes, ...made]) expect(page).not.toContain(mark)
	})
	it('of any visit has it, nor does the assessment', () => {
		fc.assert(
			fc.property(wholeVisit, (plain) => {
				const visit = noted(plain)
				const assessment = assess(visit)
				expect(JSON.stringify(assessment)).not.toContain(mark)
				for (const kind of kindNames)
					for (const page of written(inputOf(visit, kind))) expect(page).not.toContain(mark)
			}),
			{ numRuns: 15 },
		)
	})
})
describe('no answer', () => {
	const holdsVisit = (schema: z.ZodType): boolean =>
		JSON.stringify(z.toJSONSchema(schema, { unrepresentable: 'any' })).includes('safeguardingNote')
	it('that reception may ask for has room for it', () => {
		const open = Object.entries(contract).filter(
			([, { who, output }]) =>
				(who as readonly string[]).includes('reception') && holdsVisit(output),
		)
		expect(open.map(([name]) => name)).toEqual([])
		expect(holdsVisit(contract['drafts.open'].output)).toBe(true)
	})
	it('to others than those who lead holds it: as a field, as raw text, as a difference', () => {
		const visit = noted(measured(demoNames[0] ?? ''))
		const lines = differences(
			{ visit: noted(visit, `${mark} before`), decisions: noDecisions },
			{ visit, decisions: noDecisions },
		)
		expect(JSON.stringify(lines)).toContain(mark)
		const answer = {
			draft: { content: { visit, raw: { 'screening.safeguardingNote': mark, 'feet.x': '2' } } },
			earlier: [visit],
			versions: [{ differences: lines }],
			asked: lines.map(({ path }) => ({ path, first: { text: mark } })),
			told: toldDifferences(lines).map(({ key, before }) => ({ path: key, before })),
		}
		const given = withoutRestricted(answer) as typeof answer
		expect(JSON.stringify(given)).not.toContain(mark)
		expect(given.draft.content.raw).toEqual({ 'feet.x': '2' })
		const { safeguardingNote: _, ...screening } = visit.screening ?? {}
		expect(given.earlier).toEqual([{ ...visit, screening }])
	})
	it('and nothing is lost when somebody saves who was not shown it', () => {
		fc.assert(
			fc.property(wholeVisit, fc.boolean(), (visit, hadNote) => {
				const content = (of: Visit) => ({ visit: of, raw: {}, decisions: noDecisions })
				const before = content(hadNote ? noted(visit) : visit)
				const shown = withoutRestricted(before) as typeof before
				expect(keepingRestricted(shown, before)).toEqual(before)
				const forged = content(noted(visit, 'forged'))
				expect(JSON.stringify(keepingRestricted(forged, before))).not.toContain('forged')
			}),
			{ numRuns: 100 },
		)
	})
})
