import { row } from '../row.ts'

export const postureRows = {} as const
void row
