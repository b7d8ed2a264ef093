/** A part of page one: its blocks for one reader. */
import type { Speak } from '../../words/speak.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import type { Notes } from '../notes.ts'
import type { Reader } from '../reader.ts'

/** @param notes where sources are listed at the end; page one itself prints no numbers */
export type Part = (input: ReportInput, reader: Reader, t: Speak, notes?: Notes) => Block[]
