/** Units as a person reads them beside a value. */

/** Units of the file format that say nothing to a hand at the field. */
const silent: readonly string[] = ['count', 'score', 'label', 'currency']
/** '' where the unit says nothing; 'degrees' for 'deg'. */
export const unitShown = (unit: string): string =>
	silent.includes(unit) ? '' : unit === 'deg' ? 'degrees' : unit
