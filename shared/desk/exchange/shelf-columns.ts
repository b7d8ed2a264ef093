/** The columns of a shelf table: one line a size, the model's own properties and the size's. */
import type { Model, ShelfSize } from '../../engine/visit/shelf.ts'

/** How the cells of a column are written. */
export type CellKind = 'text' | 'number' | 'yes-no' | 'codes' | 'studs'
const ofModel = {
	id: 'text',
	name: 'text',
	sole: 'text',
	codes: 'codes',
	toeBoxDepthMm: 'number',
	heelStackMm: 'number',
	forefootStackMm: 'number',
	counterStiffness: 'text',
	counterHeight: 'text',
	collar: 'text',
	paddedCollar: 'yes-no',
	instep: 'text',
	torsion: 'text',
	forefootStiffness: 'text',
	upperSoftness: 'text',
	forefootSeams: 'text',
	cushioning: 'text',
	base: 'text',
	massG: 'number',
	removableLiner: 'yes-no',
	linerThicknessMm: 'number',
	studs: 'studs',
	price: 'number',
	retired: 'yes-no',
	note: 'text',
} as const satisfies Record<Exclude<keyof Model, 'sizes'>, CellKind>
const ofSize = {
	system: 'text',
	label: 'number',
	insideLengthMm: 'number',
	ballWidthMm: 'number',
	fitting: 'text',
} as const satisfies Record<Exclude<keyof ShelfSize, 'listed' | 'measured'>, CellKind>

type Columns<Name> = readonly (readonly [Name, CellKind])[]
/** Every property of a model but its sizes, in the order of the table. */
export const modelColumns = Object.entries(ofModel) as Columns<keyof typeof ofModel>
/** Every property of a size but what was measured on feet: that stays with the shelf. */
export const sizeColumns = Object.entries(ofSize) as Columns<keyof typeof ofSize>
/** The heading of a whole table. */
export const shelfColumns: readonly string[] = [...Object.keys(ofModel), ...Object.keys(ofSize)]
/** Without these a table cannot be read. */
export const neededColumns: readonly string[] = [
	'id',
	'name',
	'sole',
	'system',
	'label',
	'insideLengthMm',
	'ballWidthMm',
]
