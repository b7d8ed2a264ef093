import { row } from '../row.ts'

export const growthRows = {} as const
void row
