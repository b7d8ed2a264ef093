/**
 * A player's season: sessions, plans and calendars, each a record that follows the last. Pairs and
 * findings are those of the open draft, else of the latest signed visit.
 */

import {
	draftContentSchema,
	type InputOf,
	type OutputOf,
	signedVisitSchema,
} from '../../../shared/contract.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { assess } from '../../../shared/engine/assess.ts'
import { stillBlocked } from '../../../shared/engine/insert/decided.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { openProtocol, type ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import { insertDecided } from '../../../shared/engine/report/decided.ts'
import { pocketTable } from '../../../shared/engine/report/pocket.ts'
import { seasonChart } from '../../../shared/engine/report/season-chart.ts'
import { lettersOf } from '../../../shared/engine/season/build.ts'
import { type Change, planDifference } from '../../../shared/engine/season/difference.ts'
import { stopOf } from '../../../shared/engine/season/limits.ts'
import { keepPast } from '../../../shared/engine/season/past.ts'
import { type Plan, planSchema } from '../../../shared/engine/season/plan-file.ts'
import { type ImportChoices, previewImport } from '../../../shared/engine/season/preview.ts'
import { ageYears, dayInWords } from '../../../shared/engine/visit/age.ts'
import type { Decisions } from '../../../shared/engine/visit/decisions.ts'
import { codes, surfaces } from '../../../shared/engine/visit/terms.ts'
import { type Season, seasonSchema, type Visit } from '../../../shared/engine/visit/visit.ts'
import { writeCalendar } from '../../calendar/calendar.ts'
import { readList } from '../../calendar/calendar-read.ts'
import { planSeason } from '../../solver/plan.ts'
import { type Progress, SolveCancelled } from '../../solver/solve.ts'
import { type Deps, type DraftValue, Refusal, type State } from '../records/state.ts'
import { draw, pdfOf } from '../visits/drawing.ts'
import { earlierVisits, visitsOf } from '../visits/visits.ts'

type What = 'season' | 'plan' | 'calendar'
interface SeasonValue {
	what: 'season'
	playerId: string
	season: Season
}
interface PlanValue {
	what: 'plan'
	playerId: string
	season: string
	basis: string
	plan: Plan
	changes: Change[]
}
interface CalendarValue {
	what: 'calendar'
	playerId: string
	text: string
}
interface Basis {
	from: 'draft' | 'visit'
	visit: Visit
	decisions: Decisions
	earlier: Visit[]
}
interface Run {
	stop: AbortController
	progress: Progress
}
/** Plans being solved, by player; gone with the state they belong to. */
const running = new WeakMap<State, Map<string, Run>>()
const runsOf = (state: State): Map<string, Run> => {
	const runs = running.get(state) ?? new Map<string, Run>()
	running.set(state, runs)
	return runs
}

const zoneHere = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone

/**
 * The records of one sort in order of writing; where players were merged, those of the record that
 * stands come first.
 */
