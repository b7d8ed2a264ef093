/** Page one: what stands on it for each reader, in each of its forms, and what the rest leaves out. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { settleAll } from '../../shared/engine/prescription/answers.ts'
import { appointmentSheet } from '../../shared/engine/report/appointment.ts'
import { type Block, endOfPageOne, type LwDocument } from '../../shared/engine/report/document.ts'
import type { ReportInput } from '../../shared/engine/report/inputs.ts'
import { kinds } from '../../shared/engine/report/kinds.ts'
import { wholeInside } from '../../shared/engine/report/page-one/inside.ts'
import { pageOne } from '../../shared/engine/report/page-one.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { clinic, json, read } from '../demo.ts'

const folder = new URL('./pictures/', import.meta.url)
const pictured = (name: string): Visit =>
	visitSchema.parse(JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8')))
const [minor, adult] = ['visit-adolescent.json', 'visit-adult.json'].map((name) =>
	read(json(name)),
) as [Visit, Visit]
const inputOf = (visit: Visit, more: Partial<ReportInput> = {}): ReportInput => {
	const assessment = assess(visit)
	return {
		visit,
		assessment,
		decisions: settleAll(noDecisions, assessment.prescription, 'asked elsewhere'),
		clinic,
		signedAt: '2027-01-20T09:00:00.000Z',
		draft: false,
		...more,
	}
}
const textOf = (blocks: readonly Block[]): string => textsIn(blocks).join('\n')
const pageOf = (input: ReportInput): string => textOf(pageOne(input).blocks)
const factsOf = ({ blocks }: LwDocument): Map<string, string> =>
	new Map(
		blocks.flatMap((block) =>
			block.kind === 'facts' ? block.rows.map(({ label, text }) => [label, text] as const) : [],
		),
	)
const headOf = ({ blocks: [first] }: LwDocument): string =>
	first?.kind === 'alert' ? first.title : first?.kind === 'text' ? first.text : ''
/** What page one prints, and the pages after it. */
function parted(input: ReportInput): { first: Block[]; following: Block[] } {
	const { blocks } = playerReport(input)
	const at = endOfPageOne(blocks)
	return { first: blocks.slice(0, at), following: blocks.slice(at) }
}
/** A visit with nothing found, its one pair kept, and nothing to look for. */
const atRest = (): ReportInput => {
	const input = inputOf(pictured('12-well-player'))
	const { assessment } = input
	const prescription = {
		...assessment.prescription!,
		priorities: [],
		pairs: assessment.prescription!.pairs.map((pair) => ({ ...pair, means: 'keep' as const })),
	}
	return { ...input, assessment: { ...assessment, prescription } }
}

