/** A fixture list read against the saved season, with the answers a person gave about it. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { openProtocol, type ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import { type ImportChoices, previewImport } from '../../../shared/engine/season/preview.ts'
import { codes, surfaces } from '../../../shared/engine/visit/terms.ts'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import { type Statement, state } from '../../../shared/engine/words/statement.ts'
import { readList } from '../../calendar/list.ts'
import { zoneHere } from '../../calendar/zones.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal, refusedEntry } from '../records/refusal.ts'
import { lastSeason } from './records.ts'

/** An answer to a question of the import. */
interface Answer {
	key: string
	/** what of the list it is about, where the key names it: a place, a title, a zone */
	about: string
	value: string
}
const cannotUse = (key: string, why: Statement): Refusal =>
	new Refusal('season.answer-cannot-be-used', state('season.answer-unusable'), [
		refusedEntry(`answers.${key}`, why),
	])
/** @throws Refusal where the answer is none of those allowed */
function pick<const Choice extends string>(
	{ key, value }: Answer,
	allowed: readonly Choice[],
): Choice {
	const found = allowed.find((choice) => choice === value)
	if (found === undefined)
		throw cannotUse(key, state('season.answer-none-of', { given: value, allowed }))
	return found
}
/** What each answer settles, by the first word of its key. */
const settles: Record<string, (choices: ImportChoices, answer: Answer) => void> = {
	team: (choices, { value }) => {
		choices.team = value.trim().slice(0, 80)
	},
	code: (choices, answer) => {
		choices.code = pick(answer, codes)
	},
	surface: (choices, answer) => {
		choices.surface = pick(answer, surfaces)
	},
	ground: (choices, answer) => {
		choices.ground = pick(answer, ['dry', 'damp', 'wet'])
	},
	dateOrder: (choices, answer) => {
		choices.dateOrder = pick(answer, ['day-month', 'month-day'])
	},
	surfaces: (choices, answer) => {
		choices.surfaces = { ...choices.surfaces, [answer.about]: pick(answer, surfaces) }
	},
	kinds: (choices, answer) => {
		choices.kinds = { ...choices.kinds, [answer.about]: pick(answer, ['training', 'match']) }
	},
	zones: (choices, { about, value }) => {
		choices.zones = { ...choices.zones, [about]: value }
	},
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
	for (const [key, value] of Object.entries(answers)) {
		const dot = key.indexOf('.')
		const [head, about] = dot < 0 ? [key, ''] : [key.slice(0, dot), key.slice(dot + 1)]
		if (value.trim() === '' || head === 'source') continue
		const settle = Object.hasOwn(settles, head) ? settles[head] : undefined
		if (!settle)
			throw cannotUse(
				key,
				state('season.answer-unknown', {
					given: value,
					allowed: ['source', ...Object.keys(settles)],
				}),
			)
		settle(choices, { key, about, value })
	}
	return choices
}
/** Reads a fixture list against the saved season and changes nothing. */
export async function previewSeasonImport(
	{ clinic, players }: Pick<Memory, 'clinic' | 'players'>,
	deps: Deps,
	{ playerId, text, kind, answers }: InputOf<'season.previewImport'>,
): Promise<OutputOf<'season.previewImport'>> {
	const season = lastSeason(players, deps, playerId)?.season
	if (!season) throw new Refusal('season.without-days', state('season.no-days'))
	const choices = choicesOf(answers, season, clinic.protocol)
	return previewImport(season.sessions ?? [], await readList(text, kind, choices), choices.source)
}
