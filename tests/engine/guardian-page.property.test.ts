/** The guardian's page: it begins as the player's does, and speaks to the guardian. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { isHeld } from '../../shared/engine/facts/held.ts'
import { settleAll } from '../../shared/engine/prescription/answers.ts'
import { type Block, blocksIn } from '../../shared/engine/report/document.ts'
import { type KindInput, kinds } from '../../shared/engine/report/kinds.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { clinic } from '../demo.ts'
import { wholeVisit } from './random-visit.ts'

const signs = fc.constantFrom<NonNullable<Visit['screening']>>(
	{},
	{ breathlessOrChestPain: true },
	{ boneStressHighRisk: true },
	{ reducedSensation: true },
	{ suddenLegLengthDifference: true },
	{ rigidFlatFoot: true },
	{ pregnant: true, periodsAbsent: true },
)
const minors = fc.tuple(wholeVisit, signs).map(
	([visit, screening]): Visit => ({
		...visit,
		player: {
			...visit.player,
			givenName: 'Tui',
			birthDate: '2013-05-02',
			guardian: { name: 'Rae Ashdown' },
		},
		visitDate: '2027-01-20',
		screening: { ...visit.screening, ...screening },
	}),
)
const inputOf = (visit: Visit, draft: boolean): KindInput => {
	const assessment = assess(visit)
	return {
		visit,
		assessment,
		decisions: draft
			? noDecisions
			: settleAll(noDecisions, assessment.prescription, 'asked elsewhere'),
		clinic,
		signedAt: draft ? undefined : '2027-01-20T09:00:00.000Z',
		draft,
		on: '2027-01-20',
	}
}
/** What stops or whom to see, without the words: how the page begins. */
const beginningOf = ([first]: readonly Block[]) =>
	first?.kind === 'alert'
		? 'alert'
		: first?.kind === 'text' && first.tone === 'headline'
			? 'pairs'
			: 'neither'
const factsOf = (blocks: readonly Block[]) =>
	blocksIn(blocks).flatMap((block) =>
		block.kind === 'facts' ? block.rows.map(({ label }) => label) : [],
	)

it('has the same head as page one of the player, and the same facts while sport is held', () => {
	const seen = { alert: 0, pairs: 0, neither: 0 }
	fc.assert(
		fc.property(minors, fc.boolean(), (visit, draft) => {
			const input = inputOf(visit, draft)
			const [player, guardian] = [kinds.player.compose(input), kinds.guardian.compose(input)]
			const beginning = beginningOf(guardian.blocks)
			seen[beginning] += 1
			expect(beginning).toBe(beginningOf(player.blocks))
			if (!isHeld(input.assessment.prescription!.gate, 'sport')) return
			expect(factsOf(guardian.blocks)).toEqual(factsOf(player.blocks))
			expect(textsIn(guardian.blocks)).toContain(sentences['pageOne.waits'])
		}),
		{ numRuns: 200, seed: 21 },
	)
	for (const [beginning, times] of Object.entries(seen)) expect(times, beginning).toBeGreaterThan(0)
})
it('never calls the body of the player the reader’s own', () => {
	fc.assert(
		fc.property(minors, fc.boolean(), fc.boolean(), (visit, draft, released) => {
			const input = inputOf(visit, draft)
			const topics = ['pregnancy', 'periods', 'medication', 'weight'] as const
			const told = topics.map((topic) => ({ topic, to: 'guardian' as const }))
			const { blocks } = kinds.guardian.compose({
				...input,
				decisions: { ...input.decisions, ...(released && { released: told }) },
			})
			const ofGuardian = [
				sentences['guardian.consentOpen'],
				sentences['pageOne.withYou'],
				// the language of the one who reads, before its name
				sentences['language.yours'].split('{')[0] ?? '',
			]
			const text = ofGuardian.reduce(
				(rest, own) => rest.replaceAll(own, ''),
				textsIn(blocks).join('\n'),
			)
			expect(/.*\byour(self)?\b.*/i.exec(text)?.[0]).toBeUndefined()
		}),
		{ numRuns: 60 },
	)
})
