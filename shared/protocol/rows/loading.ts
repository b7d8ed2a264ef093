import { row } from '../row.ts'

export const loadingRows = {} as const
void row
