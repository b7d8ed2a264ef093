/** Words beside a day in the picture of the season. Pure. */
import { dayInWords } from '../../../shared/engine/plain/days.ts'
import { type DaysAcross, size } from './pictureScale.ts'

/** '1 February': the year stands over the picture. */
export const dayWithoutYear = (date: string): string => dayInWords(date).replace(/ \d{4}$/, '')
/** Whether there is room for words right of a day. */
export const hasRoomRight = ({ x }: DaysAcross, date: string): boolean => x(date) < size.width - 150
