/** A pair that was got against what the prescription asked for: as far as it was looked at. */
import type { Span } from '../findings/assessment.ts'
import { type Finding, findingOf, idPart, reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { OnOneFoot } from '../visit/recorded/on-foot.ts'
import { bothSides } from '../visit/sides.ts'
import type { Feature, PressurePlace, Sole, StudJoint } from '../visit/terms.ts'
import type { Pair } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

/** What was asked of a pair of its role. */
export interface Asked {
	/** The day of the prescription, ISO date; absent where it is that of this visit. */
	on?: string
	insideLengthMm?: Span | undefined
	sole?: Sole | undefined
	seek: readonly Feature[]
	avoid: readonly Feature[]
}
/** Whether one foot shows a feature; undefined where it was not looked at. */
type Shows = (foot: OnOneFoot) => boolean | undefined
const whenSeen = <Seen>(seen: Seen | undefined, isSo: (seen: Seen) => boolean) =>
	seen === undefined ? undefined : isSo(seen)
const unpressed =
	(...places: readonly PressurePlace[]): Shows =>
	({ pressure }) =>
		whenSeen(pressure, (seen) => !places.some((place) => seen.includes(place)))
const clearOf =
	(joint: StudJoint): Shows =>
	({ studs }) =>
		whenSeen(studs, (seen) => !seen.includes(joint))
/** Features that show on the foot. What shows as pressure is sought, and never held against a pair. */
const shows: Readonly<Partial<Record<Feature, Shows>>> = {
	'wide-fitting': ({ width }) => whenSeen(width, (seen) => seen === 'good' || seen === 'loose'),
	'narrow-fitting': ({ width }) => whenSeen(width, (seen) => seen !== 'loose'),
	'stiff-forefoot': ({ bends }) => whenSeen(bends, (seen) => seen === 'hardly'),
	'flexible-forefoot': ({ bends }) => whenSeen(bends, (seen) => seen === 'at-the-ball'),
	'torsional-stiffness': ({ bends }) => whenSeen(bends, (seen) => seen !== 'behind-the-ball'),
	'stud-clear-of-first-joint': clearOf('first-joint'),
	'stud-clear-of-fifth-metatarsal': clearOf('fifth-joint'),
	'deep-toe-box': unpressed('great-toe', 'small-toes'),
	'soft-upper': unpressed('inner-side-of-ball', 'outer-side-of-ball', 'small-toes'),
	'deep-instep': unpressed('instep'),
	'soft-heel-counter': unpressed('heel'),
	'low-heel-collar': unpressed('ankle-bones'),
}
/** Seen itself, and so can be held against a pair as well. */
const seenItself: readonly Feature[] = ['stiff-forefoot', 'flexible-forefoot']
/** On every foot that was looked at; a feature that one foot lacks is lacking. */
function isShown(feature: Feature, { onFoot }: Pair): boolean | undefined {
	const show = shows[feature]
	const seen = bothSides.flatMap((side) => {
		const foot = onFoot?.[side]
		return (foot && show?.(foot)) ?? []
	})
	return seen.length === 0 ? undefined : seen.every(Boolean)
}
function lengthMissed({ insideLengthMm }: Pair, asked: Span | undefined, protocol: Protocol) {
	if (insideLengthMm === undefined || asked === undefined) return undefined
	const errorMm = protocol.value('sizing.bandErrorMm')
	const isWithin = insideLengthMm >= asked.min - errorMm && insideLengthMm <= asked.max + errorMm
	return isWithin ? undefined : { insideLengthMm, leastMm: asked.min, mostMm: asked.max }
}
const soleMissed = (is: Sole | undefined, asked: Sole | undefined) =>
	is === undefined || asked === undefined || is === asked ? undefined : { is, asked }
/** One finding for a pair that was got; none where nothing of it could be held against what was asked. */
export function answerOf(
	pair: Pair,
	index: number,
	asked: Asked,
	protocol: Protocol,
): Finding | undefined {
	const met = asked.seek.filter((feature) => isShown(feature, pair) === true)
	const missing = asked.seek.filter((feature) => isShown(feature, pair) === false)
	const against = asked.avoid.filter(
		(feature) => seenItself.includes(feature) && isShown(feature, pair) === true,
	)
	const length = lengthMissed(pair, asked.insideLengthMm, protocol)
	const sole = soleMissed(pair.sole, asked.sole)
	const isMissed = length !== undefined || sole !== undefined || missing.length + against.length > 0
	const isLooked =
		met.length > 0 || (pair.insideLengthMm !== undefined && asked.insideLengthMm !== undefined)
	if (!isMissed && !isLooked) return undefined
	const of = { pair: pair.name ?? `Pair ${pair.id}`, ...present({ on: asked.on }) }
	return findingOf(
		isMissed
			? state('onfoot.not-as-asked', { ...of, ...present({ length, sole }), missing, against })
			: state('onfoot.as-asked', { ...of, met }),
		{
			side: 'none',
			level: isMissed ? 'advise' : 'note',
			of: idPart(pair.id, index),
			because:
				pair.insideLengthMm === undefined
					? []
					: [reading('insideLengthMm', pair.insideLengthMm, 'mm')],
			basis: protocol.basis('a pair that was got against what was asked', 'sizing.bandErrorMm'),
		},
	)
}
