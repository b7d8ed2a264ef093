/** What the insert rows look at on one side, gathered once. */
import type {
	AnkleResult,
	PostureResult,
	ScreeningResult,
	SizingResult,
} from '../findings/assessment.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { meanOf } from '../visit/sides.ts'
import { type Condition, termWords } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'

/** The footwear the insert goes into, where known: the liner that comes out makes room. All mm. */
export interface InsertRoom {
	removableLiner?: boolean
	linerMm?: number
	depthOverToesMm?: number
}
export interface InsertContext {
	sizing: SizingResult
	ankle: AnkleResult
	posture: PostureResult
	screening: ScreeningResult
	room?: InsertRoom
}
export interface InsertFacts {
	side: Side
	adult: boolean
	massKg?: number
	fpi?: number
	heelWidthMm?: number
	ballLengthMm?: number
	forefoot?: string
	supinationResistance?: string
	firstRay?: string
	firstMtp?: string
	fpiBand?: string
	limitedBy: string
	ankleRaiseMm?: number
	/** Where the ankle's raise comes from. */
	ankleRaiseBasis?: Basis
	legLengthMm?: number
	shorter: boolean
	protocol: Protocol
	/** Current or recovering on this side. */
	now(...conditions: Condition[]): Because[]
	/** The same on either side: what is given to both shoes. */
	anySide(...conditions: Condition[]): Because[]
	/** Past ones too, this side. */
	ever(...conditions: Condition[]): Because[]
}
/**
 * The part of the ankle room's raise that is for both shoes; what one side has above it corrects
 * the leg length and is an element of its own.
 */
function symmetricalRaise({ heelRaiseMm }: AnkleResult): number | undefined {
	const both = heelRaiseMm && Math.min(heelRaiseMm.left, heelRaiseMm.right)
	return both ? both : undefined
}
export function insertFacts(
	visit: Visit,
	context: InsertContext,
	side: Side,
	protocol: Protocol,
): InsertFacts {
	const list = visit.conditions ?? []
	const here = (one: { side: string }) =>
		one.side === side || one.side === 'both' || one.side === 'none'
	const reasons = (found: typeof list): Because[] =>
		found.map((one) => ({
			measure: `${termWords(one.condition)}${one.side === 'none' ? '' : ` (${one.side})`}`,
			value:
				one.painWorst === undefined
					? one.status
					: `${one.status}, worst pain ${one.painWorst} of 10`,
		}))
	const posture = visit.posture?.[side],
		read = context.posture[side],
		raise = symmetricalRaise(context.ankle)
	const optional = <K extends string, V>(key: K, value: V | undefined) =>
		(value === undefined ? {} : { [key]: value }) as { [P in K]?: V }
	return {
		side,
		adult:
			ageYears(visit.player.birthDate, visit.visitDate) >= protocol.value('insert.adultFromYears'),
		protocol,
		...optional('massKg', visit.body?.massKg),
		...optional('fpi', read.fpi),
		...optional('fpiBand', read.fpiBand),
		...optional('firstRay', read.firstRay),
		...optional('firstMtp', read.firstMtp),
		...optional('heelWidthMm', meanOf(visit.feet?.[side]?.heelWidthMm)),
		...optional('ballLengthMm', meanOf(visit.feet?.[side]?.heelToBallMm)),
		...optional('forefoot', posture?.forefoot),
		...optional('supinationResistance', posture?.supinationResistance),
		...optional('ankleRaiseMm', raise),
		...optional(
			'ankleRaiseBasis',
			context.ankle.findings.find((finding) => finding.id.startsWith('ankle.heel-raise'))?.basis,
		),
		...optional('legLengthMm', visit.body?.legLengthDifferenceMm),
		limitedBy: context.ankle[side].limitedBy,
		shorter: visit.body?.shorterLeg === side,
		now: (...wanted) =>
			reasons(
				list.filter((one) => wanted.includes(one.condition) && one.status !== 'past' && here(one)),
			),
		anySide: (...wanted) =>
			reasons(list.filter((one) => wanted.includes(one.condition) && one.status !== 'past')),
		ever: (...wanted) => reasons(list.filter((one) => wanted.includes(one.condition) && here(one))),
	}
}
