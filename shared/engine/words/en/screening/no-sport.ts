/** All that a coach is told of a warning sign. */
export const noSport = (): string => 'No training or matches until a clinician says so.'
