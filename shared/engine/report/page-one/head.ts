/** The one most urgent thing: what stops, whom to see, or the pair that must not stay as it is. */
import type { Gate, Holdable, Kept, OwnedPair } from '../../findings/assessment.ts'
import { pairsLeftOff } from '../../prescription/owned.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import { listed } from '../../words/en/format.ts'
import { paperName } from '../../words/names.ts'
import type { Speak } from '../../words/speak.ts'
import { dateWords } from '../../words/words.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { pairName } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { isKeptFrom, type Reader } from '../reader.ts'
import { awaitsFootReview, buyingWaits, type Danger } from '../waits.ts'
import { concernOf, reasonsFor } from './danger.ts'
import type { Part } from './part.ts'
import { whoFor } from './who.ts'

/** What the player does, in capitals: sport where the code is no kind of football. */
const sportOf = {
	association: 'football',
	futsal: 'football',
	australian: 'football',
	gaelic: 'football',
	american: 'football',
	'rugby-union': 'rugby',
	'rugby-league': 'rugby',
	touch: 'other',
} as const
const sportWords = ({ visit: { play } }: ReportInput, t: Speak): string =>
	t(`pageOne.sport.${play?.code ? sportOf[play.code] : 'football'}`)
/** In the two ways in which it is said: to the player, and of the player to a guardian. */
type Saying = readonly [
	player: (t: Speak, sport: string) => string,
	guardian: (t: Speak, name: string, sport: string) => string,
]
const stopToday: Saying = [
	(t, sport) => t('pageOne.stop', { sport }),
	(t, name, sport) => t('pageOne.guardianStop', { name, sport }),
]
const stopForNow: Saying = [
	(t, sport) => t('pageOne.noSport', { sport }),
	(t, name, sport) => t('pageOne.guardianNoSport', { name, sport }),
]
/** Whom to see by when, where an action asks for it. */
const seeFor: Readonly<Partial<Record<Danger['action'], Saying>>> = {
	emergency: [(t) => t('pageOne.seeNow'), (t, name) => t('pageOne.guardianSeeNow', { name })],
	'same-day': [(t) => t('pageOne.seeToday'), (t, name) => t('pageOne.guardianSeeToday', { name })],
	imaging: [(t) => t('pageOne.seeScan'), (t, name) => t('pageOne.guardianSeeScan', { name })],
}
const letterToDoctor: Saying = [
	(t) => t('pageOne.seeDoctor'),
	(t, name) => t('pageOne.guardianSeeDoctor', { name }),
]
const footClinic: Saying = [
	(t) => t('pageOne.seeFootClinic'),
	(t, name) => t('pageOne.guardianSeeFootClinic', { name }),
]
const surgeon: Saying = [
	(t) => t('pageOne.seeSurgeon'),
	(t, name) => t('pageOne.guardianSeeSurgeon', { name }),
]
const doctorFirst: Saying = [
	(t) => t('pageOne.seeFirst'),
	(t, name) => t('pageOne.guardianSeeFirst', { name }),
]
const noMatch: Saying = [
	(t) => t('pageOne.noMatch'),
	(t, name) => t('pageOne.guardianNoMatch', { name }),
]
const noRunning: Saying = [
	(t) => t('pageOne.noRunning'),
	(t, name) => t('pageOne.guardianNoRunning', { name }),
]
const noMatchNoRunning: Saying = [
	(t) => t('pageOne.noMatchNoRunning'),
	(t, name) => t('pageOne.guardianNoMatchNoRunning', { name }),
]
const noWeight: Saying = [
	(t) => t('pageOne.noWeight'),
	(t, name) => t('pageOne.guardianNoWeight', { name }),
]
/** What is stopped, where nobody is named who says when it may begin again. */
function stopped({ stops }: Danger): Saying {
	if (stops.length === 0) return noWeight
	if (stops.length > 1) return noMatchNoRunning
	return stops.includes('match') ? noMatch : noRunning
}
const holdsOf = ({ person, left, right }: Gate, whats: readonly Holdable[]) =>
	[person, left, right].flatMap(({ holds }) => holds.filter(({ what }) => whats.includes(what)))
