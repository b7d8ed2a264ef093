/** A signed visit as rows for reading: every field that holds something, by its title and unit of the visit schema. Pure. */
import type { Assessment } from '../../../shared/assessment.ts'
import type { SignedVisit } from '../../../shared/contract.ts'
import type { Difference } from '../../../shared/records/amendment.ts'
import { dayInWords } from '../../../shared/visit/age.ts'
import { termWords } from '../../../shared/visit/terms.ts'
import { visitSchema } from '../../../shared/visit/visit.ts'
import { fieldMeta } from '../../parts/fieldMeta.ts'

type Loose = Record<string, unknown>
export interface Row { key: string; title: string; /** one value, or left and right */ values: readonly string[] }
export interface Group { title: string; rows: readonly Row[]; sided: boolean }
const groups: Record<string, string> = { player: 'Player', play: 'Play', body: 'Body', feet: 'Feet', ankles: 'Ankles', posture: 'Posture', conditions: 'Conditions', screening: 'Flags', footwear: 'Pairs', season: 'Season', notMeasured: 'Not measured', notes: 'Clinical notes' }
const ownTitles: Record<string, string> = {
	consentNoted: 'Consent noted', referralDone: 'Done about the warning sign', reviewDate: 'Review', heelRaiseMm: 'Heel raise (mm)', heelRaiseWhy: 'Reason for the heel raise', actions: 'What to do now', warningSigns: 'Warning signs for the player',
	lines: 'Decision', choice: 'choice', says: 'words', why: 'reason', what: 'what', when: 'when', who: 'who', insert: 'Insert', screeningDone: 'Done about flags', findingId: 'finding', visitDate: 'Visit date', notes: 'Clinical notes',
}
const sideOf = (path: string) => (/(^|\.)left(\.|$)/.test(path) ? 'left' : /(^|\.)right(\.|$)/.test(path) ? 'right' : undefined)
const plainWords = (key: string) => ownTitles[key] ?? key.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase()
function metaOf(path: string) { try { return fieldMeta(visitSchema, path) } catch { return undefined } }
/** The title of a field without its side; numbers of a list count from 1. */
export function titleOf(path: string): string {
	const keys = path.split('.')
	const title = metaOf(path)?.title ?? metaOf(path.replace(/(\.\d+)+$/, ''))?.title
	const known = title === undefined || title === path ? undefined : title
	const number = keys.filter((key) => /^\d+$/.test(key)).map((key) => ` ${Number(key) + 1}`)[0] ?? ''
	const last = keys.filter((key) => !/^\d+$/.test(key) && key !== 'left' && key !== 'right').slice(-2)
	return `${known ?? last.map(plainWords).join(', ')}${number}`
}
export function valueWords(value: unknown, unit = ''): string {
	if (value === null || value === undefined) return 'none'
	if (typeof value === 'boolean') return value ? 'yes' : 'no'
	if (Array.isArray(value)) return `${value.map((one) => valueWords(one)).join(', ')}${unit ? ` ${unit}` : ''}`
	if (typeof value === 'string') return /^\d{4}-\d\d-\d\d$/.test(value) ? dayInWords(value) : /^[a-z0-9]+(-[a-z0-9]+)+$/.test(value) ? termWords(value) : value
	return `${String(value)}${unit ? ` ${unit}` : ''}`
}
const isLeaf = (value: unknown): boolean => value === null || typeof value !== 'object' || (Array.isArray(value) && value.every((one) => one === null || typeof one !== 'object'))
function leaves(value: unknown, path: string): { path: string; value: unknown }[] {
	if (value === undefined || (Array.isArray(value) && value.length === 0)) return []
	return isLeaf(value) ? [{ path, value }] : Object.entries(value as Loose).flatMap(([key, one]) => leaves(one, `${path}.${key}`))
}
/** All fields of the visit that hold something, in the order of the form; left and right beside each other. */
export function groupsOf(visit: SignedVisit['visit']): Group[] {
	return Object.entries(groups).flatMap(([key, title]) => {
		const found = leaves((visit as Loose)[key], key)
		if (found.length === 0) return []
		const sided = found.some((one) => sideOf(one.path) !== undefined)
		const rows = new Map<string, { key: string; title: string; values: string[] }>()
		for (const { path, value } of found) {
			const side = sideOf(path)
			const bare = path.replace(/(^|\.)(left|right)(?=\.|$)/, '$1')
			const words = valueWords(value, metaOf(path)?.unit === 'count' ? '' : metaOf(path)?.unit)
			// the reasons for what was not measured stand by the path of their field
			const name = key === 'notMeasured' ? `${titleOf(path.slice('notMeasured.'.length))}${side ? `, ${side}` : ''}` : titleOf(path)
			const known = key === 'notMeasured' ? undefined : rows.get(bare)
			const values = known?.values ?? (sided && side && key !== 'notMeasured' ? ['', ''] : [''])
			values[values.length === 2 && side === 'right' ? 1 : 0] = words
			rows.set(key === 'notMeasured' ? path : bare, { key: path, title: name, values })
		}
		return [{ title, rows: [...rows.values()], sided: [...rows.values()].some((one) => one.values.length === 2) }]
	})
}
const choices = { accept: 'accepted', change: 'changed', drop: 'dropped', add: 'added' } as const
/** The frozen assessment, as the engine of its time wrote it. */
export const assessmentOf = ({ assessment }: SignedVisit): Assessment => assessment as Assessment
/** What was decided about each finding, in the words that stand. */
export function decisionRows(signed: SignedVisit): { key: string; says: string; choice: string; why: string }[] {
	const words = new Map(assessmentOf(signed).findings.map((one) => [one.id, one.says]))
	return signed.decisions.lines.map((one) => ({ key: one.findingId, says: one.says?.trim() || words.get(one.findingId) || titleOf(one.findingId), choice: choices[one.choice], why: one.why ?? '' }))
}
/** The decisions that are no lines, as rows. */
export function otherDecisions({ decisions }: SignedVisit): Row[] {
	const { lines: _, ...rest } = decisions
	return leaves(rest, 'decisions').map(({ path, value }) => { const side = sideOf(path); return { key: path, title: `${titleOf(path.slice('decisions.'.length))}${side ? `, ${side}` : ''}`, values: [valueWords(value)] } })
}
export interface Told { key: string; part: 'entry' | 'decision' | 'result'; title: string; before: string; after: string }
const parts: Record<string, Told['part']> = { visit: 'entry', decisions: 'decision', assessment: 'result' }
const shown = (text: string) => { try { const value: unknown = JSON.parse(text); return typeof value === 'object' && value !== null && !isLeaf(value) ? text : valueWords(value) } catch { return valueWords(text) } }
/** A list that differs as a whole, told entry by entry: what came, went or has other words. */
function byId(path: string, part: Told['part'], before: string, after: string, words: (one: Loose) => string): Told[] {
	const read = (text: string): Map<string, string> => { try { return new Map((JSON.parse(text) as Loose[]).map((one) => [String(one.id ?? one.findingId), words(one)])) } catch { return new Map() } }
	const [then, now] = [read(before), read(after)]
	return [...new Set([...then.keys(), ...now.keys()])].filter((id) => then.get(id) !== now.get(id)).map((id) => ({ key: `${path} ${id}`, part, title: part === 'result' ? 'Finding' : `Decision about ${id.replaceAll('.', ', ')}`, before: then.get(id) ?? 'not there', after: now.get(id) ?? 'not there' }))
}
const wordsOfDecision = (one: Loose) => [choices[one.choice as keyof typeof choices], one.says, one.why].filter(Boolean).join(': ')
/** Differences in words; the tick for consent is set anew for each version and is no difference. Of the results only the findings are told. */
export function toldDifferences(differences: readonly Difference[]): Told[] {
	return differences.filter((one) => one.path !== 'decisions.consentNoted').flatMap(({ path, before, after }): Told[] => {
		const [first = '', ...rest] = path.split('.')
		const part = parts[first] ?? 'result'
		if (path === 'decisions.lines') return byId(path, part, before, after, wordsOfDecision)
		if (path === 'assessment.findings') return byId(path, part, before, after, (one) => String(one.says))
		if (part === 'result') return /^assessment\.findings\.\d+\.says$/.test(path) ? [{ key: path, part, title: 'Finding', before, after }] : []
		const side = sideOf(path)
		return [{ key: path, part, title: `${titleOf(rest.join('.') || first)}${side ? `, ${side}` : ''}`, before: shown(before), after: shown(after) }]
	})
}
