/** The short words of a model for the list. Pure. */
import type { Model, Shelf } from '../../../shared/engine/visit/shelf.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'

/** 'UK 3 to 12, fittings E, F': by size system. */
export function sizesWords({ sizes }: Model): string {
	const systems = [...new Set(sizes.map((siz) => siz.system))]
	return systems
		.map((system) => {
			const own = sizes.filter((siz) => siz.system === system)
			const labels = own.map((one) => one.label)
			const [low, high] = [Math.min(...labels), Math.max(...labels)]
			const fittings = [...new Set(own.flatMap((one) => one.fitting ?? []))]
			return (
				`${termWords(system)} ` +
				`${low === high ? low : `${low} to ${high}`}${fittings.length > 0 ? `, ${fittings.length === 1 ? 'fitting' : 'fittings'} ${fittings.join(', ')}` : ''}`
			)
		})
		.join('; ')
}
export function featureWords(model: Model): string {
	const of = (value: string | undefined, noun: string) =>
		value === undefined ? [] : [`${termWords(value)} ${noun}`]
	const { studs } = model
	const shapes = [...new Set((studs ?? []).map((stud) => stud.shape))]
	return [
		...(studs === undefined
			? []
			: [studs.length === 0 ? 'no studs' : `${studs.length} studs (${shapes.join(', ')})`]),
		...of(model.upperSoftness, 'upper'),
		...of(model.counterStiffness, 'counter'),
		...of(model.forefootStiffness, 'forefoot'),
		...(model.cushioning && model.cushioning !== 'none'
			? [model.cushioning === 'full' ? 'cushioned throughout' : 'cushioned heel']
			: []),
		...(model.base && model.base !== 'usual' ? [`${model.base} base`] : []),
		...(model.removableLiner ? ['liner comes out'] : []),
		...(model.massG === undefined ? [] : [`${model.massG} g`]),
	].join(', ')
}
export type Fate = 'new' | 'replaces' | 'same'
export interface Incoming {
	model: Model
	fate: Fate
}
/** What taking in would do to each model. */
export function compareShelf(now: Shelf, coming: Shelf): Incoming[] {
	const known = new Map(now.models.map((model) => [model.id, JSON.stringify(model)]))
	return coming.models.map((model) => ({
		model,
		fate: !known.has(model.id)
			? 'new'
			: known.get(model.id) === JSON.stringify(model)
				? 'same'
				: 'replaces',
	}))
}
/**
 * Models of the same id are replaced in their place, new ones stand at the end; nothing is taken
 * away.
 */
export function mergeShelf(now: Shelf, coming: Shelf): Shelf {
	const byId = new Map(now.models.map((model) => [model.id, model]))
	for (const model of coming.models) byId.set(model.id, model)
	return { ...now, models: [...byId.values()] }
}
