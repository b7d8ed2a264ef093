/** Random models that pass the shelf schema. */
import fc from 'fast-check'
import {
	bases,
	collars,
	counterStiffnesses,
	cushionings,
	type Model,
	modelSchema,
	seamPlaces,
	softnesses,
	stiffnesses,
	studShapes,
} from '../../shared/engine/visit/shelf.ts'
import { codes, soles } from '../../shared/engine/visit/terms.ts'

const tenth = (min: number, max: number) =>
	fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10)
const stud = fc.record({
	xFraction: fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000),
	yFraction: fc.integer({ min: -1000, max: 1000 }).map((thousandths) => thousandths / 1000),
	shape: fc.constantFrom(...studShapes),
	heightMm: tenth(3, 18),
	removable: fc.boolean(),
})
/** Several fittings of a label differ in inside length now and then, as measured shoes do. */
const sizes = fc.uniqueArray(
	fc.record({
		system: fc.constantFrom('uk' as const, 'eu' as const),
		label: fc.integer({ min: 10, max: 30 }).map((halves) => halves / 2),
		insideLengthMm: tenth(205, 340),
		ballWidthMm: tenth(75, 130),
		fitting: fc.constantFrom('F', 'G', 'H'),
	}),
	{
		selector: (size) => `${size.system} ${size.label} ${size.fitting}`,
		minLength: 1,
		maxLength: 14,
	},
)
export const modelOf: fc.Arbitrary<Model> = fc
	.record(
		{
			id: fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'),
			name: fc.constantFrom('Tern', '=sum', 'Curlew; "wide"', 'Åre, low'),
			sole: fc.constantFrom(...soles),
			sizes,
			codes: fc.uniqueArray(fc.constantFrom(...codes), { maxLength: 3 }),
			toeBoxDepthMm: tenth(16, 40),
			heelStackMm: tenth(4, 40),
			forefootStackMm: tenth(3, 30),
			counterStiffness: fc.constantFrom(...counterStiffnesses),
			collar: fc.constantFrom(...collars),
			torsion: fc.constantFrom(...stiffnesses),
			forefootStiffness: fc.constantFrom(...stiffnesses),
			upperSoftness: fc.constantFrom(...softnesses),
			forefootSeams: fc.constantFrom(...seamPlaces),
			cushioning: fc.constantFrom(...cushionings),
			base: fc.constantFrom(...bases),
			massG: fc.integer({ min: 120, max: 500 }),
			removableLiner: fc.boolean(),
			linerThicknessMm: tenth(1, 6),
			studs: fc.array(stud, { maxLength: 24 }),
			price: fc.integer({ min: 10, max: 400 }),
		},
		{ requiredKeys: ['id', 'name', 'sole', 'sizes'] },
	)
	.map((drawn) => modelSchema.parse(drawn))
