/** A part of the guardian's page. */
import type { Speak } from '../../words/speak.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import type { Reader } from '../reader.ts'

export type Part = (input: ReportInput, reader: Reader, t: Speak) => Block[]
