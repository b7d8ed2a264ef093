/** The form of one model as it is typed. Pure but for the keys of its rows. */
import type { Model, ShelfSize, Stud } from '../../../shared/engine/visit/shelf.ts'

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
/** All single fields of a model, in the order of the form. */
export const fieldNames: readonly string[] = groups.flatMap(({ fields }) => [...fields])
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

/** Rows have no id in the file: a number told out here keeps them apart while they are typed. */
let keys = 0
const row = (texts: Record<string, string>): Row => ({ key: `row-${++keys}`, texts })
function textOf(value: unknown): string {
	if (value === undefined) return ''
	if (typeof value === 'boolean') return value ? 'yes' : 'no'
	return String(value)
}
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
/** The values of some fields as they would be typed; empty where one is not recorded. */
function pick(from: object, names: readonly string[]): Record<string, string> {
	const values = new Map<string, unknown>(Object.entries(from))
	return Object.fromEntries(names.map((name) => [name, textOf(values.get(name))]))
}
function studStateOf({ studs }: Model): StudState {
	if (studs === undefined) return 'not recorded'
	return studs.length === 0 ? 'none' : 'listed'
}

export function textsOf(model: Model): ModelTexts {
	return {
		id: model.id,
		retired: model.retired ?? false,
		fields: pick(model, fieldNames),
		codes: model.codes ?? [],
		sizes: model.sizes.map((size) => row(pick(size, sizeFields))),
		studState: studStateOf(model),
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