/** Who says when what is held may begin again, the hardest to come by first. */
function clearedBy(concern: Danger, gate: Gate): Saying {
	const ends = holdsOf(gate, ['match', 'impact', 'weight']).map(({ until }) => until)
	if (ends.includes('surgeon')) return surgeon
	return ends.includes('treating-doctor') ? doctorFirst : stopped(concern)
}
function sayingOf(concern: Danger, gate: Gate): Saying {
	const { stops, action, isUrgent, noWeight: spared } = concern
	if (stops.includes('sport')) return isUrgent ? stopToday : stopForNow
	if (isUrgent) return seeFor[action] ?? clearedBy(concern, gate)
	if (stops.length + spared.length > 0) return clearedBy(concern, gate)
	return awaitsFootReview(gate) ? footClinic : letterToDoctor
}
/** A sign without a side holds both limbs: then the one that hurts is meant. */
const noWeightIn = (sides: Danger['noWeight'], who: ReturnType<typeof whoFor>): string[] =>
	sides.length === 2 ? [who.noWeightBoth] : sides.map((side) => who.noWeight(side))
function ofConcern(concern: Danger, input: ReportInput, reader: Reader, t: Speak): Block {
	const { gate } = planOf(input)
	const [toPlayer, toGuardian] = sayingOf(concern, gate)
	const sport = sportWords(input, t)
	const name = paperName(input.visit.player).givenName.toUpperCase()
	const who = whoFor(reader, input, t)
	const { isWhole } = reasonsFor(reader, input, concern)
	return {
		kind: 'alert',
		large: true,
		title: reader.audience === 'guardian' ? toGuardian(t, name, sport) : toPlayer(t, sport),
		text: [
			...concern.stops.map((stop) => who.stop[stop]),
			...noWeightIn(concern.noWeight, who),
			// what is private gives nothing away, and still is urgent
			...(isWhole || concern.action === 'proceed' ? [] : [t('player.signFound')]),
		].join(' '),
	}
}
type Owned = Kept<OwnedPair>
/** The pairs that must not stay as they are, the worst first. */
export interface WrongPairs {
	way: 'off' | 'mend' | 'replace'
	pairs: readonly Owned[]
}
/** Undefined where every pair may stay, or what is to be replaced waits with all that is bought. */
export const wrongPairs = (input: ReportInput): WrongPairs | undefined =>
	wrongPairsOf(planOf(input))
/** The same of a plan. */
export function wrongPairsOf({
	owned,
	gate,
}: Pick<SettledPlan, 'owned' | 'gate'>): WrongPairs | undefined {
	const leftOff = pairsLeftOff(owned)
	const off = owned.filter(({ verdict }) => verdict === 'stop-wearing')
	if (off.length > 0) return { way: 'off', pairs: off }
	const mend = owned.filter(({ id }) => leftOff.includes(id))
	if (mend.length > 0) return { way: 'mend', pairs: mend }
	const replace = owned.filter(({ verdict }) => verdict === 'replace')
	if (replace.length === 0) return undefined
	return buyingWaits(gate) ? { way: 'off', pairs: replace } : { way: 'replace', pairs: replace }
}
/** What is to be done with pairs; by the day of the first of them where it is still to come. */
export function pairsSaid(
	{ way, pairs }: WrongPairs,
	reader: Reader,
	input: ReportInput,
	t: Speak,
): string {
	const { visit } = input
	const named = {
		pairs: listed(pairs.map(({ id }) => pairName(id, visit, t))),
		name: paperName(visit.player).givenName,
	}
	const [by] = pairs.flatMap((pair) => pair.by ?? []).toSorted()
	const date = by === undefined || by <= visit.visitDate ? undefined : dateWords(by)
	const isGuardian = reader.audience === 'guardian'
	if (way === 'off') return t(isGuardian ? 'guardian.off' : 'pageOne.off', named)
	if (way === 'mend') return t(isGuardian ? 'guardian.mend' : 'pageOne.mend', named)
	return date === undefined
		? t(isGuardian ? 'guardian.replaceNow' : 'pageOne.replaceNow', named)
		: t(isGuardian ? 'guardian.replaceBy' : 'pageOne.replaceBy', { ...named, date })
}
/** None where nothing must change. */
export const head: Part = (input, reader, t) => {
	const concern = concernOf(input)
	if (concern) return [ofConcern(concern, input, reader, t)]
	const wrong = pairsToHead(reader, input)
	return wrong ? [{ kind: 'text', tone: 'headline', text: pairsSaid(wrong, reader, input, t) }] : []
}
/** The pairs that the head names where no danger is, and its reader may read of footwear. */
const pairsToHead = (reader: Reader, input: ReportInput): WrongPairs | undefined =>
	concernOf(input) || isKeptFrom(reader, input, 'footwear') ? undefined : wrongPairs(input)
/** Whether the head names the pairs that must not stay as they are. */
export const headsWithPairs = (input: ReportInput, reader: Reader): boolean =>
	pairsToHead(reader, input) !== undefined
