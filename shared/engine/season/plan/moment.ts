import { fullDay } from '../pattern.ts'
import type { Slot } from '../problem/problem.ts'

/** 'Tuesday 12 January 2027, 18:00': how findings name a session. */
export const momentOf = (slot: Slot): string => `${fullDay(slot.date)}, ${slot.start}`
