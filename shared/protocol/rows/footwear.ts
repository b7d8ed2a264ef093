import { row } from '../row.ts'

export const footwearRows = {} as const
void row