function recordsOf(state: State, { store }: Deps, playerId: string, what: What): string[] {
	for (const id of state.idsOf(playerId)) {
		const found = store
			.cardsAbout('season', id)
			.filter((card) => (card.card as { what: What }).what === what)
			.map((card) => card.record)
		if (found.length > 0) return found
	}
	return []
}
function append(
	{ store, now }: Deps,
	value: SeasonValue | PlanValue | CalendarValue,
	follows: string | undefined,
): string {
	return store.append({
		kind: 'season',
		at: now().toISOString(),
		...(follows === undefined ? {} : { follows }),
		value,
		about: value.playerId,
		card: { what: value.what },
		...(value.what === 'calendar' ? { does: 'export' as const } : {}),
	})
}
function lastSeason(
	state: State,
	deps: Deps,
	playerId: string,
): { season: Season; record: string } | undefined {
	const record = recordsOf(state, deps, playerId, 'season').at(-1)
	return record === undefined
		? undefined
		: { record, season: seasonSchema.parse((deps.store.read(record).value as SeasonValue).season) }
}
function lastPlan(
	state: State,
	deps: Deps,
	playerId: string,
): { value: PlanValue; record: string; at: string; version: number } | undefined {
	const records = recordsOf(state, deps, playerId, 'plan')
	const record = records.at(-1)
	if (record === undefined) return undefined
	const { value, at } = deps.store.read(record)
	return {
		value: { ...(value as PlanValue), plan: planSchema.parse((value as PlanValue).plan) },
		record,
		at,
		version: records.length,
	}
}
/** @throws Refusal where the player is not in the records or was merged away */
function basisOf(state: State, deps: Deps, playerId: string): Basis | undefined {
	const { player } = state.entry(playerId)
	if (state.mergedAway(playerId))
		throw new Refusal('This record was merged into another player. Open that player.')
	const open = state.draftsOf(playerId)[0]
	const draft = open && deps.store.draft(open[0])
	if (open && draft) {
		const { visit, decisions } = draftContentSchema.parse((draft.value as DraftValue).content)
		return {
			from: 'draft',
			visit: { ...visit, player },
			decisions,
			earlier: earlierVisits(state, deps, playerId, open[1].amends?.visitId),
		}
	}
	const latest = visitsOf(state, deps, playerId).find((line) => !line.inError)
	if (!latest) return undefined
	const { visit, decisions } = signedVisitSchema.parse(deps.store.read(latest.record).value)
	return {
		from: 'visit',
		visit: { ...visit, player },
		decisions,
		earlier: earlierVisits(state, deps, playerId, latest.card.visitId),
	}
}
/** What of a visit a plan rests on: when it changes, the plan is out of date. */
const basisDigest = ({ visit, decisions }: Basis): string =>
	digestOf(
		JSON.parse(
			JSON.stringify({
				footwear: visit.footwear ?? [],
				feet: visit.feet ?? {},
				conditions: visit.conditions ?? [],
				body: visit.body ?? {},
				insert: insertDecided(decisions),
			}),
		),
	)
/** Why no rotation may be given out, or undefined where one may. */
function stopped(
	{ visit, decisions, earlier, from }: Basis,
	protocol: ProtocolFile,
): string | undefined {
	const assessment = assess(visit, earlier, protocol)
	const sides = stillBlocked(assessment, decisions)
	if (sides.length > 0) {
		const ids = new Set(sides.flatMap((side) => assessment.screening.blockedBy[side]))
		const says = assessment.screening.items
			.filter((item) => ids.has(item.id))
			.map((item) => item.says.replace(/\.$/, ''))
		return (
			`The rotation is stopped for the ${sides.join(' and ')} foot by a warning sign: ` +
			`${[...new Set(says)].join('; ')}. Record in Decide what was done about ` +
			`it${from === 'draft' ? '' : ' (open a new assessment)'}, then plan.`
		)
	}
	return stopOf(visit)?.says
}
function needBasis(state: State, deps: Deps, playerId: string): Basis {
	const basis = basisOf(state, deps, playerId)
	if (!basis)
		throw new Refusal(
			'This player has no assessment yet. Start one and enter the pairs they wear, then plan ' +
				'the season.',
		)
	return basis
}
function pairsOf({ visit }: Basis, before: Plan | undefined): OutputOf<'season.open'>['pairs'] {
	const all = [...(visit.footwear ?? [])].sort((a, b) => (a.id < b.id ? -1 : 1))
	const letters = lettersOf(all, before?.pairs)
	return [
		...all.filter((one) => one.sole !== undefined),
		...all.filter((one) => one.sole === undefined),
	].map((one) => ({
		id: one.id,
		letter: letters.get(one.id) ?? '?',
		name: one.name ?? `pair ${letters.get(one.id)}`,
		...(one.sole === undefined ? {} : { sole: one.sole }),
	}))
}
/**
 * Sessions before this day are the past unless the person says otherwise: today, or the visit where
 * it lies ahead.
 */
