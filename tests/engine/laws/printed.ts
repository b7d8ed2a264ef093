/** Laws of what is given out: nothing held stands in it, and each pair has one raise on every page. */
import { isHeld } from '../../../shared/engine/facts/held.ts'
import type { Gate, RaiseInFoot } from '../../../shared/engine/findings/assessment.ts'
import { settledPlan } from '../../../shared/engine/prescription/settled.ts'
import { type Block, blocksIn, type LwDocument } from '../../../shared/engine/report/document.ts'
import {
	type KindInput,
	type KindName,
	kindNames,
	kinds,
} from '../../../shared/engine/report/kinds.ts'
import { pairName } from '../../../shared/engine/report/pair-names.ts'
import { textsIn } from '../../../shared/engine/report/texts.ts'
import { heldSeason } from '../../../shared/engine/season/problem/prescribed.ts'
import { bothSides } from '../../../shared/engine/visit/sides.ts'
import { sentences } from '../../../shared/engine/words/en/documents.table.ts'
import { speakFrom } from '../../../shared/engine/words/speak.ts'
import { clinic } from '../../demo.ts'
import { type Case, type Law, settledAlone, shelf, unless } from './case.ts'

export type Documents = ReadonlyMap<KindName, LwDocument>
const day = '2027-03-01'
/** Everything that can be composed of a visit, on the day after it was signed. */
export const composedOf = (input: KindInput): Documents =>
	new Map(
		kindNames.flatMap((kind) =>
			kinds[kind].problems(input).length === 0 ? [[kind, kinds[kind].compose(input)]] : [],
		),
	)
const consent = {
	id: 'C-7',
	decision: 'permit',
	given: '2026-01-20',
	purpose: 'coach',
} as const
const inputOf = (one: Case): KindInput => ({
	visit: one.visit,
	assessment: one.assessment,
	decisions: { ...settledAlone(one), referralDone: 'Sent the same day.' },
	clinic,
	signedAt: `${day}T09:00:00.000Z`,
	draft: false,
	on: day,
	plan: {
		sessions: [{ date: '2027-03-02', kind: 'match', surface: 'hall', pair: 'p1' }],
		pairs: [{ id: 'p1', replaceBy: '2027-03-20' }],
	},
	consents: [consent],
})

const headingsIn = (blocks: readonly Block[]): string[] =>
	blocksIn(blocks).flatMap((block) => (block.kind === 'heading' ? [block.text] : []))
type Key = keyof typeof sentences
/** A sentence with something filled in, by what stands before it. */
export const startOf = (key: Key): string => sentences[key].split('{')[0] ?? ''

interface Silence {
	isHeld: (gate: Gate) => boolean
	headings: Key[]
	says: Key[]
}
const sport = (gate: Gate): boolean => isHeld(gate, 'sport')
/** Whether nothing may be bought. */
export const buyingIsHeld = (gate: Gate): boolean =>
	sport(gate) || isHeld(gate, 'purchase') || isHeld(gate, 'shelf')
/** What no page for player, guardian, coach or club holds while it waits. */
const silences: readonly Silence[] = [
	{
		isHeld: buyingIsHeld,
		headings: ['player.size', 'player.nextPair', 'player.toTry', 'guardian.buy'],
		says: [
			'pageOne.shop',
			'player.lookFor',
			'player.asOnCard',
			'player.ifYouCanChoose',
			'guardian.wearBoots',
			'player.replaceBy',
		],
	},
	{
		isHeld: (gate) => sport(gate) || isHeld(gate, 'raise'),
		headings: ['player.raise'],
		says: ['guardian.raise'],
	},
	{
		isHeld: (gate) => sport(gate) || bothSides.every((side) => isHeld(gate, 'insert', side)),
		headings: ['player.insert', 'player.insertWearIn'],
		says: [],
	},
	{
		isHeld: (gate) => sport(gate) || isHeld(gate, 'exercise'),
		headings: [],
		says: ['player.anklesDiffer'],
	},
]
function unsilent(documents: Documents, gate: Gate): string[] {
	return silences
		.filter((one) => one.isHeld(gate))
		.flatMap(({ headings, says }) =>
			(['player', 'guardian', 'coach'] as const).flatMap((kind) => {
				const blocks = documents.get(kind)?.blocks ?? []
				const found = headingsIn(blocks)
				const text = textsIn(blocks).join('\n')
				return [
					...headings.filter((key) => found.includes(sentences[key])),
					// what a trade word means begins as a sentence of the guardian's page does
					...says
						.filter((key) => kind === 'guardian' || key.startsWith('player.'))
						.filter((key) => text.includes(startOf(key))),
				].map((key) => `${kind}: ${key}`)
			}),
		)
}
/** Models that may not be bought, by name. */
const modelsTold = (documents: Documents, gate: Gate, names: readonly string[]): string[] =>
	buyingIsHeld(gate)
		? [...documents].flatMap(([kind, { blocks }]) => {
				const text = textsIn(blocks).join('\n')
				return names.filter((name) => text.includes(name)).map((name) => `${kind}: ${name}`)
			})
		: []
/** Whether a page begins with sport that stops, in the words to either reader. */
export const isStop = (block: Block | undefined): boolean =>
	block?.kind === 'alert' &&
	block.large === true &&
	/^STOP |^NO (FOOTBALL|RUGBY|SPORT) | MUST STOP /.test(block.title)
