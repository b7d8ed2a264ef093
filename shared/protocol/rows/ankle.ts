import { row } from '../row.ts'

export const ankleRows = {} as const
void row
