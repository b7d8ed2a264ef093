/** The schema of a table of measures: types, limits, labels and units all come from the table. */
import { z } from 'zod'
import { choice, count, measure, note, repeats, text, yesNo } from '../fields.ts'
import type { Measure, Measures, NumberMeasure } from './measure.ts'

/** What one measure is in the visit file; every one may be absent. */
type SchemaOf<Defined extends Measure> = Defined extends {
	terms: infer Terms extends readonly string[]
}
	? z.ZodOptional<z.ZodEnum<{ [Term in Terms[number]]: Term }>>
	: Defined extends { kind: 'yesNo' }
		? z.ZodOptional<z.ZodBoolean>
		: Defined extends { kind: 'text' | 'note' }
			? z.ZodOptional<z.ZodString>
			: Defined extends { readings: 'once' }
				? z.ZodOptional<z.ZodNumber>
				: Defined extends { readings: 'repeats' }
					? z.ZodOptional<z.ZodUnion<[z.ZodNumber, z.ZodArray<z.ZodNumber>]>>
					: z.ZodOptional<z.ZodArray<z.ZodNumber>>
type ShapeOf<Table extends Measures> = {
	-readonly [Key in keyof Table]: SchemaOf<Table[Key]>
}

function numberOf({ kind, label, unit, hard, soft, digits, readings }: NumberMeasure): z.ZodType {
	const reading = (title: string) =>
		kind === 'whole' ? count(title, unit, hard, soft) : measure(title, unit, hard, soft, digits)
	if (readings === 'once') return reading(label).optional()
	if (readings === 'repeats') return repeats(reading(label))
	return z.array(reading(readings.each)).length(readings.items).optional().meta({ title: label })
}
function schemaOf(defined: Measure): z.ZodType {
	switch (defined.kind) {
		case 'choice':
			return choice(defined.label, defined.terms).optional()
		case 'yesNo':
			return yesNo(defined.label)
		case 'text':
			return text(defined.label, defined.max).optional()
		case 'note':
			return note(defined.label, defined.max).optional()
		default:
			return numberOf(defined)
	}
}
/** A private topic is marked in the schema, where every list and document finds it. */
const marked = (defined: Measure): z.ZodType =>
	defined.private === 'none'
		? schemaOf(defined)
		: schemaOf(defined).meta({ private: defined.private })
/** One schema a measure, by its key: the shape of an object of the visit file. */
export function shapeOf<const Table extends Measures>(table: Table): ShapeOf<Table> {
	const shape = Object.entries(table).map(([key, defined]) => [key, marked(defined)])
	return Object.fromEntries(shape) as ShapeOf<Table>
}
