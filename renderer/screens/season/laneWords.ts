/** Words beside a day in the picture of the season. Pure. */
import { type DaysAcross, size } from './pictureScale.ts'

/** Whether there is room for words right of a day. */
export const hasRoomRight = ({ x }: DaysAcross, date: string): boolean => x(date) < size.width - 150
