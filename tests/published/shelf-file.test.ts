/** The shelf file and its table: what is refused is named by field, or by line and column. */
import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { readShelfCsv, writeShelfCsv } from '../../electron/services/shelf/shelf-csv.ts'
import { parseShelf } from '../../shared/engine/visit/shelf.ts'
import { modelWith, shelfOf, sizeOf } from './known-shelf.ts'

const file = (name: string) =>
	JSON.parse(readFileSync(new URL(`../../assets/demo/${name}`, import.meta.url), 'utf8'))
it('a shelf file is refused with field, value and remedy', () => {
	const wrong = parseShelf({
		format: 'lastwright-shelf',
		version: 1,
		models: [modelWith(), { ...modelWith(), sizes: [sizeOf(8, 2680)] }],
	})
	expect(wrong).toMatchObject({
		problems: [
			{
				path: 'models.1.sizes.0.insideLengthMm',
				code: 'too-large',
				params: { given: 2680, most: 420 },
			},
		],
	})
	const twice = parseShelf(shelfOf(modelWith(), modelWith()))
	expect(twice).toMatchObject({
		problems: [{ path: 'models.1.id', code: 'used-twice', params: { given: modelWith().id } }],
	})
})
it('CSV: out and in again is the same shelf, and each bad cell is named by line and column', () => {
	const parsed = parseShelf(file('shelf.json'))
	if (!parsed.ok) throw new Error('demo shelf')
	const again = readShelfCsv(writeShelfCsv(parsed.value))
	expect(again.problems).toEqual([])
	expect(again.shelf.models).toEqual(parsed.value.models)
	const bad = readShelfCsv(
		'id;name;sole;system;label;insideLengthMm;ballWidthMm;removableLiner;studs\r\na;A;firm-ground;uk;8;268,5;100;perhaps;\r\nb;B;clogs;uk;8;268;100;yes;0.7 ' +
			'-0.6 round ' +
			'9\r\nc;C;turf;uk;8;26x;100;no;none\r\n;;;uk;8,5;272;101;;\r\nd;D;turf;uk;8;268,5;100;yes;none\r\ne;E;clogs;uk;8;268;100;;\r\nf;F;turf;uk;8;268;100;;\r\nf;;;uk;8;269;101;;',
	)
	expect(bad.problems.map((problem) => `${problem.row} ${problem.column}`)).toEqual([
		'2 removableLiner',
		'3 studs',
		'4 insideLengthMm',
		'7 sole',
		'9 label',
	])
	expect(bad.shelf.models.map((model) => [model.id, model.sizes[0]!.insideLengthMm])).toEqual([
		['d', 268.5],
	])
	expect(readShelfCsv('name,sole\nA,turf').problems.map((problem) => problem.column)).toEqual([
		'id',
		'system',
		'label',
		'insideLengthMm',
		'ballWidthMm',
	])
	expect(readShelfCsv('  ').problems.map(({ column }) => column)).toEqual(['(file)'])
	const formula = writeShelfCsv(shelfOf(modelWith({ name: '=1+1' })))
	expect(formula).toContain("'=1+1")
	expect(readShelfCsv(formula).shelf.models[0]!.name).toBe('=1+1')
})
