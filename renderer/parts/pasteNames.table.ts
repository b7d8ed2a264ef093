/** Other names that lists of measures have at their rows, by the key of the measure. */
export const pasteNames: Readonly<Record<string, readonly string[]>> = {
	heelToToeMm: ['foot length', 'length', 'heel toe'],
	heelToBallMm: ['ball length', 'arch length', 'heel ball', 'heel to ball length'],
	ballWidthMm: ['foot width', 'width', 'forefoot width'],
	ballGirthMm: ['girth', 'foot girth', 'forefoot girth'],
	lungeCm: ['weight bearing lunge', 'lunge', 'lunge distance'],
	lungeDeg: ['shin angle'],
	fpi6: ['foot posture index', 'fpi', 'fpi 6'],
	statureCm: ['height', 'standing height', 'body height'],
	sittingHeightCm: ['seated height'],
	massKg: ['mass', 'weight', 'body weight'],
}
