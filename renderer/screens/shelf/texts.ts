/** The form of one model: what is typed, and what it means. Pure but for the keys of its rows. */

import { type FieldMeta, fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import {
	type Model,
	modelSchema,
	type Shelf,
	type ShelfSize,
	type Stud,
	shelfProblems,
} from '../../../shared/engine/visit/shelf.ts'
import { parseNumber } from '../../parts/parseNumber.ts'

export interface Row {
	key: string
	texts: Record<string, string>
}
export type StudState = 'not recorded' | 'none' | 'listed'
export interface ModelTexts {
	/** Of the model as saved; absent for a new one, which gets one from its name. */
	id?: string | undefined
	retired: boolean
	fields: Record<string, string>
	codes: string[]
	sizes: Row[]
	studState: StudState
	studs: Row[]
}
export const groups = [
	{ title: 'What it is', fields: ['name', 'sole', 'price', 'note'] },
	{
		title: 'Measured',
		fields: [
			'toeBoxDepthMm',
			'heelStackMm',
			'forefootStackMm',
			'massG',
			'removableLiner',
			'linerThicknessMm',
		],
	},
	{
		title: 'Build',
		fields: [
			'upperSoftness',
			'forefootSeams',
			'instep',
			'counterStiffness',
			'counterHeight',
			'collar',
			'paddedCollar',
			'torsion',
			'forefootStiffness',
			'cushioning',
			'base',
		],
	},
] as const satisfies readonly { title: string; fields: readonly (keyof Model)[] }[]
export const sizeFields = [
	'system',
	'label',
	'insideLengthMm',
	'ballWidthMm',
	'fitting',
] as const satisfies readonly (keyof ShelfSize)[]
export const studFields = [
	'xFraction',
	'yFraction',
	'shape',
	'heightMm',
	'removable',
] as const satisfies readonly (keyof Stud)[]

let keys = 0
const row = (texts: Record<string, string>): Row => ({ key: `row-${++keys}`, texts })
const textOf = (value: unknown): string =>
	value === undefined ? '' : value === true ? 'yes' : value === false ? 'no' : String(value)
export const emptySize = (like?: Row): Row =>
	row({ system: like?.texts.system ?? 'uk', fitting: like?.texts.fitting ?? '' })
export const emptyStud = (like?: Row): Row =>
	row({
		shape: like?.texts.shape ?? '',
		heightMm: like?.texts.heightMm ?? '',
		removable: like?.texts.removable ?? 'no',
	})
export const emptyTexts = (): ModelTexts => ({
	retired: false,
	fields: {},
	codes: [],
	sizes: [emptySize()],
	studState: 'not recorded',
	studs: [],
})
const pick = (from: object, names: readonly string[]) =>
	Object.fromEntries(names.map((name) => [name, textOf((from as Record<string, unknown>)[name])]))

export function textsOf(model: Model): ModelTexts {
	return {
		id: model.id,
		retired: model.retired ?? false,
		fields: pick(
			model,
			groups.flatMap((group) => [...group.fields]),
		),
		codes: model.codes ?? [],
		sizes: model.sizes.map((siz) => row(pick(siz, sizeFields))),
		studState:
			model.studs === undefined ? 'not recorded' : model.studs.length === 0 ? 'none' : 'listed',
		studs: (model.studs ?? []).map((stud) => row(pick(stud, studFields))),
	}
}
/** A copy to be changed: no id yet, and a name that says so. */
export const copyOf = (model: Model): ModelTexts => ({
	...textsOf(model),
	id: undefined,
	retired: false,
	fields: { ...textsOf(model).fields, name: `${model.name} copy` },
})
/**
 * An id from a name, of its own on this shelf: 'Tern Firm' becomes tern-firm, or tern-firm-2 where
 * that is taken.
 */
export function idFor(name: string, shelf: Shelf): string {
	const plain =
		name
			.normalize('NFD')
			.replace(/[\u0300-\u036f]/g, '')
			.toLowerCase()
			.replace(/[^a-z0-9]+/g, '-')
			.replace(/^-+|-+$/g, '')
			.slice(0, 34)
			.replace(/-+$/, '') || 'model'
	const taken = new Set(shelf.models.map((model) => model.id))
	for (let n = 1; ; n++) {
		const id = n === 1 ? plain : `${plain}-${n}`
		if (!taken.has(id)) return id
	}
}

export interface Read {
	model?: Model
	errors: Record<string, string>
	questions: Record<string, string>
}
/**
 * A stud place in millimetres from the inside of the heel, or from the middle line, becomes a
 * fraction of the size it was measured in.
 */
function fractionOf(text: string, wholeMm: number | undefined): string | { wrong: string } {
	const typed = /^\s*(-?\d+(?:[.,]\d+)?)\s*mm\s*$/i.exec(text)
	if (!typed) return text
	if (wholeMm === undefined)
		return {
			wrong:
				`'${text}' is in mm: fill in inside length and width of the first size, or type a ` +
				'fraction.',
		}
	return String(Math.round((Number((typed[1] ?? '').replace(',', '.')) / wholeMm) * 1000) / 1000)
}
/**
 * Reads the whole form. Every error names what was typed and what to do; a question does not keep
 * it from being saved.
 */
export function readTexts(texts: ModelTexts, shelf: Shelf): Read {
	const errors: Record<string, string> = {}
	const questions: Record<string, string> = {}
	const one = (path: string, text: string): unknown => {
		const meta: FieldMeta = fieldMeta(modelSchema, path)
		const typed = text.trim()
		if (typed === '') return undefined
		if (meta.kind === 'yesNo') return typed === 'yes'
		if (meta.kind !== 'number') return typed
		const parsed = parseNumber(text, meta.unit)
		if (!parsed.ok) {
			errors[path] = parsed.says
			return undefined
		}
		const [value, ...more] = parsed.values
		if (value === undefined) return undefined
		const unit = ['fraction', 'label', 'local currency'].includes(meta.unit) ? '' : ` ${meta.unit}`
		if (more.length > 0) errors[path] = `'${typed}' is more than one number. Give one.`
		else if (value < (meta.min ?? -Infinity) || value > (meta.max ?? Infinity))
			errors[path] =
				`${value}${unit} cannot be: allowed ${meta.min} to ${meta.max}${unit}. Check the ` +
				'reading and the unit.'
		else if (value < (meta.softMin ?? value) || value > (meta.softMax ?? value))
			questions[path] =
				`${value}${unit} is unusual (${meta.softMin} to ${meta.softMax}${unit}). Check it.`
		return value
	}
	const group = (prefix: string, names: readonly string[], from: Record<string, string>) =>
		Object.fromEntries(
			names
				.map((name) => [name, one(`${prefix}${name}`, from[name] ?? '')] as const)
				.filter(([, value]) => value !== undefined),
		)
	const fields = group(
		'',
		groups.flatMap((each) => [...each.fields]),
		texts.fields,
	)
	const sizes = texts.sizes.map((siz, at) => group(`sizes.${at}.`, sizeFields, siz.texts))
	const first = sizes[0] as Partial<ShelfSize> | undefined
	const studs =
		texts.studState === 'not recorded'
			? undefined
			: texts.studState === 'none'
				? []
				: texts.studs.map((stud, at) => {
						const placed = { ...stud.texts }
						for (const [name, whole] of [
							['xFraction', first?.insideLengthMm],
							['yFraction', first?.ballWidthMm === undefined ? undefined : first.ballWidthMm / 2],
						] as const) {
							const read = fractionOf(placed[name] ?? '', whole)
							if (typeof read === 'string') placed[name] = read
							else {
								errors[`studs.${at}.${name}`] = read.wrong
								placed[name] = ''
							}
						}
						return group(`studs.${at}.`, studFields, placed)
					})
	const input = {
		id: texts.id ?? idFor(texts.fields.name ?? '', shelf),
		...fields,
		...(texts.codes.length > 0 ? { codes: texts.codes } : {}),
		sizes,
		...(studs === undefined ? {} : { studs }),
		...(texts.retired ? { retired: true } : {}),
	}
	const parsed = modelSchema.safeParse(input)
	if (!parsed.success)
		for (const issue of parsed.error.issues) {
			const path = issue.path.join('.')
			if (errors[path] !== undefined) continue
			const title =
				path === 'sizes' ? 'Sizes' : path === 'studs' ? 'Studs' : fieldMeta(modelSchema, path).title
			const value = issue.path.reduce<unknown>(
				(here, key) => (here as Record<PropertyKey, unknown> | undefined)?.[key],
				input,
			)
			errors[path] =
				path === 'sizes'
					? 'Sizes: give at least one, at most 80.'
					: value === undefined || value === ''
						? `${title} is empty. Fill it in.`
						: `${title} ${String(value).slice(0, 40)} cannot stand: ${issue.message}.`
		}
	else
		for (const twice of shelfProblems({
			format: 'lastwright-shelf',
			version: 1,
			models: [parsed.data],
		}))
			errors[twice.path.replace(/^models\.0\./, '')] = twice.message
	return {
		...(parsed.success && Object.keys(errors).length === 0 ? { model: parsed.data } : {}),
		errors,
		questions,
	}
}
/**
 * What is typed and not yet saved, by the page it was typed on: going elsewhere and coming back
 * loses nothing.
 */
export const unsaved = new Map<string, ModelTexts>()
