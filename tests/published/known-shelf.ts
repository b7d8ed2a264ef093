/** A shelf and feet of known figures: invented, round numbers to work with by hand. */
import { assess } from '../../shared/engine/assess.ts'
import type { RankedModel } from '../../shared/engine/findings/assessment.ts'
import { need } from '../../shared/engine/plain/need.ts'
import { shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Model, Shelf, ShelfSize, Stud } from '../../shared/engine/visit/shelf.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

/** All mm. */
export const foot = { heelToToeMm: 260, heelToBallMm: 190, ballWidthMm: 100, toeDepthMm: 24 }
/** An adult with that foot on both sides. */
export const visitWith = (more: Partial<Visit> = {}): Visit => ({
	format: 'lastwright-visit',
	version: 1,
	player: { givenName: 'A', familyName: 'B', birthDate: '2000-01-01', sex: 'male' },
	visitDate: '2027-01-20',
	feet: { left: foot, right: foot },
	...more,
})
export const sizeOf = (
	label: number,
	insideLengthMm: number,
	ballWidthMm = 102,
	fitting?: string,
): ShelfSize => ({
	system: 'uk',
	label,
	insideLengthMm,
	ballWidthMm,
	...(fitting ? { fitting } : {}),
})
export const modelWith = (more: Partial<Model> = {}): Model => ({
	id: 'm',
	name: 'M',
	sole: 'firm-ground',
	sizes: [sizeOf(7, 263), sizeOf(7.5, 267), sizeOf(8, 271), sizeOf(8.5, 275)],
	...more,
})
export const studAt = (xFraction: number, yFraction: number, more: Partial<Stud> = {}): Stud => ({
	xFraction,
	yFraction,
	shape: 'round',
	heightMm: 10,
	removable: false,
	...more,
})
export const shelfOf = (...models: Model[]): Shelf => ({
	format: 'lastwright-shelf',
	version: 1,
	models,
})
/** How the one model of a shelf is ranked. */
export const rank = (model: Partial<Model> = {}, more: Partial<Visit> = {}): RankedModel =>
	need(
		assess(visitWith(more), [], shippedProtocol, shelfOf(modelWith(model))).footwear.ranked[0],
		'the ranked model',
	)