const firstDay = (deps: Deps, basis: Basis | undefined): string => {
	const today = dayHere(deps.now())
	return basis && basis.visit.visitDate > today ? basis.visit.visitDate : today
}

export function openSeason(
	state: State,
	deps: Deps,
	{ playerId }: InputOf<'season.open'>,
): OutputOf<'season.open'> {
	const { player } = state.entry(playerId)
	const basis = basisOf(state, deps, playerId)
	const saved = lastSeason(state, deps, playerId)
	const planned = lastPlan(state, deps, playerId)
	const season = saved?.season ?? basis?.visit.season
	const blocked = basis && stopped(basis, state.protocol)
	return {
		name: `${player.givenName} ${player.familyName}`,
		from: firstDay(deps, basis),
		pairs: basis ? pairsOf(basis, planned?.value.plan) : [],
		running: runsOf(state).has(playerId),
		young:
			ageYears(player.birthDate, basis?.visit.visitDate ?? dayHere(deps.now())) <
			openProtocol(state.protocol).value('footwear.adultFromYears'),
		...(season ? { season } : {}),
		...(saved ? { savedAs: saved.record } : {}),
		...(basis ? { basis: { from: basis.from, visitDate: basis.visit.visitDate } } : {}),
		...(blocked === undefined ? {} : { blocked }),
		...(planned
			? {
					planned: {
						plan: planned.value.plan,
						changes: planned.value.changes,
						at: planned.at,
						version: planned.version,
						season: planned.value.season,
						basisChanged: !basis || planned.value.basis !== basisDigest(basis),
					},
				}
			: {}),
	}
}
/**
 * @throws Refusal where the season was saved elsewhere since it was opened, or ends before it
 * begins
 */
export function saveSeason(
	state: State,
	deps: Deps,
	{ playerId, season, follows }: InputOf<'season.save'>,
): OutputOf<'season.save'> {
	state.entry(playerId)
	const last = recordsOf(state, deps, playerId, 'season').at(-1)
	if (follows !== last)
		throw new Refusal(
			'The season was changed elsewhere since you opened it. Nothing was overwritten: open it ' +
				'again and repeat the change.',
		)
	if (season.to < season.from)
		throw new Refusal('The season ends before it begins. Nothing was changed.', [
			{
				path: 'season.to',
				message:
					`before the first day, given ${dayInWords(season.to)}, allowed: ` +
					`${dayInWords(season.from)} or later`,
			},
		])
	for (const [index, one] of (season.exceptions ?? []).entries())
		if (one.to !== undefined && one.to < one.from)
			throw new Refusal('An exception ends before it begins. Nothing was changed.', [
				{
					path: `season.exceptions.${index}.to`,
					message:
						`before its first day, given ${dayInWords(one.to)}, allowed: ` +
						`${dayInWords(one.from)} or later`,
				},
			])
	const ids = (season.pattern ?? []).map((one) => one.id)
	const twice = ids.find((id, index) => ids.indexOf(id) !== index)
	if (twice !== undefined)
		throw new Refusal('Two rows of the weekly pattern have the same id. Nothing was changed.', [
			{
				path: 'season.pattern',
				message: `not unique, given "${twice}" twice, allowed: an id of its own for each row`,
			},
		])
	return {
		savedAs: append(deps, { what: 'season', playerId, season: seasonSchema.parse(season) }, last),
	}
}
/**
 * The answers of the person by the keys of the questions. @throws Refusal naming an answer that
 * cannot be
 */
