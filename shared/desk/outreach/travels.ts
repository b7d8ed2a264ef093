/** Which kinds of records go out in a pack, and which come home. */
import { z } from 'zod'
import { playerSchema } from '../../engine/visit/visit.ts'
import { consentSchema } from '../records/consent.ts'
import { signedVisitSchema } from '../visits/calls.ts'
import type { Carried } from './carried.ts'

type Way = 'player' | 'clinic' | 'no'
const ways = new Map<string, { pack: Way; home: boolean }>([
	['player', { pack: 'player', home: true }],
	['visit', { pack: 'player', home: true }],
	['report', { pack: 'player', home: true }],
	['visit-note', { pack: 'player', home: true }],
	['consent', { pack: 'player', home: true }],
	['hold', { pack: 'player', home: true }],
	['merge', { pack: 'player', home: true }],
	['season', { pack: 'player', home: true }],
	['answer', { pack: 'player', home: true }],
	['squad', { pack: 'player', home: true }],
	['sending-note', { pack: 'player', home: true }],
	['sending', { pack: 'no', home: true }],
	['trail', { pack: 'no', home: true }],
	['installation', { pack: 'clinic', home: true }],
	['clinic', { pack: 'clinic', home: false }],
	['settings', { pack: 'clinic', home: false }],
	['shelf', { pack: 'clinic', home: false }],
	['protocol', { pack: 'clinic', home: false }],
	['person', { pack: 'clinic', home: false }],
	['register', { pack: 'no', home: false }],
	['pack', { pack: 'no', home: false }],
	['quarantine', { pack: 'no', home: false }],
	['anchor', { pack: 'no', home: false }],
	['document', { pack: 'no', home: false }],
	['outbox', { pack: 'no', home: false }],
	['contact', { pack: 'no', home: false }],
	['breach', { pack: 'no', home: false }],
	['mail', { pack: 'no', home: false }],
])
/** Whether a kind goes out in a pack, with its player or with the clinic. */
export const goesOut = (kind: string): Way => ways.get(kind)?.pack ?? 'no'
export const comesHome = (kind: string): boolean => ways.get(kind)?.home ?? false
export const isKnown = (kind: string): boolean => ways.has(kind)

const words = new Map([
	['player', 'details'],
	['visit', 'signed visit'],
	['report', 'report'],
	['visit-note', 'note on a visit'],
	['consent', 'consent'],
	['hold', 'hold'],
	['person', 'person of the clinic'],
	['settings', 'set of settings'],
	['mail', 'mail settings'],
])
export const wordsOf = (kind: string): string | undefined => words.get(kind)
const schemas = new Map<string, z.ZodType>([
	['player', z.strictObject({ playerId: z.string(), player: playerSchema })],
	['visit', signedVisitSchema],
	['consent', consentSchema],
])
export type Reading =
	| { state: 'read'; newer: boolean }
	| { state: 'unreadable'; newer: boolean; problems: { path: string; message: string }[] }
/** Whether a record's value can be read here. */
export function readCarried({ kind, version = 1, value }: Carried): Reading {
	const read = schemas.get(kind)?.safeParse(value)
	const newer = version > 1
	if (!read || read.success) return { state: 'read', newer }
	return {
		state: 'unreadable',
		newer,
		problems: read.error.issues.map(({ path, message }) => ({ path: path.join('.'), message })),
	}
}
