/** The short words of a model for the list. Pure. */
import { differingIn, withLearned } from '../../../shared/desk/shelf/learning.ts'
import type { Model, Shelf, ShelfSize } from '../../../shared/engine/visit/shelf.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { amount, count } from '../../../shared/engine/words/en/format.ts'

/** 'UK 3 to 12, fittings E, F': by size system. */
export function sizesWords({ sizes }: Model): string {
	const systems = [...new Set(sizes.map(({ system }) => system))]
	return systems
		.map((system) => {
			const own = sizes.filter((size) => size.system === system)
			return `${termWords(system)} ${rangeWords(own)}${fittingWords(own)}`
		})
		.join('; ')
}
function rangeWords(sizes: readonly ShelfSize[]): string {
	const labels = sizes.map(({ label }) => label)
	const [low, high] = [Math.min(...labels), Math.max(...labels)]
	return low === high ? String(low) : `${low} to ${high}`
}
function fittingWords(sizes: readonly ShelfSize[]): string {
	const fittings = [...new Set(sizes.flatMap(({ fitting }) => fitting ?? []))]
	if (fittings.length === 0) return ''
	return `, ${fittings.length === 1 ? 'fitting' : 'fittings'} ${fittings.join(', ')}`
}

function studsWords({ studs }: Model): string | undefined {
	if (studs === undefined) return undefined
	if (studs.length === 0) return 'no studs'
	return `${studs.length} studs (${[...new Set(studs.map(({ shape }) => shape))].join(', ')})`
}
const cushioningWords: Partial<Record<NonNullable<Model['cushioning']>, string>> = {
	full: 'cushioned throughout',
	heel: 'cushioned heel',
}
/** What is recorded of a model beside its sizes: '12 studs (round), soft upper, 240 g'. */
export function featureWords(model: Model): string {
	const { upperSoftness, counterStiffness, forefootStiffness, cushioning, base, massG } = model
	const words = [
		studsWords(model),
		upperSoftness && `${termWords(upperSoftness)} upper`,
		counterStiffness && `${termWords(counterStiffness)} counter`,
		forefootStiffness && `${termWords(forefootStiffness)} forefoot`,
		cushioning && cushioningWords[cushioning],
		base && base !== 'usual' ? `${base} base` : undefined,
		model.removableLiner ? 'liner comes out' : undefined,
		massG === undefined ? undefined : `${massG} g`,
	]
	return words.filter(Boolean).join(', ')
}
/** '3 pairs measured, 2 of them differ, -4 mm in the middle'; '' where none was measured. */
export function differingWords(model: Model): string {
	const found = differingIn(model)
	if (!found) return ''
	const { pairs, differ, medianMm } = found
	const how = `${differ} of them ${differ === 1 ? 'differs' : 'differ'}`
	const middle = `${medianMm > 0 ? '+' : ''}${amount(medianMm, 'mm')} in the middle`
	return `${count(pairs, 'pair')} measured, ${differ === 0 ? 'none differs' : `${how}, ${middle}`}`
}
/** A model as a table holds it: what was measured of it on feet is in none. */
const asListed = (model: Model): string => {
	const shelf = { format: 'lastwright-shelf', version: 1, models: [model] } as const
	return JSON.stringify(withLearned({ ...shelf, models: [model] }, undefined).models[0])
}
export type Fate = 'new' | 'replaces' | 'same'
interface Incoming {
	model: Model
	fate: Fate
}
/** @param known the model of the same id as it stands on the shelf, as JSON */
function fateOf(model: Model, known: string | undefined): Fate {
	if (known === undefined) return 'new'
	return known === asListed(model) ? 'same' : 'replaces'
}
/** What taking in would do to each model. */
export function compareShelf(now: Shelf, coming: Shelf): Incoming[] {
	const known = new Map(now.models.map((model) => [model.id, asListed(model)]))
	return coming.models.map((model) => ({
		model,
		fate: fateOf(model, known.get(model.id)),
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
