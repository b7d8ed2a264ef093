import { row } from '../row.ts'

export const screeningRows = {} as const
void row