function choicesOf(
	answers: Record<string, string>,
	season: Season,
	file: ProtocolFile,
): ImportChoices {
	const protocol = openProtocol(file)
	const choices: ImportChoices = {
		zone: zoneHere(),
		from: season.from,
		to: season.to,
		source: answers.source?.trim() || 'list',
		trainingMinutes: protocol.value('season.trainingMinutes'),
		matchMinutes: protocol.value('season.matchMinutes'),
	}
	const pick = <T extends string>(key: string, value: string, allowed: readonly T[]): T => {
		const found = allowed.find((one) => one === value)
		if (found === undefined)
			throw new Refusal('An answer cannot be used. Nothing was changed.', [
				{
					path: `answers.${key}`,
					message: `not one of the answers, given "${value}", allowed: ${allowed.join(', ')}`,
				},
			])
		return found
	}
	for (const [key, value] of Object.entries(answers)) {
		const dot = key.indexOf('.')
		const [head, rest] = dot < 0 ? [key, ''] : [key.slice(0, dot), key.slice(dot + 1)]
		if (value.trim() === '' || head === 'source') continue
		if (head === 'team') choices.team = value.trim().slice(0, 80)
		else if (head === 'code') choices.code = pick(key, value, codes)
		else if (head === 'surface') choices.surface = pick(key, value, surfaces)
		else if (head === 'ground') choices.ground = pick(key, value, ['dry', 'damp', 'wet'] as const)
		else if (head === 'dateOrder')
			choices.dateOrder = pick(key, value, ['day-month', 'month-day'] as const)
		else if (head === 'surfaces')
			choices.surfaces = { ...choices.surfaces, [rest]: pick(key, value, surfaces) }
		else if (head === 'kinds')
			choices.kinds = { ...choices.kinds, [rest]: pick(key, value, ['training', 'match'] as const) }
		else if (head === 'zones') choices.zones = { ...choices.zones, [rest]: value }
		else
			throw new Refusal('An answer cannot be used. Nothing was changed.', [
				{
					path: `answers.${key}`,
					message:
						`unknown, given "${value}", allowed: source, team, code, surface, ground, ` +
						'dateOrder, surfaces, kinds, zones',
				},
			])
	}
	return choices
}
/** Reads a fixture list against the saved season and changes nothing. */
export async function previewSeasonImport(
	state: State,
	deps: Deps,
	{ playerId, text, kind, answers }: InputOf<'season.previewImport'>,
): Promise<OutputOf<'season.previewImport'>> {
	const season = lastSeason(state, deps, playerId)?.season
	if (!season)
		throw new Refusal(
			'The season has no first and last day yet. Enter them first: sessions outside it are left ' +
				'out.',
		)
	const choices = choicesOf(answers, season, state.protocol)
	return previewImport(season.sessions ?? [], await readList(text, kind, choices), choices.source)
}
/**
 * Solves in a thread of its own; other calls go on meanwhile. The plan is kept as a record that
 * follows the last.
 */
