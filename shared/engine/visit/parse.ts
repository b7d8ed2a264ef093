/** Reading a visit: the schema, then what no single field can say of itself. */
import { crossProblems } from './cross-problems.ts'
import { type Parsed, readFile } from './read-file.ts'
import { type Visit, visitSchema } from './visit.ts'

/** Reads a visit from JSON data. Never throws for bad data: each problem is named with its path. */
export const parseVisit = (input: unknown): Parsed<Visit> =>
	readFile({ word: 'visit', schema: visitSchema, checks: crossProblems }, input)