describe('page one where nothing is held', () => {
	const input = inputOf(minor)
	it('is headed by the pair that must not stay, and says by when and with whom', () => {
		const page = pageOne(input)
		expect(headOf(page)).toBe('Replace by 3 February 2027: match boots.')
		const actions = page.blocks.flatMap((block) => (block.kind === 'actions' ? block.items : []))
		expect(actions).toEqual([
			{ what: 'Wear the heel raise in both shoes.', when: 'now', who: 'you and us' },
			{
				what: 'Get a pair 257 to 260 mm long inside.',
				when: 'by 3 February 2027',
				who: 'you and Rae Ashdown',
			},
			{
				what: 'Come back to be checked.',
				when: 'by 3 February 2027',
				who: 'you and Rae Ashdown',
			},
		])
	})
	it('has a card for the shop: length, sizes, at most five to look for and three to leave', () => {
		const facts = factsOf(pageOne(input))
		expect(facts.get(sentences['pageOne.inside'])).toBe('257 to 260 mm')
		expect(facts.get(sentences['player.nearest'])).toMatch(/^EU 39½, UK 6½/)
		expect(facts.get(sentences['player.seek'])!.split('; ')).toHaveLength(5)
		expect(facts.get(sentences['player.avoid'])!.split('; ')).toHaveLength(3)
	})
	it('names each pair with its verdict and until when, the one to replace first', () => {
		const table = pageOne(input).blocks.find((block) => block.kind === 'table')
		expect(table?.kind === 'table' && table.rows).toEqual([
			[
				'match boots',
				'Replace by 3 February 2027',
				'There is too little room in front of your toes.',
			],
			['school trainers', 'Keep', 'Until about 13 September 2027.'],
		])
	})
	it('says whom to call, and no more than is known', () => {
		expect(pageOf(input)).toContain('Stop sport and call 555 0142 if you notice')
		const { phone: _, ...silent } = clinic
		const page = pageOf({ ...input, clinic: silent })
		expect(page).toContain(sentences['pageOne.stopIf'])
		expect(page).not.toMatch(/555|undefined/)
	})
	it('has a day that was set by hand, wherever it stands', () => {
		const decisions = { ...input.decisions, reviewDate: '2027-05-05' }
		const page = pageOf({ ...input, decisions })
		expect(page).toContain('by 5 May 2027')
		expect(page.match(/3 February 2027/g)).toHaveLength(3)
	})
	it('has no head and no card where nothing must change', () => {
		const page = pageOne(atRest())
		expect(headOf(page)).toBe(sentences['pageOne.nothing'])
		expect(pageOf(atRest())).not.toContain(sentences['pageOne.shop'])
	})
	it('says nothing of rest while something hurts', () => {
		const { visit } = atRest()
		const sore: Visit = {
			...visit,
			conditions: [{ condition: 'shin-pain', side: 'left', status: 'current' }],
		}
		expect(pageOf({ ...atRest(), visit: sore })).not.toContain(sentences['pageOne.nothing'])
	})
	it('is nobody’s birth date: it is carried to the shop', () => {
		expect(textsIn(pageOne(input))).not.toContain('2 May 2013')
		expect(textOf(parted(input).following)).toContain('2 May 2013')
	})
})
describe('page one of what must not wait', () => {
	const input = inputOf(pictured('04-navicular-suspected'))
	it('stops sport, says where to go, what to wear and bring, and why', () => {
		const page = pageOne(input)
		expect(headOf(page)).toBe('STOP FOOTBALL TODAY.')
		const facts = factsOf(page)
		expect(facts.get(sentences['pageOne.now'])).toMatch(/scan/)
		expect(facts.get(sentences['pageOne.withYou'])).toBe(sentences['pageOne.doNotDrive'])
		expect(facts.get(sentences['pageOne.wear'])).toMatch(/loose shoe on the left foot/)
		expect(facts.get(sentences['pageOne.bring'])).toBe(sentences['pageOne.bringPage'])
		expect(facts.get(sentences['common.why'])).toMatch(/A bone may be starting to crack/)
		expect(facts.get(sentences['pageOne.next'])).toMatch(/27 January 2027/)
		expect(facts.has(sentences['pageOne.done'])).toBe(false)
	})
	it('has nothing of boots, sizes or inserts but that they wait', () => {
		const page = pageOf(input)
		expect(page).toContain(sentences['pageOne.waits'])
		for (const key of ['pageOne.shop', 'pageOne.pairs', 'player.seek'] as const)
			expect(page, key).not.toContain(sentences[key])
	})
	it('tells what was done where it was written down', () => {
		const decisions = { ...input.decisions, referralDone: 'Rang the hospital, seen at 16:00.' }
		const facts = factsOf(pageOne({ ...input, decisions }))
		expect(facts.get(sentences['pageOne.done'])).toBe('Rang the hospital, seen at 16:00.')
	})
	it('sends a child with its guardian, and speaks of medicines to an adult alone', () => {
		const danger = { screening: { breathlessOrChestPain: true, anticoagulant: true } }
		const child = factsOf(pageOne(inputOf({ ...minor, ...danger })))
		expect(child.get(sentences['pageOne.withYou'])).toBe('Rae Ashdown goes with you.')
		expect(child.get(sentences['pageOne.bring'])).not.toMatch(/medicine/)
		const grown = factsOf(pageOne(inputOf({ ...adult, ...danger })))
		expect(grown.get(sentences['pageOne.bring'])).toMatch(/Your medicines\./)
	})
	it('names what is not to be worn, and the code that is stopped', () => {
		const page = pageOne(inputOf(pictured('14-hip-of-a-boy')))
		expect(headOf(page)).toBe('STOP RUGBY TODAY.')
		expect(factsOf(page).get(sentences['pageOne.wear'])).toMatch(
			/Do not wear until mended: match boots/,
		)
		expect(factsOf(page).get(sentences['pageOne.withYou'])).toBe(sentences['pageOne.carerGoes'])
	})
	it('speaks to a guardian of the player', () => {
		const danger = { ...minor, screening: { breathlessOrChestPain: true } }
		const page = kinds.guardian.compose({ ...inputOf(danger), on: danger.visitDate })
		expect(headOf(page)).toBe('TUI MUST STOP FOOTBALL TODAY.')
		expect(factsOf(page).get(sentences['pageOne.withYou'])).toBe('You go with Tui.')
		expect(textOf(page.blocks)).not.toMatch(/Do not drive/)
	})
})
describe('page one where somebody is to be seen and sport goes on', () => {
	it.each([
		['10-diabetic-foot', 'pageOne.seeFootClinic'],
		['03-cavus-after-fifth', 'pageOne.seeFirst'],
		['19-first-and-back', 'pageOne.noMatchNoRunning'],
		['22-stiff-midfoot', 'pageOne.seeDoctor'],
	] as const)('is headed by whom to see, or by what waits: %s', (name, key) => {
		const page = pageOne(inputOf(pictured(name)))
		expect(headOf(page)).toBe(sentences[key])
		expect(factsOf(page).get(sentences['common.why'])).toMatch(/./)
		expect(textOf(page.blocks)).not.toContain(sentences['pageOne.waits'])
	})
	it('goes on with the shop where nothing holds it, and with the skin where a foot is at risk', () => {
		expect(pageOf(inputOf(pictured('22-stiff-midfoot')))).toContain(sentences['pageOne.shop'])
		const foot = pageOf(inputOf(pictured('10-diabetic-foot')))
		expect(foot).toContain(sentences['player.untilReview'])
		expect(foot).not.toContain(sentences['pageOne.shop'])
	})
	it('sends for a scan by name', () => {
		const input = inputOf(adult)
		const { prescription } = input.assessment
		const gate = {
			...prescription!.gate,
			person: { ...prescription!.gate.person, action: 'imaging' as const },
		}
		const assessment = { ...input.assessment, prescription: { ...prescription!, gate } }
		expect(headOf(pageOne({ ...input, assessment }))).toBe(sentences['pageOne.seeScan'])
	})
})
describe('the pages that follow', () => {
	it.each(['visit-adolescent.json', 'visit-adult.json'])('say none of it again: %s', (name) => {
		const { first, following } = parted(inputOf(read(json(name))))
		const said = textsIn(first, new Set(['kind', 'tone', 'widths'])).filter(
			// lists of features may begin alike for another pair
			(text) => text.length > 30 && !text.includes(';'),
		)
		const rest = textOf(following)
		expect(said.length).toBeGreaterThan(4)
		for (const text of said) expect(rest).not.toContain(text)
	})
	it('begin with page one, as it stands beside Decide', () => {
		for (const visit of [minor, adult, pictured('04-navicular-suspected')]) {
			const input = inputOf(visit)
			expect(parted(input).first).toEqual(pageOne(input).blocks)
		}
	})
	it('hold the features and pairs that the page had no room for', () => {
		const footwear = Array.from({ length: 6 }, (_, at) => ({
			...minor.footwear![0]!,
			id: `p${at}`,
			name: `pair number ${at}`,
		}))
		const { first, following } = parted(inputOf({ ...minor, footwear }))
		const names = footwear.map(({ name }) => name)
		const table = first.find((block) => block.kind === 'table')
		const onFirst = table?.kind === 'table' ? table.rows.map(([name]) => name) : []
		expect(onFirst).toHaveLength(4)
		const rest = textOf(following).toLowerCase()
		for (const name of names.filter((one) => !onFirst.includes(one))) expect(rest).toContain(name)
		expect(rest).toContain('if you can choose')
	})
})
it('an inside length is rounded to within its span', () => {
	expect(wholeInside({ min: 256.5, max: 260.5 })).toEqual({ min: '257', max: '260' })
	expect(wholeInside({ min: 256, max: 261 })).toEqual({ min: '256', max: '261' })
	expect(wholeInside({ min: 256.2, max: 256.8 })).toEqual({ min: '256.2', max: '256.8' })
})
describe('the sheet for the appointment', () => {
	it('has complaint, priorities, size, raise, insert, pairs and review on it', () => {
		const sheet = appointmentSheet(inputOf(minor))
		const facts = factsOf(sheet)
		expect(facts.get('Complaint')).toMatch(/^Calcaneal apophysitis \(growing heel\), left, current/)
		expect(facts.get('Size')).toMatch(/^256.5 to 260.5 mm inside; EU 39½/)
		expect(facts.get('Heel raise')).toMatch(/^5 mm in both shoes/)
		expect(facts.get('Review')).toBe('3 February 2027')
		expect(facts.has('Not settled')).toBe(false)
		const { blocks } = sheet
		const actions = blocks.flatMap((block) => (block.kind === 'actions' ? block.items : []))
		expect(actions.map(({ what }) => what)).toEqual([
			'Fit the heel raise in both shoes.',
			'Replace: match boots.',
			'Book the review.',
		])
		expect(textOf(blocks)).toMatch(/replace by 3 February 2027/)
		expect([...facts.keys()]).toContain('Pair for matches, pair for training')
	})
	it('begins with what is held, by the names of its signs, and proposes nothing of it', () => {
		const sheet = appointmentSheet(inputOf(pictured('04-navicular-suspected')))
		const [first] = sheet.blocks
		expect(first).toMatchObject({ kind: 'alert', title: 'Held; imaging before impact sport' })
		expect(textOf([first!])).toMatch(/Bone stress at a high-risk site, left/)
		expect(textOf([first!])).toMatch(/until the treating doctor allows it/)
		expect(factsOf(sheet).get('Heel raise')).toBe('held')
		expect(factsOf(sheet).get('Size')).toMatch(/not for buying now/)
	})
	it('names a private reason only as one that stands in the record', () => {
		const visit: Visit = { ...adult, screening: { ...adult.screening, pregnant: true } }
		const said = textOf(appointmentSheet(inputOf(visit)).blocks)
		expect(said).not.toMatch(/pregnan/i)
	})
	it('of an open visit says what is not settled and was not asked', () => {
		const open = { draft: true, signedAt: undefined, decisions: noDecisions }
		const facts = factsOf(appointmentSheet(inputOf(pictured('01-growing-heel'), open)))
		expect(facts.get('Not settled')).toMatch(/heel raise/)
		expect(facts.get('Not asked')).toMatch(/limp/)
	})
})