function unstopped(documents: Documents, gate: Gate): string[] {
	if (!sport(gate)) return []
	const coach = textsIn(documents.get('coach')?.blocks).join('\n')
	return [
		...(['player', 'guardian'] as const).flatMap((kind) => {
			const document = documents.get(kind)
			const first = document?.blocks[0]
			return unless(document === undefined || isStop(first), `${kind}: no stop at its head`)
		}),
		...unless(coach.includes(sentences['coach.noSport']), 'coach: no stop'),
		...unless(!coach.includes(sentences['coach.wear']), 'coach: what to wear'),
	]
}
const composedAllTheSame = (documents: Documents, gate: Gate): string[] => [
	...unless(
		!(documents.has('season-chart') && (sport(gate) || isHeld(gate, 'season'))),
		'a season chart',
	),
	...unless(
		!(
			documents.has('insert-order') &&
			(sport(gate) || bothSides.every((side) => isHeld(gate, 'insert', side)))
		),
		'an insert order',
	),
]
/** What stands in documents although it is held. @param models names of models of the shelf */
export const heldInDocuments = (
	documents: Documents,
	gate: Gate,
	models: readonly string[] = [],
): string[] => [
	...unsilent(documents, gate),
	...modelsTold(documents, gate, models),
	...unstopped(documents, gate),
	...composedAllTheSame(documents, gate),
	...[...documents].flatMap(([kind, { blocks }]) =>
		unless(!/undefined|NaN|\[object/.test(textsIn(blocks).join('\n')), `${kind}: a gap`),
	),
]
/** Held in the plan itself: what every other output is made of. */
function heldInPlan({ assessment: { prescription: plan, footwear, insert } }: Case): string[] {
	const { gate, raise, pairs } = plan
	const given = raise.pairs.filter(({ left, right }) => left.addMm + right.addMm > 0)
	const found: Readonly<Record<string, readonly unknown[]>> = {
		raise: isHeld(gate, 'raise') ? [...given, ...raise.steps] : [],
		purchase: isHeld(gate, 'purchase') ? pairs.filter(({ means }) => means === 'buy') : [],
		shelf:
			isHeld(gate, 'purchase') || isHeld(gate, 'shelf')
				? [...pairs.flatMap(({ shelf: models }) => models), ...footwear.ranked]
				: [],
		insert: bothSides
			.filter((side) => isHeld(gate, 'insert', side))
			.flatMap((side) => [...insert[side].elements, ...plan.insert[side].elements]),
	}
	return Object.entries(found)
		.filter(([, what]) => what.length > 0)
		.map(([what]) => `the plan: ${what}`)
}
const nothingHeld: Law = (one) => {
	const { gate } = one.assessment.prescription
	const input = inputOf(one)
	const season = heldSeason(settledPlan(one.assessment, input.decisions))
	return [
		...heldInPlan(one),
		...heldInDocuments(
			composedOf(input),
			gate,
			shelf.models.map(({ name }) => name),
		),
		...unless(
			!(sport(gate) || isHeld(gate, 'season')) || season !== undefined,
			'the season is planned',
		),
	]
}

/** What is made on the sole is said so; what goes inside is a figure alone. */
function footWords({ addMm, madeBy, outsoleMm = 0 }: RaiseInFoot): string {
	if (madeBy !== 'outsole') return `${addMm} mm`
	const inside = addMm > outsoleMm ? `${addMm - outsoleMm} mm inside and ` : ''
	return `${inside}${outsoleMm} mm on the outsole`
}
const raiseLine =
	/^(?:\D*: )?(?<raise>.+ mm(?: in both shoes| on the outsole)?) \((?<pairs>[^()]*(?:\([^()]*\)[^()]*)*)\)/
/** Figures of a pair as a page prints them, read back from its lines: pair name to words. */
function raisesPrinted({ blocks }: LwDocument): [pair: string, raise: string][] {
	return textsIn(blocks).flatMap((text) => {
		const { raise, pairs } = raiseLine.exec(text)?.groups ?? {}
		if (raise === undefined || pairs === undefined) return []
		// a line may begin with the side
		const figure = raise.replace(/^Left /, 'left ')
		return pairs.split(', ').map((pair): [string, string] => [pair, figure])
	})
}
const oneRaise: Law = (one) => {
	const t = speakFrom()
	const { raise } = one.assessment.prescription
	const wanted = new Map<string, Set<string>>()
	for (const { pair, left, right } of raise.pairs) {
		const name = pairName(pair, one.visit, t)
		const words =
			left.addMm === right.addMm && left.madeBy === right.madeBy
				? `${left.addMm} mm in both shoes`
				: `left ${footWords(left)}, right ${footWords(right)}`
		wanted.set(name, (wanted.get(name) ?? new Set()).add(words))
	}
	return [...composedOf(inputOf(one))].flatMap(([kind, document]) =>
		raisesPrinted(document).flatMap(([pair, words]) => {
			const figures = wanted.get(pair)
			return unless(
				figures === undefined || [...figures].some((figure) => words.endsWith(figure)),
				`${kind}, ${pair}: ${words} for ${[...(figures ?? [])].join(' or ')}`,
			)
		}),
	)
}
/** How often a figure of a pair is read on the pages of a case: the law looks at something. */
export const raisesRead = (one: Case): number =>
	[...composedOf(inputOf(one)).values()].flatMap(raisesPrinted).length
export const printed: Readonly<Record<string, Law>> = {
	'nothing held appears in any output of any kind': nothingHeld,
	'one foot in one pair has one raise wherever it is printed': oneRaise,
}
