/**
 * The days of a weekly pattern that is made of how much is played: own choice, no source. One row
 * for each session more a week.
 */
import type { Pattern } from '../visit/visit.ts'

type Weekday = Pattern['weekday']
/** Most are played on a weekend; the days between them as far apart as they can be. */
export const matchDays: readonly Weekday[] = ['saturday', 'wednesday', 'sunday', 'monday']
/** Days of training, first those that leave a day to a match on either side. */
export const trainingDays: readonly Weekday[] = ['tuesday', 'thursday', 'monday', 'friday', 'wednesday', 'sunday', 'saturday']
