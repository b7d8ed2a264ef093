/** Notes of the visit and of a foot stand in the record, and in no document. */
import { describe, expect, it } from 'vitest'
import { printedChanges } from '../../shared/desk/records/told.ts'
import { assess } from '../../shared/engine/assess.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { type KindInput, kindNames, kinds } from '../../shared/engine/report/kinds.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { clinic, json, read } from '../demo.ts'

const protocol = openProtocol()
const player = { givenName: 'A', familyName: 'B', birthDate: '2013-05-02', sex: 'male' as const }
const make = (visitDate: string, parts: object = {}): Visit =>
	visitSchema.parse({ format: 'lastwright-visit', version: 1, player, visitDate, ...parts })

describe('notes are for the clinician alone', () => {
	const secret = 'Zibeline quarrel'
	const noted = (name: string): Visit => {
		const visit = read(json(name))
		const left = { ...visit.feet?.left, note: secret }
		return { ...visit, notes: secret, feet: { ...visit.feet, left } }
	}
	it.each(['visit-adolescent.json', 'visit-adult.json'])(
		'no document of %s carries one',
		(name) => {
			const visit = noted(name)
			const input: KindInput = {
				visit,
				earlier: [],
				decisions: noDecisions,
				signedAt: undefined,
				draft: true,
				on: visit.visitDate,
				protocol,
				assessment: assess(visit),
				clinic,
				consents: [],
			}
			const composed = kindNames.filter((kind) => kinds[kind].problems(input).length === 0)
			expect(composed.length).toBeGreaterThan(1)
			for (const kind of composed)
				expect(JSON.stringify(kinds[kind].compose(input)), kind).not.toContain(secret)
		},
	)
	it('a page that lists an amendment counts a note and a body mass, and tells neither', () => {
		const before = { visit: make('2027-01-20', { body: { massKg: 46 } }), decisions: {} }
		const after = {
			visit: make('2027-01-20', {
				body: { massKg: 48 },
				feet: { left: { heelToToeMm: 246, note: secret } },
				footwear: [{ id: 'p1', name: 'boots', note: secret }],
				notes: secret,
			}),
			decisions: {},
		}
		const told = printedChanges(before, after)
		expect(told.join(' ')).not.toContain(secret)
		// heel to toe, the pairs, and how many are not told
		expect(told).toHaveLength(3)
		expect(told.some((line) => /\b4[68]\b/.test(line))).toBe(false)
	})
})
