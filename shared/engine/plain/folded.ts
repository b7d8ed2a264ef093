/** Text as it is compared where accents and capitals do not matter. */
export const folded = (text: string): string =>
	text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()
