import { row } from '../row.ts'

export const sizingRows = {} as const
void row