export async function planPlayer(
	state: State,
	deps: Deps,
	{ playerId, from }: InputOf<'season.plan'>,
): Promise<OutputOf<'season.plan'>> {
	const basis = needBasis(state, deps, playerId)
	const blocked = stopped(basis, state.protocol)
	if (blocked !== undefined) throw new Refusal(blocked)
	if (!basis.visit.footwear?.some((pair) => pair.sole !== undefined))
		throw new Refusal(
			`No pair with its sole is recorded on ${dayInWords(basis.visit.visitDate)}. Enter the ` +
				'pairs in the assessment, each with its sole, then plan.',
		)
	const saved = lastSeason(state, deps, playerId)
	if (!saved)
		throw new Refusal(
			'The season is empty. Enter its first and last day and its sessions, then plan.',
		)
	const runs = runsOf(state)
	if (runs.has(playerId))
		throw new Refusal('This season is being planned already. Wait for it, or cancel it.')
	const person = state.acts()
	const before = lastPlan(state, deps, playerId)
	const start = from ?? firstDay(deps, basis)
	const run: Run = { stop: new AbortController(), progress: { pass: 1, seconds: 0 } }
	runs.set(playerId, run)
	try {
		const season = before ? keepPast(saved.season, before.value.plan, start) : saved.season
		const plan = await planSeason(
			{ ...basis.visit, season },
			{
				protocolFile: state.protocol,
				from: start,
				earlierVisits: basis.earlier,
				newInsert: insertDecided(basis.decisions),
				signal: run.stop.signal,
				onProgress: (progress) => {
					run.progress = progress
				},
				...(before ? { earlier: before.value.plan } : {}),
			},
		)
		if (state.person !== person)
			throw new Refusal(
				'The records were locked or another person took over while the season was planned. ' +
					'Nothing was kept: plan again.',
			)
		const changes = before ? planDifference(before.value.plan, plan) : []
		append(
			deps,
			{ what: 'plan', playerId, season: saved.record, basis: basisDigest(basis), plan, changes },
			before?.record,
		)
		return { plan, changes, first: before === undefined }
	} catch (error) {
		if (error instanceof SolveCancelled) throw new Refusal(error.message)
		if (
			error instanceof Error &&
			/^The (season could not be planned|plan breaks a rule)/.test(error.message)
		)
			throw new Refusal(error.message)
		throw error
	} finally {
		runs.delete(playerId)
	}
}
export function cancelPlan(
	state: State,
	{ playerId }: InputOf<'season.cancel'>,
): OutputOf<'season.cancel'> {
	const run = runsOf(state).get(playerId)
	run?.stop.abort()
	return { cancelled: run !== undefined }
}
export function planProgress(
	state: State,
	{ playerId }: InputOf<'season.progress'>,
): OutputOf<'season.progress'> {
	const run = runsOf(state).get(playerId)
	return run ? { running: true, ...run.progress } : { running: false }
}
/** The plan that may leave the room: none while it is stopped or out of date. */
function planToGive(state: State, deps: Deps, playerId: string) {
	const basis = needBasis(state, deps, playerId)
	const blocked = stopped(basis, state.protocol)
	if (blocked !== undefined) throw new Refusal(blocked)
	const planned = lastPlan(state, deps, playerId)
	if (!planned) throw new Refusal('The season is not planned yet. Plan it first.')
	if (
		planned.value.season !== lastSeason(state, deps, playerId)?.record ||
		planned.value.basis !== basisDigest(basis)
	)
		throw new Refusal(
			'The sessions, pairs or findings changed since this plan was made. Plan the season again ' +
				'first.',
		)
	return { basis, planned }
}
export async function chartSeason(
	state: State,
	deps: Deps,
	{ playerId, paper }: InputOf<'season.chart'>,
): Promise<OutputOf<'season.chart'>> {
	const {
		basis: { visit, decisions },
		planned,
	} = planToGive(state, deps, playerId)
	const { clinic } = state
	if (!clinic) throw new Refusal('The clinic is not set up. Fill in the letterhead first.')
	const on = dayHere(deps.now())
	if (paper === 'pocket')
		return pdfOf(
			await draw(deps, pocketTable({ visit, clinic, plan: planned.value.plan, on })),
			`season-pocket-${on}.pdf`,
		)
	return pdfOf(
		await draw(
			deps,
			seasonChart({
				visit,
				decisions,
				clinic,
				plan: planned.value.plan,
				paper,
				version: planned.version,
				draft: false,
				on,
			}),
		),
		`season-chart-${paper}-${on}.pdf`,
	)
}
const withoutStamp = (text: string): string => text.replace(/^DTSTAMP:.*$/gm, '')
/**
 * The player's calendar. What was given out before is kept, so that changed events are told from
 * new ones.
 */
export function seasonCalendar(
	state: State,
	deps: Deps,
	{ playerId }: InputOf<'season.ics'>,
): OutputOf<'season.ics'> {
	const { planned } = planToGive(state, deps, playerId)
	const last = recordsOf(state, deps, playerId, 'calendar').at(-1)
	const previous =
		last === undefined ? undefined : (deps.store.read(last).value as CalendarValue).text
	const text = writeCalendar(planned.value.plan, {
		zone: zoneHere(),
		stamp: deps.now(),
		...(previous === undefined ? {} : { previous }),
	})
	if (previous === undefined || withoutStamp(previous) !== withoutStamp(text))
		append(deps, { what: 'calendar', playerId, text }, last)
	return { text, fileName: 'season.ics' }
}
