/** What a fitter knows of the player and the clinic's protocol before looking at any model. */
import type { AnkleResult } from '../../findings/assessment.ts'
import type { Basis } from '../../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import type { Model, ShelfSize } from '../../visit/shelf.ts'
import type { Sole } from '../../visit/terms.ts'
import { type Limits, limitsOf } from '../features.ts'
import type { Answer } from './answer.ts'
import { askGround } from './ground.ts'
import type { MatchContext, Needs } from './needs.ts'
import { type Wish, wishesByFeature } from './wishes.ts'

export interface Fitter {
	needs: Needs
	limits: Limits
	seek: readonly Wish[]
	avoid: readonly Wish[]
	/** The heel above the forefoot that the ankle room asks for, mm. */
	offsetMm: AnkleResult['offsetMm']
	value(key: ThresholdKey): number
	basis(rule: string, key: ThresholdKey): Basis
	/** The same for every model that is judged as that sole. */
	onGround(sole: Sole): Answer
}
/** A model in the size that is tried on. */
export interface Trial {
	model: Model
	size: ShelfSize
}
/** A function that works out each answer once. */
function remembering<Key, Value>(workOut: (key: Key) => Value): (key: Key) => Value {
	const known = new Map<Key, Value>()
	return (key) => {
		const found = known.get(key)
		if (found !== undefined) return found
		const made = workOut(key)
		known.set(key, made)
		return made
	}
}

/** A protocol is read hundreds of times a model: here each row is read once. */
export function fitterFor(needs: Needs, context: MatchContext, protocol: Protocol): Fitter {
	const { contested } = context
	const { seek, avoid } = context.target
	const value = remembering((key: ThresholdKey) => protocol.value(key))
	const basesOf = remembering((key: ThresholdKey) =>
		remembering((rule: string) => protocol.basis(rule, key)),
	)
	return {
		needs,
		limits: limitsOf(protocol, context.ankle.offsetMm?.min),
		seek: wishesByFeature(seek, contested, protocol),
		avoid: wishesByFeature(avoid, contested, protocol),
		offsetMm: context.ankle.offsetMm,
		value,
		basis: (rule, key) => basesOf(key)(rule),
		onGround: remembering((sole: Sole) => askGround(sole, needs, value)),
	}
}
