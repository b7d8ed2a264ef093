/** What the form of a model means: the model, or what keeps it from being one. Pure. */
import type { z } from 'zod'
import { present } from '../../../shared/engine/plain/present.ts'
import { type FieldMeta, fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import {
	type Model,
	modelSchema,
	type Shelf,
	type ShelfSize,
	shelfProblems,
} from '../../../shared/engine/visit/shelf.ts'
import { parseNumber } from '../../parts/parseNumber.ts'
import { fieldNames, type ModelTexts, type Row, sizeFields, studFields } from './modelTexts.ts'

/**
 * An id from a name, of its own on this shelf: 'Tern Firm' becomes tern-firm, or tern-firm-2 where
 * that is taken.
 */
function idFor(name: string, shelf: Shelf): string {
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
	if (!taken.has(plain)) return plain
	let number = 2
	while (taken.has(`${plain}-${number}`)) number++
	return `${plain}-${number}`
}

/** Units that are no unit to be printed: what the number counts is said by its title. */
const unitless = ['fraction', 'label', 'local currency']
/** The unit as it is printed behind a number; empty where there is none. */
export const shownUnit = ({ unit }: FieldMeta): string => (unitless.includes(unit) ? '' : unit)

/** What is to be said of the form, by path of the model. */
interface Remarks {
	/** What keeps it from being saved: it names what was typed and what to do. */
	errors: Record<string, string>
	/** What is unusual; it does not keep it from being saved. */
	questions: Record<string, string>
	/** Paths whose error is only that nothing stands there. */
	empty: Set<string>
}
export interface Read extends Remarks {
	/** There only where nothing is wrong. */
	model?: Model
}

function readEntry(path: string, text: string, remarks: Remarks): unknown {
	const meta = fieldMeta(modelSchema, path)
	const typed = text.trim()
	if (typed === '') return undefined
	if (meta.kind === 'yesNo') return typed === 'yes'
	return meta.kind === 'number' ? readNumber(path, text, meta, remarks) : typed
}
function readNumber(path: string, text: string, meta: FieldMeta, remarks: Remarks) {
	const parsed = parseNumber(text, meta.unit)
	if (!parsed.ok) {
		remarks.errors[path] = parsed.says
		return undefined
	}
	const [value, ...more] = parsed.values
	if (value === undefined) return undefined
	const unit = shownUnit(meta) && ` ${shownUnit(meta)}`
	if (more.length > 0) remarks.errors[path] = `'${text.trim()}' is more than one number. Give one.`
	else if (!within(value, meta.min, meta.max))
		remarks.errors[path] =
			`${value}${unit} cannot be: allowed ${meta.min} to ${meta.max}${unit}. Check the ` +
			'reading and the unit.'
	else if (!within(value, meta.softMin, meta.softMax))
		remarks.questions[path] =
			`${value}${unit} is unusual (${meta.softMin} to ${meta.softMax}${unit}). Check it.`
	return value
}
const within = (value: number, least = value, most = value): boolean =>
	value >= least && value <= most

/** The fields of a group that are not empty, by name. */
function readGroup(
	prefix: string,
	names: readonly string[],
	texts: Record<string, string>,
	remarks: Remarks,
): Record<string, unknown> {
	const values = names.map(
		(name) => [name, readEntry(`${prefix}${name}`, texts[name] ?? '', remarks)] as const,
	)
	return Object.fromEntries(values.filter(([, value]) => value !== undefined))
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
/** The places of a stud as fractions of the first size. @param first as it was read */
function placed(
	{ texts }: Row,
	path: string,
	first: Partial<ShelfSize>,
	remarks: Remarks,
): Record<string, string> {
	const { insideLengthMm, ballWidthMm } = first
	const wholes = {
		xFraction: insideLengthMm,
		yFraction: ballWidthMm === undefined ? undefined : ballWidthMm / 2,
	}
	const next = { ...texts }
	for (const [name, wholeMm] of Object.entries(wholes)) {
		const read = fractionOf(texts[name] ?? '', wholeMm)
		if (typeof read === 'string') next[name] = read
		else {
			remarks.errors[`${path}.${name}`] = read.wrong
			next[name] = ''
		}
	}
	return next
}
function readStuds(texts: ModelTexts, first: Partial<ShelfSize>, remarks: Remarks) {
	if (texts.studState === 'not recorded') return undefined
	if (texts.studState === 'none') return []
	return texts.studs.map((stud, index) => {
		const path = `studs.${index}`
		return readGroup(`${path}.`, studFields, placed(stud, path, first, remarks), remarks)
	})
}

const listTitles: Record<string, string> = { sizes: 'Sizes', studs: 'Studs' }
/** Puts the schema's refusals into words, unless the entry itself was refused before. */
function remarkOnIssues(
	issues: readonly z.core.$ZodIssue[],
	input: unknown,
	{ errors, empty }: Remarks,
): void {
	for (const issue of issues) {
		const path = issue.path.join('.')
		if (errors[path] !== undefined) continue
		const title = listTitles[path] ?? fieldMeta(modelSchema, path).title
		const value = issue.path.reduce<unknown>(
			(here, key) => (here as Record<PropertyKey, unknown> | undefined)?.[key],
			input,
		)
		if (path === 'sizes') errors[path] = 'Sizes: give at least one, at most 80.'
		else if (value === undefined || value === '') {
			errors[path] = `${title} is empty. Fill it in.`
			empty.add(path)
		} else errors[path] = `${title} ${String(value).slice(0, 40)} cannot stand: ${issue.message}.`
	}
}

/** Reads the whole form. @param shelf where a new model gets an id that is free */
export function readModel(texts: ModelTexts, shelf: Shelf): Read {
	const remarks: Remarks = { errors: {}, questions: {}, empty: new Set() }
	const fields = readGroup('', fieldNames, texts.fields, remarks)
	const sizes = texts.sizes.map((size, index) =>
		readGroup(`sizes.${index}.`, sizeFields, size.texts, remarks),
	)
	const input = present({
		id: texts.id ?? idFor(texts.fields.name ?? '', shelf),
		...fields,
		codes: texts.codes.length > 0 ? texts.codes : undefined,
		sizes,
		studs: readStuds(texts, sizes[0] ?? {}, remarks),
		retired: texts.retired || undefined,
	})
	const parsed = modelSchema.safeParse(input)
	if (!parsed.success) {
		remarkOnIssues(parsed.error.issues, input, remarks)
		return remarks
	}
	const models = [parsed.data]
	for (const { path, message } of shelfProblems({ format: 'lastwright-shelf', version: 1, models }))
		remarks.errors[path.replace(/^models\.0\./, '')] = message
	const clean = Object.keys(remarks.errors).length === 0
	return clean ? { ...remarks, model: parsed.data } : remarks
}
